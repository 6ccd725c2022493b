/** What notches leave, tabulated for many frequencies, and several multiples' together. */

import type { BurdenSetup } from "./burden-types.ts";
import { bankPower, type NotchBank } from "./motor-notches.ts";

/** |H|^2 of all notches of one multiple, missing their motors upwards and downwards. */
export interface NotchGains {
  readonly high: Float64Array;
  readonly low: Float64Array;
}

/**
 * @param s sin^2(pi f/fs) of the frequencies (size m)
 * @param speedOf index of the motors' speed that belongs to each
 */
export function notchGains(
  setup: BurdenSetup,
  bank: NotchBank,
  s: Float64Array,
  speedOf: (index: number) => number,
): NotchGains {
  const gains = (centres: Float64Array) =>
    s.map((value, n) => bankPower(centres, setup, speedOf(n), value));
  return { high: gains(bank.high), low: gains(bank.low) };
}

/**
 * The notches of several multiples in series: the mean of all too high and all too low (size m).
 *
 * @param count m, for no multiple at all
 */
export function inSeriesGains(multiples: readonly NotchGains[], count: number): Float64Array {
  const mean = new Float64Array(count);
  for (let n = 0; n < count; n++) {
    let [high, low] = [1, 1];
    for (const gains of multiples) {
      high *= gains.high[n];
      low *= gains.low[n];
    }
    mean[n] = (high + low) / 2;
  }
  return mean;
}
