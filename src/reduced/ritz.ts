/** The small eigenproblem of a variant in the space. */

import { backwardInPlace, choleskyInPlace, forwardInPlace } from "../linalg/dense.ts";
import { symmetricPairs } from "../linalg/symmetric-eigen.ts";

export interface RitzPairs {
  /** rad^2/s^2, ascending (size width) */
  readonly lambda: Float64Array;
  /** coordinates in the space, B-orthonormal (width x width, column-major) */
  readonly Y: Float64Array;
}

/**
 * All pairs of A y = lambda B y.
 *
 * @param A, B symmetric, order `width`, row-major; B positive definite; both are overwritten
 * @throws SolveError where B is not positive definite
 */
export function ritzPairs(A: Float64Array, B: Float64Array, width: number): RitzPairs {
  const w = width;
  choleskyInPlace(B, w); // B = L L'
  forwardInPlace(B, w, A, w); // columns of A, which are its rows: (A L'^-1)' = L^-1 A
  const C = new Float64Array(w * w);
  for (let i = 0; i < w; i++) for (let j = 0; j < w; j++) C[i * w + j] = A[j * w + i];
  forwardInPlace(B, w, C, w); // L^-1 A L'^-1
  for (let i = 0; i < w; i++) {
    for (let j = 0; j < i; j++) {
      C[i * w + j] = (C[i * w + j] + C[j * w + i]) / 2;
      C[j * w + i] = C[i * w + j];
    }
  }
  const { values, vectors } = symmetricPairs(C, w);
  backwardInPlace(B, w, vectors, w);
  return { lambda: values, Y: vectors };
}
