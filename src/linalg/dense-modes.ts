/** The lowest modes by dense algebra: for small problems, and as the check of the sparse path. */

import { SolveError } from "../errors.ts";
import { backwardInPlace, choleskyInPlace, forwardInPlace, symmetricEigen } from "./dense.ts";
import { betterShift, guessShift, TRIES } from "./shift.ts";
import { requireSamePattern, type SymmetricSparse, toDense } from "./sparse.ts";
import { innerProducts, subtractProduct } from "./tall.ts";

export interface DenseModes {
  /** Ascending; at most `count`, fewer when M is singular. */
  readonly lambda: Float64Array;
  /** M-normalised, n x lambda.length, column-major. */
  readonly phi: Float64Array;
}

/**
 * The lowest modes of K phi = lambda M phi by dense algebra throughout: the check of the sparse
 * path, for n up to about 1500 (300 unknowns take 0.4 s, time grows with n^3).
 *
 * With sigma < 0, K - sigma M = L L' and A = L^-1 M L'^-1, A y = theta y gives
 * lambda = sigma + 1 / theta and phi = L'^-1 y / sqrt(theta). M may be singular.
 *
 * @param shift sigma; choose it near minus the lowest elastic eigenvalue, by default that is done
 */
export function denseModes(
  K: SymmetricSparse,
  M: SymmetricSparse,
  count: number,
  shift?: number,
): DenseModes {
  requireSamePattern(K, M);
  if (shift !== undefined) return shiftedModes(K, M, count, shift);
  const first = guessShift(K, M);
  const rough = shiftedModes(K, M, count, first);
  const better = betterShift(
    rough.lambda.map((l) => 1 / (l - first)),
    first,
  );
  return better === undefined ? rough : shiftedModes(K, M, count, better);
}

/**
 * The modes of the pencil shifted by about `first` < 0, without those in the span of `deflated`.
 *
 * @param deflated eigenvectors of the pencil to leave out (n x its columns, column-major)
 */
export function shiftedModes(
  K: SymmetricSparse,
  M: SymmetricSparse,
  count: number,
  first: number,
  deflated: Float64Array = new Float64Array(0),
): DenseModes {
  const n = K.pattern.n;
  const A = toDense(M);
  const { L, sigma } = choleskyBelow(toDense(K), A, n, first);
  forwardInPlace(L, n, A, n); /*  A := L^-1 M           */
  transposeInPlace(A, n);
  forwardInPlace(L, n, A, n); /*  A := L^-1 (L^-1 M)'   */
  const r = deflated.length / n;
  if (r > 0) projectOut(A, n, orthonormalImage(L, n, deflated, r), r);
  const { values, vectors } = symmetricEigen(A, n);
  const infinite = n * Number.EPSILON * values[n - 1];
  const finite = values.reduce((sum, theta) => sum + (theta > infinite ? 1 : 0), 0);
  const found = Math.min(count, finite, n - r);
  const lambda = new Float64Array(found);
  const phi = new Float64Array(n * found);
  for (let k = 0; k < found; k++) {
    const theta = values[n - 1 - k];
    lambda[k] = sigma + 1 / theta;
    for (let i = 0; i < n; i++) phi[k * n + i] = vectors[(n - 1 - k) * n + i] / Math.sqrt(theta);
  }
  backwardInPlace(L, n, phi, found);
  return { lambda, phi };
}

/** K - sigma M = L L', with sigma further from zero if rounding spoils the first try. */
function choleskyBelow(
  K: Float64Array,
  M: Float64Array,
  n: number,
  first: number,
): { L: Float64Array; sigma: number } {
  for (let attempt = 1, sigma = first; ; attempt++, sigma *= 100) {
    const L = K.map((k, p) => k - sigma * M[p]);
    try {
      choleskyInPlace(L, n);
      return { L, sigma };
    } catch (error) {
      if (!(error instanceof SolveError) || attempt === TRIES) throw error;
    }
  }
}

/** Orthonormal Z that spans L' R (n x r, column-major). */
function orthonormalImage(L: Float64Array, n: number, R: Float64Array, r: number): Float64Array {
  const Z = new Float64Array(n * r);
  for (let c = 0; c < r; c++) {
    for (let i = 0; i < n; i++) {
      for (let k = 0; k <= i; k++) Z[c * n + k] += L[i * n + k] * R[c * n + i];
    }
    const z = Z.subarray(c * n, (c + 1) * n);
    for (let pass = 0; pass < 2; pass++) {
      for (let d = 0; d < c; d++) {
        let h = 0;
        for (let i = 0; i < n; i++) h += Z[d * n + i] * z[i];
        for (let i = 0; i < n; i++) z[i] -= h * Z[d * n + i];
      }
    }
    const norm = Math.hypot(...z);
    for (let i = 0; i < n; i++) z[i] /= norm;
  }
  return Z;
}

/** A := (I - Z Z') A (I - Z Z') = A - Z V' - V Z' with V = A Z - Z (Z' A Z) / 2. */
function projectOut(A: Float64Array, n: number, Z: Float64Array, r: number): void {
  const V = new Float64Array(n * r);
  for (let c = 0; c < r; c++) {
    for (let i = 0; i < n; i++) {
      for (let k = 0; k < n; k++) V[c * n + i] += A[i * n + k] * Z[c * n + k];
    }
  }
  const S = new Float64Array(r * r);
  innerProducts(S, Z, r, V, r, n);
  for (let q = 0; q < S.length; q++) S[q] /= 2;
  subtractProduct(V, r, Z, r, S, n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      for (let c = 0; c < r; c++) {
        A[i * n + j] -= Z[c * n + i] * V[c * n + j] + V[c * n + i] * Z[c * n + j];
      }
    }
  }
}

function transposeInPlace(A: Float64Array, n: number): void {
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < i; j++) {
      const a = A[i * n + j];
      A[i * n + j] = A[j * n + i];
      A[j * n + i] = a;
    }
  }
}
