/** The noise of a sensor that stands still. */

import { negative, notPositive, throwIfAny } from "../check-number.ts";
import { inputError } from "../errors.ts";

/**
 * Equivalent noise bandwidth of a Butterworth low-pass, Hz: the width of the ideal filter that passes
 * as much white noise, f0 (pi/2n)/sin(pi/2n), from the integral of df/(1 + (f/f0)^2n) over all f.
 * 1.571, 1.111, 1.047 f0 for n = 1, 2, 3; f0 as n grows.
 *
 * @param f0 -3 dB, Hz
 * @param n order of the filter, 1 or more
 * @throws InputError for f0 not above zero, or an order that is not a whole number from 1
 */
export function noiseBandwidth(f0: number, n: number): number {
  throwIfAny(notPositive("f0", "the bandwidth", f0, "Hz"));
  if (!(Number.isInteger(n) && n >= 1)) {
    throw inputError("n", `the order of the filter must be a whole number from 1, but is ${n}.`);
  }
  const x = Math.PI / (2 * n);
  return (f0 * x) / Math.sin(x);
}

/**
 * Noise of one axis, rms: density sqrt(bandwidth). Sampling leaves it as it is: what lies above half
 * the rate folds below, its power remains.
 *
 * @param density reading per sqrt(Hz)
 * @param bandwidth equivalent noise bandwidth of all low-passes together, Hz
 * @returns rms in the unit of the reading, deg/s or g
 * @throws InputError for figures that are negative or not finite
 */
export function axisNoise(density: number, bandwidth: number): number {
  throwIfAny(
    negative("density", "the noise density", density, "per sqrt(Hz)"),
    negative("bandwidth", "the noise bandwidth", bandwidth, "Hz"),
  );
  return density * Math.sqrt(bandwidth);
}

/** The same of three equal axes together, as the program's rms figures are: sqrt(3) times as much. */
export function noiseFloor(density: number, bandwidth: number): number {
  return Math.sqrt(3) * axisNoise(density, bandwidth);
}
