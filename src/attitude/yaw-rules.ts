/** Rules of thumb for an accelerometer away from the centre of gravity of a craft that yaws. */

import { negative, notFinite, notPositive, throwIfAny } from "../check-number.ts";
import { inputError } from "../errors.ts";
import { GRAVITY } from "../excitation/speeds.ts";
import { degrees, perSecond } from "./shown.ts";
import { steadyYawTilt } from "./tilt.ts";

/**
 * How far from the centre of gravity, in the plan, the static false tilt of steady yaw reaches an
 * error: g tan(error)/rate^2. The inverse of `steadyYawTilt`.
 *
 * @param error rad, above 0 and below a quarter turn
 * @param yawRate rad/s, of either sign; at rest no place is too far
 * @returns m; Infinity at rest
 * @throws InputError for an error out of range or a rate that is not finite
 */
export function radiusWithin(error: number, yawRate: number): number {
  throwIfAny(
    notPositive("error", "the error", error, "rad"),
    notFinite("yawRate", "the rate of yaw", yawRate, "rad/s"),
  );
  if (error >= Math.PI / 2) {
    throw inputError(
      "error",
      `the error must be below a quarter turn (pi/2), but is ${error} rad; no place reads more.`,
    );
  }
  return (GRAVITY * Math.tan(error)) / (yawRate * yawRate);
}

/**
 * The rule in words: "within 14 mm of the centre of gravity (in the plan) the error stays below
 * 1 degree at 200 deg/s of steady yaw".
 *
 * @throws InputError as `radiusWithin`
 */
export function radiusWords(error: number, yawRate: number): string {
  const radius = radiusWithin(error, yawRate);
  if (radius === Number.POSITIVE_INFINITY)
    return "without yaw there is no such error, at any place";
  // down to the digit shown, so that what is said holds
  const parts = radius >= 0.01 ? 1 : 10;
  const mm = Math.floor(radius * 1e3 * parts) / parts;
  return `within ${mm} mm of the centre of gravity (in the plan) the error stays below ${degrees(error)} at ${perSecond(yawRate)} of steady yaw`;
}

/**
 * Share of a constant false tilt that a filter takes up in a turn that lasts T: 1 - exp(-T/tau). Exact
 * for a filter of angles, in yaw an upper bound for one of a vector (`attitude-filter.ts`).
 *
 * @param T s, 0 or more
 * @param timeConstant tau, s, above 0
 * @throws InputError for a time out of range
 */
export function turnShare(T: number, timeConstant: number): number {
  throwIfAny(
    negative("T", "the duration of the turn", T, "s"),
    notPositive("timeConstant", "the time constant", timeConstant, "s"),
  );
  return -Math.expm1(-T / timeConstant);
}

/** What a vector filter settles at in a yaw held for good. */
export interface SettledTilt {
  /** rad, 0 or more */
  readonly tilt: number;
  /**
   * how far the side that it takes for low trails behind the sensor's, against the sense of the yaw,
   * rad, 0 to pi/2
   */
  readonly trailing: number;
}

/**
 * The steady solution of a vector filter (`vector-filter.ts`) in a yaw held for good. With m the static
 * false tilt, n = |rate| tau and s the cosine between what is read and what is believed,
 *
 *   s^4 + (n^2 - 1) s^2 - n^2 cos(m)^2 = 0,  tan(tilt) = tan(m) s/sqrt(n^2 + s^2),  tan(trailing) = n/s
 *
 * from -omega x u + (f - (f . u) u)/tau = 0 along the body axes, f = (sin(m), 0, cos(m)). For small m, s
 * is 1. However fast the yaw, tan(tilt) stays below |rate| distance/(g tau).
 *
 * @param rate of yaw, rad/s, of either sign
 * @param distance of the sensor from the axis, m
 * @param timeConstant tau, s
 * @throws InputError for numbers out of range
 */
export function settledYawTilt(rate: number, distance: number, timeConstant: number): SettledTilt {
  throwIfAny(notPositive("timeConstant", "the time constant", timeConstant, "s"));
  const m = steadyYawTilt(rate, distance);
  const n = Math.abs(rate) * timeConstant;
  const s = Math.sqrt(positiveRoot(1 - n * n, (n * Math.cos(m)) ** 2));
  return { tilt: Math.atan((Math.tan(m) * s) / Math.hypot(n, s)), trailing: Math.atan2(n, s) };
}

/** Of q^2 - p q - c = 0 with c of 0 or more, without cancellation. */
function positiveRoot(p: number, c: number): number {
  const root = Math.hypot(p, 2 * Math.sqrt(c));
  return p >= 0 ? (p + root) / 2 : (2 * c) / (root - p);
}
