/** fast-check generators of filters as a flight would use them, and a derivative to hold them to. */

import fc from "fast-check";
import type { BiquadOrder } from "../../src/filter/biquad.ts";

export const RUNS = { seed: 20261, numRuns: 60 };

/** Evenly spread over the interval; `fc.double` would mostly give numbers near zero. */
export const between = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: 2 ** 30 }).map((i) => min + (max - min) * (i / 2 ** 30));

/** f0 from fs/100 to just below fs/2, Q from 0.3 to 12. */
export const order: fc.Arbitrary<BiquadOrder> = fc
  .record({ fs: between(500, 32000), share: between(0.01, 0.45), Q: between(0.3, 12) })
  .map(({ fs, share, Q }) => ({ f0: share * fs, Q, fs }));

/** -d phase/d omega by central differences, s; the phase must not jump within f (1 +- step). */
export function slope(phase: (f: number) => number, f: number, step = 1e-5): number {
  const h = step * f;
  return -(phase(f + h) - phase(f - h)) / (2 * Math.PI * 2 * h);
}
