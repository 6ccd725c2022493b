/** A share of samples with how well it is known. */

import { inputError } from "../errors.ts";
import { SIGMAS_95 } from "./normal.ts";

export interface Chance {
  /** 0 to 1 */
  readonly share: number;
  /** one standard error; above 0 also where all or no samples count */
  readonly error: number;
  /** limits that hold the true share 19 times in 20 */
  readonly lower: number;
  readonly upper: number;
  /** samples the share is of */
  readonly of: number;
}

/**
 * E. B. Wilson, "Probable inference, the law of succession, and statistical inference", Journal of the
 * American Statistical Association 22 (1927); advised for small numbers by L. D. Brown, T. T. Cai and
 * A. DasGupta, "Interval estimation for a binomial proportion", Statistical Science 16 (2001), section 4
 * (both from memory). The standard error is half the interval of one standard deviation: at 0 and 1
 * the usual formula would claim none. For independent samples; an upper estimate for evenly spread ones.
 *
 * @param count 0 to `of`; a part of a sample where a lead is shared
 * @param of samples
 * @throws InputError unless `of` is a whole number above 0 and `count` is from 0 to `of`
 */
export function chance(count: number, of: number): Chance {
  if (!(Number.isInteger(of) && of > 0 && count >= 0 && count <= of)) {
    throw inputError(
      "samples",
      `A chance must be a part of 1 or more samples, but is ${count} of ${of}.`,
    );
  }
  const share = count / of;
  const [lower, upper] = wilson(share, of, SIGMAS_95);
  const [below, above] = wilson(share, of, 1);
  return { share, error: (above - below) / 2, lower, upper, of };
}

function wilson(share: number, n: number, z: number): [number, number] {
  const middle = (share + (z * z) / (2 * n)) / (1 + (z * z) / n);
  const half =
    (z * Math.sqrt((share * (1 - share)) / n + (z * z) / (4 * n * n))) / (1 + (z * z) / n);
  // At 0 and 1 the limits are 0 and 1, but for rounding.
  return [share === 0 ? 0 : middle - half, share === 1 ? 1 : middle + half];
}
