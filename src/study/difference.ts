/** Whether two variants differ, by rules. */

import type { Band, Edge } from "./bands.ts";
import type { PairedNoise, PairedShift } from "./paired.ts";

/** A difference below this does not matter, dB; common practice, no source. */
export const LEAST_LEVEL = 0.5;
/** A shift of a frequency below this share does not matter; common practice, no source. */
const LEAST_SHIFT = 0.01;

export interface Difference {
  /**
   * real: the 90 % band of the paired difference excludes 0, also when its edge is off by one standard
   * error, and its median is 0.5 dB or more;
   * unsure: it excludes 0, but not by the error of its edge: more samples would tell;
   * small: it excludes 0, but its median is below 0.5 dB, which does not matter;
   * alike: it holds 0 and lies within 0.5 dB of it;
   * open: it holds 0 and reaches further: either may be the quieter
   */
  readonly kind: "real" | "unsure" | "small" | "alike" | "open";
  /** of the median: 0 the first, 1 the second */
  readonly quieter: 0 | 1;
  /** the other above the quieter, dB; its median is 0 or more */
  readonly by: Pick<Band, "low" | "median" | "high">;
}

/**
 * Standard errors that the edge of a band must be away from zero: one-sided 95 %. With one of them alone
 * and sampling until it is so, a quarter of the cases on the border would be called real.
 */
const SURE = 1.645;

/** @returns undefined where no sample has a place in both */
export function differenceOf({ decibel }: PairedNoise): Difference | undefined {
  if (decibel === undefined) return undefined;
  const quieter = decibel.median.value < 0 ? 1 : 0;
  const by = quieter === 1 ? turned(decibel) : decibel;
  return { kind: kindOf(by), quieter, by };
}

function kindOf({ low, median, high }: Difference["by"]): Difference["kind"] {
  if (low.value > 0) {
    if (median.value < LEAST_LEVEL) return "small";
    return low.value > SURE * low.error ? "real" : "unsure";
  }
  return Math.max(-low.value, high.value) <= LEAST_LEVEL ? "alike" : "open";
}

/** A band with its sign changed. */
export function turned({ low, median, high }: Difference["by"]): Difference["by"] {
  const minus = ({ value, error }: Edge): Edge => ({ value: -value, error });
  return { low: minus(high), median: minus(median), high: minus(low) };
}

/**
 * Whether a frequency moves: the 90 % band of the paired shift excludes 0, also when its edge is off by
 * SURE standard errors, and its median is 1 % or more.
 */
export function isRealShift({ hertz, relative }: PairedShift): boolean {
  const { low } = hertz.median.value < 0 ? turned(hertz) : hertz;
  return low.value > SURE * low.error && Math.abs(relative.median.value) >= LEAST_SHIFT;
}
