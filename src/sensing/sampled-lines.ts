/** The lines of the motors' orders as they stand in the samples, for the filters that come next. */

import { foldedFrequency } from "../filter/fold.ts";
import { ownPowerGain } from "./own-low-pass.ts";

/** One order of the motors: what the sensor feels of it at each speed of a grid. */
export interface OrderLine {
  readonly name: string;
  /** multiple of the motor's speed */
  readonly order: number;
  /** mean-square reading before the chip's own low-pass (size s) */
  readonly power: Float64Array;
}

/** The same after own low-pass and sampling. */
export interface SampledLine {
  readonly name: string;
  readonly order: number;
  /** where it shows, Hz, 0 to half the sampling rate (size s) */
  readonly frequency: Float64Array;
  /** where it is, Hz (size s) */
  readonly trueFrequency: Float64Array;
  /** mean-square reading in the samples (size s) */
  readonly power: Float64Array;
}

/** How a sensor samples, Hz. */
export interface Sampling {
  readonly sampling: number;
  /** -3 dB of its own low-pass */
  readonly bandwidth: number;
}

/**
 * Own low-pass at the true frequency, then sampling. A folded line keeps its power; where it falls on
 * 0 or fs/2 exactly, what one run of samples has of it depends on its phase, and the power is the mean
 * over phases.
 *
 * @param lines their powers in any unit, each of the grid's size
 * @param grid speeds of the motors, rad/s (size s)
 * @throws InputError for a rate or bandwidth not above zero, or negative speeds
 */
export function sampleLines(
  lines: readonly OrderLine[],
  grid: Float64Array,
  { sampling, bandwidth }: Sampling,
): SampledLine[] {
  return lines.map(({ name, order, power }) => {
    const trueFrequency = grid.map((speed) => (order * speed) / (2 * Math.PI));
    return {
      name,
      order,
      trueFrequency,
      frequency: trueFrequency.map((f) => foldedFrequency(f, sampling)),
      power: power.map((value, s) => value * ownPowerGain(bandwidth, trueFrequency[s])),
    };
  });
}
