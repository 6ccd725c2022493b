/**
 * Derivatives of eigenvalues from those of the matrices.
 *
 * Of a mode by itself: d lambda = phi'(dK - lambda dM) phi for Phi'M Phi = 1 (R. L. Fox & M. P. Kapoor,
 * AIAA J. 6, 1968; from memory). Modes of one frequency have no shapes of their own: any combination is
 * as good. The derivatives there are the eigenvalues of Phi'(dK - lambda dM)Phi on all of them
 * (W. C. Mills-Curran, AIAA J. 26, 1988; I. U. Ojalvo, AIAA J. 26, 1988; from memory). Modes that are
 * merely close behave so as soon as the input moves them by more than they lie apart.
 */

import { symmetricEigen } from "../linalg/dense.ts";

/** Phi'(dK/dp)Phi and Phi'(dM/dp)Phi (modes x modes, row-major, symmetric), per SI unit of the input. */
export interface Pair {
  readonly K: Float64Array;
  readonly M: Float64Array;
}

/**
 * Frequencies within this share of the next are taken as one cluster. The program's inputs put modes about
 * 7 % off, and a change that is worth a look moves one by 0.5 % and more.
 */
export const CLUSTER = 0.005;

/** Numbers of modes, 0.., that lie close to each other, one after the other; modes alone are left out. */
export function clustersOf(lambda: Float64Array, within = CLUSTER): number[][] {
  const groups: number[][] = [];
  let group = [0];
  for (let i = 1; i <= lambda.length; i++) {
    const isClose = i < lambda.length && Math.sqrt(lambda[i] / lambda[i - 1]) - 1 < within;
    if (isClose) group.push(i);
    else {
      if (group.length > 1) groups.push(group);
      group = [i];
    }
  }
  return groups;
}

/** d lambda_i of every mode as if it were alone. */
export function ownSlopes(lambda: Float64Array, { K, M }: Pair): Float64Array {
  const m = lambda.length;
  return lambda.map((l, i) => K[i * m + i] - l * M[i * m + i]);
}

/**
 * d lambda of every mode; those of a cluster are the cluster's, each given to the mode whose shape its
 * combination is most like.
 */
export function slopesOf(
  lambda: Float64Array,
  pair: Pair,
  clusters: readonly (readonly number[])[],
): Float64Array {
  const slopes = ownSlopes(lambda, pair);
  for (const group of clusters) {
    const found = clusterSlopes(lambda, pair, group);
    group.forEach((i, k) => {
      slopes[i] = found[k];
    });
  }
  return slopes;
}

/** In the order of the modes of the group. */
function clusterSlopes(
  lambda: Float64Array,
  { K, M }: Pair,
  group: readonly number[],
): Float64Array {
  const m = lambda.length;
  const c = group.length;
  const G = new Float64Array(c * c);
  group.forEach((i, a) => {
    group.forEach((j, b) => {
      G[a * c + b] = K[i * m + j] - ((lambda[i] + lambda[j]) / 2) * M[i * m + j];
    });
  });
  const { values, vectors } = symmetricEigen(G, c);
  const out = new Float64Array(c).fill(Number.NaN);
  const pairs = Array.from({ length: c * c }, (_, p) => {
    const [branch, mode] = [Math.floor(p / c), p % c];
    return { branch, mode, share: Math.round(1e6 * vectors[branch * c + mode] ** 2) };
  }).sort((p, q) => q.share - p.share);
  const used = new Set<number>();
  for (const { branch, mode } of pairs) {
    if (used.has(branch) || !Number.isNaN(out[mode])) continue;
    used.add(branch);
    out[mode] = values[branch];
  }
  return out;
}
