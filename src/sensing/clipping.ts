/** Whether vibration drives a sensor to the end of its range. */

import { notPositive, throwIfAny } from "../check-number.ts";

/**
 * The peak counted for a vibration, in rms. Of incoherent equal sines four never exceed 2.83 rms (their
 * sum of amplitudes), eight exceed 3 rms for 0.14 % of the time and twelve for 0.18 % (direct simulation
 * with random phases); endlessly many, a normal distribution, for 0.27 %. One order of four motors thus
 * stays below, and with more the peaks above are rare and short. One sine alone has its peak at 1.41 rms:
 * there the figure is twice too careful.
 */
export const PEAK = 3;

/**
 * Speeds that weigh this little do not count: of a flight of five minutes 1e-4 is 30 ms, and clipping
 * while the motors pass through a speed shifts no attitude.
 */
export const LEAST_WEIGHT = 1e-4;

/** The worst axis and speed; reading is deg/s or g. */
export interface Clipping {
  /** 0, 1, 2 for x, y, z */
  readonly axis: number;
  /** of the motors, rad/s */
  readonly speed: number;
  /** largest reading expected there, steady part and vibration */
  readonly peak: number;
  /** the sensor's, of either sign */
  readonly range: number;
  /** peak/range */
  readonly share: number;
  /** whether the peak lies beyond the range */
  readonly clipped: boolean;
}

/** Speeds of the motors and how much of the flight is spent at each. */
export interface SpeedMix {
  /** rad/s (size s) */
  readonly grid: Float64Array;
  /** summing to 1 (size s) */
  readonly weights: Float64Array;
}

/**
 * The nearest that any axis comes to the end of the range, at the speeds that count in the flight mix.
 * Lines are taken before the chip's own low-pass: what clips is the element or the converter before it
 * (from memory).
 *
 * @param power mean-square readings of x, y, z over all orders (three of size s)
 * @param steady part of the reading along z that does not vibrate (size s): `steadyForce` for an
 *   accelerometer; absent for a gyro
 * @param range above zero, in the unit of the reading
 * @returns undefined where no speed counts
 * @throws InputError for a range that is not above zero
 */
export function clipping(
  power: readonly Float64Array[],
  { grid, weights }: SpeedMix,
  range: number,
  steady?: Float64Array,
): Clipping | undefined {
  throwIfAny(notPositive("range", "the range", range, ""));
  let worst: Clipping | undefined;
  power.forEach((along, axis) => {
    for (let s = 0; s < grid.length; s++) {
      if (!(weights[s] > LEAST_WEIGHT)) continue;
      const peak = PEAK * Math.sqrt(along[s]) + (axis === 2 && steady ? Math.abs(steady[s]) : 0);
      if (worst !== undefined && peak <= worst.peak) continue;
      worst = { axis, speed: grid[s], peak, range, share: peak / range, clipped: peak > range };
    }
  });
  return worst;
}

/**
 * What an accelerometer reads along z besides vibration, g: thrust over weight, (speed/hover)^2. In
 * hover that is the 1 g that holds against gravity; at full throttle it is what the craft climbs away
 * with, until drag makes up for it.
 *
 * @param grid rad/s (size s)
 * @param hover rad/s
 * @throws InputError for a hover speed that is not above zero
 */
export function steadyForce(grid: Float64Array, hover: number): Float64Array {
  throwIfAny(notPositive("hover", "the speed in hover", hover, "rad/s"));
  return grid.map((speed) => (speed / hover) ** 2);
}
