/** The lowest modes by dense algebra: the check of the sparse path. */

import { SolveError } from "../errors.ts";
import { backwardInPlace, choleskyInPlace, forwardInPlace, symmetricEigen } from "./dense.ts";
import { betterShift, guessShift, TRIES } from "./shift.ts";
import { requireSamePattern, type SymmetricSparse, toDense } from "./sparse.ts";

export interface DenseModes {
  /** Ascending; at most `count`, fewer when M is singular. */
  readonly lambda: Float64Array;
  /** M-normalised, n x lambda.length, column-major. */
  readonly phi: Float64Array;
}

/**
 * The lowest modes of K phi = lambda M phi by dense algebra throughout: the check of the sparse
 * path, for n up to about 1500 (300 unknowns take 0.8 s, time grows with n^3).
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

/** The modes with a shift of about `first` < 0. */
function shiftedModes(
  K: SymmetricSparse,
  M: SymmetricSparse,
  count: number,
  first: number,
): DenseModes {
  const n = K.pattern.n;
  const A = toDense(M);
  const { L, sigma } = choleskyBelow(toDense(K), A, n, first);
  forwardInPlace(L, n, A, n); /*  A := L^-1 M           */
  transposeInPlace(A, n);
  forwardInPlace(L, n, A, n); /*  A := L^-1 (L^-1 M)'   */
  const { values, vectors } = symmetricEigen(A, n);
  const infinite = n * Number.EPSILON * values[n - 1];
  const finite = values.reduce((sum, theta) => sum + (theta > infinite ? 1 : 0), 0);
  const found = Math.min(count, finite);
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

function transposeInPlace(A: Float64Array, n: number): void {
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < i; j++) {
      const a = A[i * n + j];
      A[i * n + j] = A[j * n + i];
      A[j * n + i] = a;
    }
  }
}
