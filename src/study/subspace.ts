/** Shapes compared as the spaces they span. */

import { dot } from "../variants/assurance.ts";

/** A vector shorter than this share of itself after the others are taken out adds nothing to a space. */
const NOTHING = 1e-6;

/** An orthonormal basis of the vectors' span (modified Gram-Schmidt, twice). */
export function orthonormal(vectors: readonly Float64Array[]): Float64Array[] {
  const basis: Float64Array[] = [];
  for (const v of vectors) {
    const w = v.slice();
    for (let pass = 0; pass < 2; pass++) {
      for (const e of basis) {
        const c = dot(w, e);
        for (let i = 0; i < w.length; i++) w[i] -= c * e[i];
      }
    }
    const length = Math.sqrt(dot(w, w));
    if (length > NOTHING * Math.sqrt(dot(v, v))) basis.push(w.map((x) => x / length));
  }
  return basis;
}

/** cos^2 of the angle between a unit vector and the space of an orthonormal basis, 0..1. */
export function shareIn(basis: readonly Float64Array[], v: Float64Array): number {
  return Math.min(
    1,
    basis.reduce((sum, e) => sum + dot(e, v) ** 2, 0),
  );
}

/** The vectors of `others` that best span the same space as a group of `vectors`. */
export interface LikeVectors {
  /** as many as the group, rising */
  readonly chosen: readonly number[];
  /** least share of any of these vectors that lies in the other's space, 0..1 */
  readonly share: number;
}

/**
 * @param vectors unit vectors, of which `group` are meant
 * @param others unit vectors, of which `open` may be chosen
 * @returns undefined where too few may be chosen
 */
export function likestVectors(
  vectors: readonly Float64Array[],
  group: readonly number[],
  others: readonly Float64Array[],
  open: readonly number[],
): LikeVectors | undefined {
  if (open.length < group.length) return undefined;
  const mine = orthonormal(group.map((i) => vectors[i]));
  const shares = new Map(open.map((j) => [j, shareIn(mine, others[j])]));
  const chosen = [...open]
    .sort((p, q) => shares.get(q)! - shares.get(p)! || p - q)
    .slice(0, group.length)
    .sort((p, q) => p - q);
  const theirs = orthonormal(chosen.map((j) => others[j]));
  const share = Math.min(
    ...chosen.map((j) => shares.get(j)!),
    ...group.map((i) => shareIn(theirs, vectors[i])),
  );
  return { chosen, share };
}
