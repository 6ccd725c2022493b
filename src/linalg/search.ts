/** Searches for modes with the block Lanczos iteration: what to look for, and when to stop. */

import { findGap, type Gap } from "./gap.ts";
import { lanczos, type RitzValues, type ShiftInvert, type Verdict } from "./lanczos.ts";
import type { MBasis } from "./m-basis.ts";
import { betterShift } from "./shift.ts";

/**
 * Vectors per step. The kernels take four at a time, and that decides: one by one fewest vectors
 * are needed, but 40 modes of 5280 unknowns took 1450, 840, 860, 580 and 1000 ms of iteration (99,
 * 116, 135, 140 and 168 vectors) in blocks of 1, 2, 3, 4 and 6.
 */
export const BLOCK_SIZE = 4;

/**
 * An iteration residual rho = ||OP y - theta y|| / theta becomes the energy residual
 * rho sqrt(theta q' A q), q the next Lanczos vector: 3 to 10 times rho for the last of 40 modes.
 */
const MARGIN = 50;

export interface Found {
  /** n x gap.below, column-major, M-orthonormal. */
  readonly vectors: Float64Array;
  readonly gap: Gap;
  readonly calls: number;
}

/** The shift turned out to be far from the spectrum: try `better`. */
export interface PoorShift {
  readonly better: number;
  readonly calls: number;
}

export interface SearchOptions {
  readonly count: number;
  readonly sigma: number;
  /** Energy residual (see quality.ts) that wanted modes must reach. */
  readonly tolerance: number;
  readonly random: () => number;
  readonly start?: Float64Array | undefined;
  /** Whether to give up early when the shift is poor. */
  readonly judgeShift: boolean;
}

/**
 * The lowest modes, at least `count` of them, up to a gap in the spectrum.
 *
 * @throws SolveError when they cannot be had
 */
export function searchLowest(
  operator: ShiftInvert,
  rigid: MBasis,
  options: SearchOptions,
): Found | PoorShift {
  const { count, sigma, random, judgeShift } = options;
  const tolerance = options.tolerance / MARGIN;
  let better: number | undefined;
  let gap: Gap | undefined;
  let looks = 0;
  // The wanted residuals come down by so many decades per vector, as a rule.
  let perVector = 0.3;
  let before: { readonly total: number; readonly decades: number } | undefined;
  const choose = (ritz: RitzValues): Verdict => {
    if (looks++ === 0 && judgeShift) {
      better = betterShift(ritz.theta, sigma);
      if (better !== undefined) return { take: 0 };
    }
    const total = ritz.theta.length;
    const wanted = Math.min(count, total);
    if (ritz.exhausted || (total >= count && converged(ritz, tolerance) >= wanted)) {
      gap = findGap(ritz, sigma, wanted);
      if (gap !== undefined) return { take: gap.below };
      return { lookAfter: 2 * BLOCK_SIZE };
    }
    if (total < 2 * count) return { lookAfter: 2 * count - total };
    let worst = 0;
    for (let k = 0; k < count; k++) worst = Math.max(worst, ritz.residual[k] / ritz.theta[k]);
    const decades = Math.log10(worst / tolerance);
    // After a restart the basis is smaller than before: that says nothing about the pace.
    if (before !== undefined && total > before.total) {
      perVector = (before.decades - decades) / (total - before.total);
    }
    before = { total, decades };
    const due = decades / Math.max(perVector, 0.1);
    return { lookAfter: BLOCK_SIZE * Math.max(1, Math.ceil(due / BLOCK_SIZE)) };
  };
  const found = lanczos(operator, rigid, choose, {
    blockSize: BLOCK_SIZE,
    maxBasis: 3 * count + 60,
    maxCalls: 40 * count + 2000,
    firstLook: 4 * BLOCK_SIZE,
    random,
    start: options.start,
  });
  if (better !== undefined) return { better, calls: found.calls };
  return { vectors: found.vectors, gap: gap as Gap, calls: found.calls };
}

/**
 * Modes below mu that a search missed: the operator is kept away from all that is known.
 *
 * Returns at most what is found below mu, possibly nothing (n x columns, column-major).
 */
export function searchMissing(
  operator: ShiftInvert,
  known: MBasis,
  mu: number,
  missing: number,
  options: Pick<SearchOptions, "sigma" | "tolerance" | "random">,
): Pick<Found, "vectors" | "calls"> {
  const { sigma, random } = options;
  const tolerance = options.tolerance / MARGIN;
  const least = 1 / (mu - sigma); // theta of an eigenvalue at mu
  const choose = (ritz: RitzValues): Verdict => {
    const below = ritz.theta.findIndex((theta) => !(theta > least));
    const candidates = below < 0 ? ritz.theta.length : below;
    const certain = converged(ritz, tolerance);
    if (certain >= missing && candidates >= missing) return { take: Math.min(certain, candidates) };
    // The first value beyond mu has settled, so nothing else will come up below.
    const settled = below >= 0 && ritz.residual[below] <= 1e-6 * ritz.theta[below];
    if (ritz.exhausted || (settled && certain >= candidates)) return { take: candidates };
    return { lookAfter: 2 * BLOCK_SIZE };
  };
  return lanczos(operator, known, choose, {
    blockSize: BLOCK_SIZE,
    maxBasis: 3 * missing + 60,
    maxCalls: 40 * missing + 2000,
    firstLook: 4 * BLOCK_SIZE,
    random,
  });
}

/** How many of the first Ritz values have settled. */
function converged({ theta, residual }: RitzValues, tolerance: number): number {
  let k = 0;
  while (k < theta.length && residual[k] <= tolerance * theta[k]) k++;
  return k;
}
