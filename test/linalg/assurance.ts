/**
 * Whether two sets of modes are the same: the modal assurance criterion, by whole eigenspaces where
 * eigenvalues are close, since modes of a repeated eigenvalue may be turned among themselves.
 */

import { symmetricEigen } from "../../src/linalg/dense.ts";
import { multiply } from "../../src/linalg/product.ts";
import type { SymmetricSparse } from "../../src/linalg/sparse.ts";
import { dot } from "./expect-modes.ts";

/**
 * |a' b|^2 / (a' a b' b), 1 for the same shape at any scale (R. J. Allemang & D. L. Brown, "A
 * correlation coefficient for modal vector analysis", 1982, from memory).
 */
export function assurance(a: Float64Array, b: Float64Array): number {
  return dot(a, b) ** 2 / (dot(a, a) * dot(b, b));
}

/**
 * cos^2 of the largest principal angle between the spans of the columns of X and of Y, in the inner
 * product of M: the least eigenvalue of C' C, C = X' M Y (A. Bjorck & G. H. Golub, "Numerical methods for
 * computing angles between linear subspaces", Math. Comp. 27 (1973), from memory).
 *
 * @param X M-orthonormal columns
 * @param Y M-orthonormal columns, as many
 */
export function spanAssurance(
  M: SymmetricSparse,
  X: readonly Float64Array[],
  Y: readonly Float64Array[],
): number {
  const k = X.length;
  const MY = Y.map((y) => {
    const out = new Float64Array(y.length);
    multiply(out, M, y);
    return out;
  });
  const C = X.map((x) => MY.map((my) => dot(x, my)));
  const CtC = new Float64Array(k * k);
  for (let i = 0; i < k; i++) {
    for (let j = 0; j < k; j++) CtC[i * k + j] = C.reduce((sum, row) => sum + row[i] * row[j], 0);
  }
  return symmetricEigen(CtC, k).values[0];
}

export interface Cluster {
  readonly first: number;
  /** exclusive */
  readonly end: number;
}

/** Runs of eigenvalues that follow each other within `relative`. */
export function clusters(lambda: Float64Array, relative: number): Cluster[] {
  const found: Cluster[] = [];
  let first = 0;
  for (let k = 1; k <= lambda.length; k++) {
    if (k < lambda.length && lambda[k] - lambda[k - 1] <= relative * lambda[k]) continue;
    found.push({ first, end: k });
    first = k;
  }
  return found;
}
