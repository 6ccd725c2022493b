/** Where the spectrum can be cut, so that a count of eigenvalues below the cut proves something. */

import type { RitzValues } from "./lanczos.ts";

export interface Gap {
  /** Eigenvalues below the gap, at least as many as were asked for. */
  readonly below: number;
  /** Nothing is known to lie between the last of these and `upper` (Infinity after the last). */
  readonly upper: number;
}

/** A gap this wide, relative to lambda - sigma, is taken at once ... */
const WIDE = 1e-3;
/** ... one this narrow is taken when there is no better among ... */
const NARROW = 1e-6;
/** ... so many eigenvalues beyond the wanted ones. */
const REACH = 24;

/**
 * The first gap at or behind eigenvalue number `count`: a cluster is never cut.
 *
 * Returns undefined while the values next to the gap are too vague; theta is known to lie within
 * its residual, so lambda = sigma + 1 / theta lies within 1 / (theta +- residual).
 */
export function findGap(
  { theta, residual, exhausted }: RitzValues,
  sigma: number,
  count: number,
): Gap | undefined {
  const total = theta.length;
  let best: Gap | undefined;
  let bestWidth = NARROW;
  for (let below = Math.min(count, total); below <= count + REACH; below++) {
    if (below === total) return exhausted ? { below, upper: Number.POSITIVE_INFINITY } : undefined;
    const last = below - 1;
    if (below > 0 && !(residual[last] <= 1e-6 * theta[last])) return undefined;
    if (!(residual[below] <= 1e-3 * theta[below])) return undefined;
    const floor = below > 0 ? 1 / (theta[last] - residual[last]) : -sigma;
    const width = 1 / (theta[below] + residual[below]) - floor;
    if (width > bestWidth * floor) {
      best = { below, upper: sigma + floor + width };
      bestWidth = width / floor;
      if (bestWidth >= WIDE) return best;
    }
  }
  return best;
}

/** Places for the cut between `lower` and the upper end of the gap, the preferred one first. */
export function cutPlaces(lower: number, upper: number, sigma: number): number[] {
  const scale = Math.max(lower - sigma, -sigma);
  const width = Math.min(upper - lower, scale);
  // Just above the last eigenvalue: what lies further up may not be known exactly yet.
  const near = Math.min(width / 2, scale / 100);
  return [near, width / 2, width / 3, width / 5].map((step) => lower + step);
}
