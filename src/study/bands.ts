/** Where 90 % of frames lie, and how well that is known. */

import { inputError } from "../errors.ts";

export interface Edge {
  readonly value: number;
  /** one standard error; Infinity where the samples are too few to say */
  readonly error: number;
}

export interface Band {
  /** 5 % of frames lie below, half of them, 95 % */
  readonly low: Edge;
  readonly median: Edge;
  readonly high: Edge;
  /** samples that have the value, of all */
  readonly found: number;
  readonly of: number;
  /** share of those found that are Infinity: a delay no filter chain attains */
  readonly endless: number;
}

export const BAND_SHARES = { low: 0.05, median: 0.5, high: 0.95 } as const;

/**
 * Quantiles of samples in the values' own unit.
 *
 * The quantile is that of R. J. Hyndman and Y. Fan, "Sample quantiles in statistical packages", The
 * American Statistician 50 (1996), definition 8, which they advise: nearly unbiased in the median
 * whatever the distribution. Its error takes none either: half the way between the quantiles at p - s
 * and p + s, s = sqrt(p(1 - p)/n) being the binomial error of the share below it (R. S. Woodruff,
 * "Confidence intervals for medians and other position measures", Journal of the American Statistical
 * Association 47 (1952)). Both from memory. An upper estimate for evenly spread samples.
 *
 * An edge next to Infinity is Infinity; its error is then Infinity, or 0 where values on both sides
 * are Infinity too.
 *
 * @param values undefined where a sample has no such value (a mode that was not found again)
 * @returns undefined where no sample has a value
 * @throws InputError for NaN or -Infinity
 */
export function bandOf(values: readonly (number | undefined)[] | Float64Array): Band | undefined {
  const sorted = Float64Array.from([...values].filter((v) => v !== undefined)).sort();
  const bad = sorted.find((v) => !(v > Number.NEGATIVE_INFINITY));
  if (bad !== undefined) {
    throw inputError("samples", `A value must be a number or Infinity, but one is ${bad}.`);
  }
  if (sorted.length === 0) return undefined;
  const { low, median, high } = BAND_SHARES;
  return {
    low: edge(sorted, low),
    median: edge(sorted, median),
    high: edge(sorted, high),
    found: sorted.length,
    of: values.length,
    endless: sorted.filter((v) => v === Number.POSITIVE_INFINITY).length / sorted.length,
  };
}

export interface NoiseBand {
  /** deg/s rms */
  readonly perSecond: Band;
  /** above the reference, dB */
  readonly decibel: Band;
}

/**
 * The band of a gyro's noise as it is and as a level. The edges of the level are quantiles of levels, so
 * between two samples they may differ a little from the level of the edge in deg/s.
 *
 * @param gyro deg/s rms, above 0
 * @param reference deg/s rms at 0 dB: the frame as written
 * @throws InputError where a value or the reference is not above 0 and finite, or there are none
 */
export function noiseBand(gyro: readonly number[] | Float64Array, reference: number): NoiseBand {
  const bad = [reference, ...gyro].find((v) => !(v > 0 && v < Number.POSITIVE_INFINITY));
  if (bad !== undefined) {
    throw inputError(
      "samples",
      `Gyro noise must be finite and above 0 deg/s, but one value is ${bad}.`,
    );
  }
  const perSecond = bandOf(gyro);
  const decibel = bandOf(Float64Array.from(gyro, (v) => 20 * Math.log10(v / reference)));
  if (perSecond === undefined || decibel === undefined) {
    throw inputError("samples", "A band of gyro noise needs at least 1 sample, but there are 0.");
  }
  return { perSecond, decibel };
}

function edge(sorted: Float64Array, p: number): Edge {
  const s = Math.sqrt((p * (1 - p)) / sorted.length);
  const value = quantile(sorted, p);
  if (p - s <= 0 || p + s >= 1) return { value, error: Number.POSITIVE_INFINITY };
  const [below, above] = [quantile(sorted, p - s), quantile(sorted, p + s)];
  return { value, error: below === above ? 0 : (above - below) / 2 };
}

/** Definition 8 of Hyndman and Fan; `sorted` ascending, not empty. */
function quantile(sorted: Float64Array, p: number): number {
  const n = sorted.length;
  const at = Math.min(Math.max((n + 1 / 3) * p + 1 / 3, 1), n) - 1;
  const k = Math.min(Math.floor(at), Math.max(n - 2, 0));
  const [a, b] = [sorted[k], sorted[Math.min(k + 1, n - 1)]];
  // Without the first case Infinity less Infinity, or 0 times Infinity.
  return a === b || at === k ? a : a + (at - k) * (b - a);
}
