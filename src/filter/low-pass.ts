/**
 * Butterworth low-passes of order 1, 2 and 4 as digital filters, and their power gain in closed form.
 *
 * All are the analogue filter by the bilinear transform, warped so that the cut-off stays in place:
 *
 *   |H|^2 = 1/(1 + (t/t0)^(2n)),  t = tan(pi f/fs),  t0 = tan(pi f0/fs)
 *
 * At any f this grows with f0, so that whatever passes does, too. (S. Butterworth, "On the theory of
 * filter amplifiers", 1930, for the analogue gain and the angles of the poles; from memory.) The first
 * order is bilinear like the others, and not the one-pole smoother, because the latter leaves up to
 * k/(2 - k) of what lies at fs/2 and has no point of -3 dB for high cut-offs; in return it would delay
 * by up to half a sample less.
 */

import { notPositive, throwIfAny } from "../check-number.ts";
import { inputError } from "../errors.ts";
import { type Biquad, lowPassBiquad } from "./biquad.ts";
import type { LowPass } from "./burden-types.ts";

export const LOW_PASS_ORDERS: readonly LowPass["order"][] = [1, 2, 4];

/** The highest cut-off or centre that a filter is set to, as a share of the sampling rate. */
export const HIGHEST_SHARE = 0.45;

/** Ratio of neighbouring cut-offs, at most. */
const STEP = 1.03;

/**
 * First-order low-pass, H = 1/(1 + s) with s = (1/t0)(1 - z^-1)/(1 + z^-1), as a biquad whose other
 * coefficients are zero. It passes a constant unchanged and nothing at fs/2, and delays what is slow
 * by 1/(2 t0) samples.
 *
 * @param f0 cut-off, Hz
 * @param fs sampling rate, Hz
 * @throws InputError for f0 or fs not above zero, or f0 not below fs/2
 */
export function firstOrderBiquad(f0: number, fs: number): Biquad {
  throwIfAny(
    notPositive("f0", "the cut-off frequency", f0, "Hz"),
    notPositive("fs", "the sampling rate", fs, "Hz"),
  );
  if (!(f0 < fs / 2)) {
    const half = `half the sampling rate, ${fs / 2} Hz`;
    throw inputError("f0", `the cut-off frequency must lie below ${half}, but is ${f0} Hz.`);
  }
  const t0 = Math.tan(Math.PI * (f0 / fs));
  return { b: [t0 / (1 + t0), t0 / (1 + t0), 0], a: [1, (t0 - 1) / (1 + t0), 0], fs };
}

/**
 * A low-pass as biquads in series. Those of even order n have Q = 1/(2 cos((2k + 1) pi/(2n))): 0.7071
 * for two, 0.5412 and 1.3066 for four.
 *
 * @param fs sampling rate, Hz
 * @throws InputError for a cut-off not above zero and below fs/2
 */
export function lowPassSections({ order, cutOff }: LowPass, fs: number): readonly Biquad[] {
  if (order === 1) return [firstOrderBiquad(cutOff, fs)];
  return Array.from({ length: order / 2 }, (_, k) => {
    const Q = 1 / (2 * Math.cos(((2 * k + 1) * Math.PI) / (2 * order)));
    return lowPassBiquad({ f0: cutOff, Q, fs });
  });
}

/**
 * |H|^2 of a low-pass.
 *
 * @param ratio (t/t0)^2, 0 or more; may be Infinity, at fs/2
 */
export function lowPassPower(order: LowPass["order"], ratio: number): number {
  if (order === 1) return 1 / (1 + ratio);
  const squared = ratio * ratio;
  return 1 / (1 + (order === 2 ? squared : squared * squared));
}

/**
 * Cut-offs to choose from, Hz, ascending: evenly on a logarithmic scale, in steps of 3 % or a little
 * less, from one step above `above` to 0.45 fs.
 *
 * @param above Hz, below 0.45 fs
 */
export function cutOffGrid(above: number, fs: number): Float64Array {
  const span = Math.log((HIGHEST_SHARE * fs) / above);
  const steps = Math.ceil(span / Math.log(STEP));
  return Float64Array.from({ length: steps }, (_, i) => above * Math.exp((span * (i + 1)) / steps));
}
