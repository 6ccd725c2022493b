/**
 * The low-pass that a sensor chip puts before its samples: second-order Butterworth,
 * |H|^2 = 1/(1 + (f/fb)^4), -3 dB at the bandwidth fb. Chips differ in the order and shape of theirs; where
 * only the bandwidth is known, this stands for them (common practice, no source).
 */

import { type SecondOrder, secondOrderLowPass } from "../filter/lag.ts";

/** As a filter, for its lag in the loop. */
export function ownLowPass(bandwidth: number): SecondOrder {
  return { f0: bandwidth, Q: Math.SQRT1_2 };
}

/**
 * Share of a line's power that it passes: gain^2.
 *
 * @param bandwidth -3 dB, Hz
 * @param f frequency of the line before sampling, Hz
 * @throws InputError for a bandwidth that is not above zero, or a negative or not finite frequency
 */
export function ownPowerGain(bandwidth: number, f: number): number {
  return secondOrderLowPass(ownLowPass(bandwidth), f).gain ** 2;
}
