/**
 * Second-order digital filters: coefficients of a low-pass and a notch, and the one-pole smoother in
 * the same form.
 *
 *   y[n] = b0 x[n] + b1 x[n-1] + b2 x[n-2] - a1 y[n-1] - a2 y[n-2]
 *
 * Low-pass, notch and bandwidth: R. Bristow-Johnson, "Cookbook formulae for audio EQ biquad filter
 * coefficients", W3C Working Group Note, 8 June 2021, here divided by its a0. They are the analogue
 * filters of `lag.ts` by the bilinear transform, warped so that f0 stays in place.
 */

import { notPositive, throwIfAny } from "../check-number.ts";
import { type Finding, inputError } from "../errors.ts";
import type { SecondOrder } from "./lag.ts";

type Triple = readonly [number, number, number];

export interface Biquad {
  /** b0 b1 b2, on the input now and one and two samples ago */
  readonly b: Triple;
  /** 1 a1 a2, on the output; normalised */
  readonly a: Triple;
  /** sampling rate, Hz */
  readonly fs: number;
}

/** What a second-order filter is ordered by. */
export interface BiquadOrder extends SecondOrder {
  /** sampling rate, Hz; f0 lies below half of it */
  readonly fs: number;
}

/**
 * Low-pass of second order: passes a constant unchanged, gain Q at f0, nothing at fs/2.
 *
 * @throws InputError naming what is wrong with f0, Q or fs
 */
export function lowPassBiquad(order: BiquadOrder): Biquad {
  const { cosine, alpha } = warped(order);
  const b0 = (1 - cosine) / 2;
  return normalised(order, [b0, 2 * b0, b0], alpha, cosine);
}

/**
 * Notch: removes f0, passes a constant and fs/2 unchanged.
 *
 * @throws InputError naming what is wrong with f0, Q or fs
 */
export function notchBiquad(order: BiquadOrder): Biquad {
  const { cosine, alpha } = warped(order);
  return normalised(order, [1, -2 * cosine, 1], alpha, cosine);
}

/**
 * One-pole smoother y += k (x - y), as a biquad whose other coefficients are zero. It delays what is
 * slow by (1 - k)/k samples.
 *
 * @param k share of the way to the new sample: 0 < k <= 1, 1 passes all unchanged
 * @param fs sampling rate, Hz
 * @throws InputError naming what is wrong with k or fs
 */
export function smootherBiquad(k: number, fs: number): Biquad {
  const share = notPositive("k", "the smoothing factor", k, "");
  throwIfAny(share, notPositive("fs", "the sampling rate", fs, "Hz"));
  if (k > 1) {
    throw inputError("k", `the smoothing factor must lie above 0 and not above 1, but is ${k}.`);
  }
  const filter: Biquad = { b: [k, 0, 0], a: [1, k - 1, 0], fs };
  if (!isStable(filter)) {
    throw inputError("k", `the smoothing factor ${k} is too small: rounding leaves no decay.`);
  }
  return filter;
}

/**
 * Q of a digital notch of given width: 1/Q = 2 sinh((ln 2/2) BW w0/sin w0), w0 = 2 pi f0/fs.
 *
 * The factor w0/sin w0 makes up for the warping of frequencies, but only to first order in the width.
 * Up to f0 = fs/4 the width between the -3 dB points comes out right within 0.15 % for BW = 1/3 and
 * 1.3 % for BW = 1 (measured); at fs/3 within 0.6 % and 5 %.
 *
 * @param BW width between the -3 dB points, octaves
 * @param f0 centre, Hz
 * @param fs sampling rate, Hz
 * @throws InputError for a width that is not above zero or would be too wide for any Q, and for f0, fs
 */
export function qOfBandwidth(BW: number, f0: number, fs: number): number {
  throwIfAny(notPositive("BW", "the bandwidth", BW, "octaves"), frequencyFindings(f0, fs));
  const w0 = 2 * Math.PI * (f0 / fs);
  const Q = 1 / (2 * Math.sinh((Math.LN2 / 2) * BW * (w0 / Math.sin(w0))));
  if (Q > 0) return Q;
  throw inputError("BW", `a bandwidth of ${BW} octaves is too wide at ${f0} Hz: choose less.`);
}

/** Whether both poles lie inside the unit circle: |a2| < 1 and |a1| < 1 + a2 (Jury's criterion). */
export function isStable({ a: [, a1, a2] }: Biquad): boolean {
  return Math.abs(a2) < 1 && Math.abs(a1) < 1 + a2;
}

/** cos w0 and alpha = sin w0/(2 Q), after a check of the order. */
function warped({ f0, Q, fs }: BiquadOrder) {
  throwIfAny(notPositive("Q", "the quality factor", Q, ""), frequencyFindings(f0, fs));
  const w0 = 2 * Math.PI * (f0 / fs);
  return { cosine: Math.cos(w0), alpha: Math.sin(w0) / (2 * Q) };
}

/** a = [1 + alpha, -2 cos w0, 1 - alpha] for both kinds; all divided by the first. */
function normalised({ f0, Q, fs }: BiquadOrder, b: Triple, alpha: number, cosine: number): Biquad {
  const a0 = 1 + alpha;
  const filter: Biquad = {
    b: [b[0] / a0, b[1] / a0, b[2] / a0],
    a: [1, (-2 * cosine) / a0, (1 - alpha) / a0],
    fs,
  };
  if (isStable(filter)) return filter;
  // In exact arithmetic never; in doubles where cos w0 or 1 + alpha rounds to 1, or alpha overflows.
  const order = `f0 = ${f0} Hz and Q = ${Q} at ${fs} Hz`;
  throw inputError(
    "",
    `a filter with ${order} is not stable in double precision: choose an f0 farther from 0 and fs/2, or a more moderate Q.`,
  );
}

function frequencyFindings(f0: number, fs: number): readonly Finding[] {
  const findings = [
    ...notPositive("f0", "the frequency of the filter", f0, "Hz"),
    ...notPositive("fs", "the sampling rate", fs, "Hz"),
  ];
  if (findings.length > 0 || f0 < fs / 2) return findings;
  const half = `half the sampling rate, ${fs / 2} Hz`;
  const cure = "choose a lower frequency or sample faster";
  return [
    {
      path: "f0",
      message: `the frequency of the filter must lie below ${half}, but is ${f0} Hz: ${cure}.`,
    },
  ];
}
