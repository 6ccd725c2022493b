/** False tilt in steady yaw, for many places at once: closed forms, without a motion to follow. */

import { notFinite, throwIfAny } from "../check-number.ts";
import { inputError } from "../errors.ts";
import { GRAVITY } from "../excitation/speeds.ts";

/**
 * What the accelerometer alone reads of a level craft in steady yaw: atan(rate^2 sqrt(x^2 + y^2)/g).
 * The place's own side looks low, either way round. Height does not count.
 *
 * @param x forward of the centre of gravity, m
 * @param y left of it, m
 * @param yawRate rad/s, of either sign
 * @returns rad, 0 or more
 * @throws InputError for a number that is not finite
 */
export function falseTiltAt(x: number, y: number, yawRate: number): number {
  if (!Number.isFinite(x + y + yawRate)) {
    throwIfAny(
      notFinite("x", "the distance forward", x, "m"),
      notFinite("y", "the distance to the left", y, "m"),
      notFinite("yawRate", "the rate of yaw", yawRate, "rad/s"),
    );
  }
  return Math.atan((yawRate * yawRate * Math.hypot(x, y)) / GRAVITY);
}

/**
 * `falseTiltAt` for the places of a map.
 *
 * @param places x0 y0 x1 y1 ..., m (size 2 n)
 * @returns rad (size n)
 * @throws InputError for a number that is not finite or an odd count
 */
export function falseTilts(places: Float64Array, yawRate: number): Float64Array {
  if (places.length % 2 !== 0) {
    throw inputError(
      "places",
      `there must be an x and a y for each place, but there are ${places.length} numbers.`,
    );
  }
  const tilts = new Float64Array(places.length / 2);
  for (let i = 0; i < tilts.length; i++) {
    tilts[i] = falseTiltAt(places[2 * i], places[2 * i + 1], yawRate);
  }
  return tilts;
}
