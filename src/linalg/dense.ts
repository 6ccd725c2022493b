/** Small dense problems: symmetric eigenvalues through ml-matrix, and Cholesky. */

import { EigenvalueDecomposition, Matrix } from "ml-matrix";
import { SolveError } from "../errors.ts";

export interface SymmetricEigen {
  /** Ascending (size n). */
  readonly values: Float64Array;
  /** Orthonormal eigenvectors, n x n, column-major. */
  readonly vectors: Float64Array;
}

/** Eigenvalues and vectors of a symmetric n x n matrix, given in full. */
export function symmetricEigen(A: Float64Array, n: number): SymmetricEigen {
  if (n === 0) return { values: new Float64Array(0), vectors: new Float64Array(0) };
  const rows = Array.from({ length: n }, (_, i) => A.subarray(i * n, i * n + n));
  const { realEigenvalues, eigenvectorMatrix } = new EigenvalueDecomposition(new Matrix(rows), {
    assumeSymmetric: true,
  });
  const order = Array.from(realEigenvalues.keys()).sort(
    (a, b) => realEigenvalues[a] - realEigenvalues[b] || a - b,
  );
  const values = Float64Array.from(order, (k) => realEigenvalues[k]);
  const vectors = new Float64Array(n * n);
  const found = eigenvectorMatrix.to2DArray();
  order.forEach((k, c) => {
    for (let i = 0; i < n; i++) vectors[c * n + i] = found[i][k];
  });
  return { values, vectors };
}

/**
 * Overwrites the lower triangle of A (n x n, row by row) with L, A = L L'.
 *
 * @throws SolveError naming the row at which A turns out not to be positive definite
 */
export function choleskyInPlace(A: Float64Array, n: number): void {
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = A[i * n + j];
      for (let k = 0; k < j; k++) sum -= A[i * n + k] * A[j * n + k];
      if (j < i) A[i * n + j] = sum / A[j * n + j];
      else if (sum > 0) A[i * n + i] = Math.sqrt(sum);
      else throw new SolveError(`the matrix is not positive definite: pivot ${i} is ${sum}`);
    }
  }
}

/**
 * x := L^-1 x for every column of X (n x columns, column-major). Four columns go together, so that four
 * sums that wait for nothing but themselves keep the processor busy.
 */
export function forwardInPlace(L: Float64Array, n: number, X: Float64Array, columns: number): void {
  let c = 0;
  for (; c + 3 < columns; c += 4) forwardFour(L, n, X, c * n);
  for (; c < columns; c++) {
    const x = X.subarray(c * n, (c + 1) * n);
    for (let i = 0; i < n; i++) {
      let sum = x[i];
      for (let k = 0; k < i; k++) sum -= L[i * n + k] * x[k];
      x[i] = sum / L[i * n + i];
    }
  }
}

function forwardFour(L: Float64Array, n: number, X: Float64Array, a: number): void {
  const b = a + n;
  const c = b + n;
  const d = c + n;
  for (let i = 0; i < n; i++) {
    const row = i * n;
    let p = X[a + i];
    let q = X[b + i];
    let r = X[c + i];
    let s = X[d + i];
    for (let k = 0; k < i; k++) {
      const l = L[row + k];
      p -= l * X[a + k];
      q -= l * X[b + k];
      r -= l * X[c + k];
      s -= l * X[d + k];
    }
    const l = L[row + i];
    X[a + i] = p / l;
    X[b + i] = q / l;
    X[c + i] = r / l;
    X[d + i] = s / l;
  }
}

/** x := L'^-1 x for every column of X (n x columns, column-major). */
export function backwardInPlace(
  L: Float64Array,
  n: number,
  X: Float64Array,
  columns: number,
): void {
  for (let c = 0; c < columns; c++) {
    const x = X.subarray(c * n, (c + 1) * n);
    for (let i = n - 1; i >= 0; i--) {
      x[i] /= L[i * n + i];
      for (let k = 0; k < i; k++) x[k] -= L[i * n + k] * x[i];
    }
  }
}
