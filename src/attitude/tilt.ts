/**
 * The attitude that an accelerometer seems to see.
 *
 * Roll is positive with the right side down, pitch with the nose up, as pilots count them. In the
 * program's axes (x forward, y left, z up) roll is a positive rotation about x, but pitch a NEGATIVE
 * one about y: a positive rotation about "left" takes the nose down. Pitch is applied first, roll
 * then about the pitched x axis; heading plays no part.
 *
 * All this is the static reading of the sensor. A filter aided by the gyro moves towards it only with
 * the time constant it gives to the accelerometer: `attitude-filter.ts`.
 */

import { negative, notFinite, throwIfAny } from "../check-number.ts";
import { inputError } from "../errors.ts";
import { GRAVITY } from "../excitation/speeds.ts";
import type { Vec3 } from "../model/types.ts";
import { type LowSide, sideTowards } from "./sides.ts";
import { checkVectors } from "./specific-force.ts";

/** rad */
export interface Attitude {
  /** right side down positive, -pi to pi */
  readonly roll: number;
  /** nose up positive, -pi/2 to pi/2 */
  readonly pitch: number;
}

/** Tilts below this, rad, are rounding. */
const NO_TILT = 1e-12;

/**
 * Gravity along the body axes, m/s^2: g (-sin pitch, -sin roll cos pitch, -cos roll cos pitch).
 *
 * Nose up, it pulls towards the tail (-x); right side down, to the right (-y).
 *
 * @throws InputError for an angle that is not finite
 */
export function gravityInBody({ roll, pitch }: Attitude): Vec3 {
  throwIfAny(
    notFinite("roll", "the angle", roll, "rad"),
    notFinite("pitch", "the angle", pitch, "rad"),
  );
  return [
    -GRAVITY * Math.sin(pitch),
    -GRAVITY * Math.sin(roll) * Math.cos(pitch),
    -GRAVITY * Math.cos(roll) * Math.cos(pitch),
  ];
}

/**
 * The attitude in which the sensor, at rest, would read the direction of f.
 *
 *   pitch = atan2(fx, sqrt(fy^2 + fz^2)),  roll = atan2(fy, fz)
 *
 * The inverse of f = -gravityInBody(attitude) for |pitch| < pi/2. With the nose straight up or down
 * roll cannot be told and is given as zero.
 *
 * @param f specific force along x forward, y left, z up, of any size
 * @throws InputError for a component that is not finite, and for no force at all: a body in free fall
 *   has no apparent vertical
 */
export function apparentAttitude(f: Vec3): Attitude {
  checkForce(f);
  return attitudeOf(f);
}

/** `apparentAttitude` unchecked; level where there is no force. */
export function attitudeOf(f: Vec3): Attitude {
  const [x, y, z] = f.map((value) => value + 0); // 0 for -0
  return { roll: Math.atan2(y, z), pitch: Math.atan2(x, Math.hypot(y, z)) };
}

/**
 * Angle between the apparent vertical and the craft's own z axis, rad, 0 to pi.
 *
 * @throws InputError as `apparentAttitude`
 */
export function apparentTilt(f: Vec3): number {
  checkForce(f);
  return tiltOf(f);
}

/** `apparentTilt` unchecked; zero where there is no force. */
export function tiltOf(f: Vec3): number {
  return Math.atan2(Math.hypot(f[0], f[1]), f[2] + 0);
}

/**
 * The side of the craft that seems to be low: specific force points to apparent up, so the low side is
 * the one it leans away from.
 *
 * In rotation the force leans towards the axis, hence the side of the craft on which the sensor sits
 * looks low, whichever way it turns. A loop that levels the craft by this reading alone lifts that side.
 *
 * @throws InputError as `apparentAttitude`
 */
export function lowSide(f: Vec3): LowSide {
  checkForce(f);
  if (Math.hypot(f[0], f[1]) <= NO_TILT * Math.hypot(...f)) return "level";
  return sideTowards(-f[0], -f[1]);
}

/**
 * False tilt of a level craft in steady yaw, rad, 0 or more: tan(tilt) = rate^2 distance/g.
 *
 * The sensor feels the centripetal acceleration rate^2 distance towards the axis; its own side looks
 * low, either way round: behind the centre of gravity it reads nose up, in front nose down, on the
 * right right side down.
 *
 * @param rate of yaw, rad/s, of either sign
 * @param distance of the sensor from the axis through the centre of gravity, m
 * @throws InputError for a rate that is not finite, or a negative or not finite distance
 */
export function steadyYawTilt(rate: number, distance: number): number {
  throwIfAny(
    notFinite("rate", "the rate of yaw", rate, "rad/s"),
    negative("distance", "the distance from the axis", distance, "m"),
  );
  return Math.atan((rate * rate * distance) / GRAVITY);
}

function checkForce(f: Vec3): void {
  checkVectors({ f });
  if (f.every((value) => value === 0)) {
    throw inputError(
      "f",
      "there is no specific force: in free fall there is no apparent vertical.",
    );
  }
}
