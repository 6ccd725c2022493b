/** Small dense symmetric matrices in tests: products, quadratic forms, the smallest eigenvalue. */

import { EigenvalueDecomposition, Matrix } from "ml-matrix";

/** A x for a row-major n x n matrix, n = x.length. */
export function times(A: ArrayLike<number>, x: ArrayLike<number>): number[] {
  const n = x.length;
  return Array.from({ length: n }, (_, i) => {
    let sum = 0;
    for (let j = 0; j < n; j++) sum += A[n * i + j] * x[j];
    return sum;
  });
}

/** x'A y. */
export function form(A: ArrayLike<number>, x: ArrayLike<number>, y: ArrayLike<number> = x): number {
  return times(A, y).reduce((sum, v, i) => sum + v * x[i], 0);
}

/** The largest |A_ij|. */
export function largest(A: ArrayLike<number>): number {
  return Array.from(A).reduce((m, v) => Math.max(m, Math.abs(v)), 0);
}

/** The largest |A_ij - A_ji|. */
export function asymmetry(A: ArrayLike<number>, n: number): number {
  let worst = 0;
  for (let i = 0; i < n; i++)
    for (let j = 0; j < i; j++) worst = Math.max(worst, Math.abs(A[n * i + j] - A[n * j + i]));
  return worst;
}

/** Eigenvalues of a symmetric row-major n x n matrix, ascending. */
export function eigenvalues(A: ArrayLike<number>, n: number): number[] {
  const rows = Array.from({ length: n }, (_, i) => Array.from(A).slice(n * i, n * i + n));
  const { realEigenvalues } = new EigenvalueDecomposition(new Matrix(rows), {
    assumeSymmetric: true,
  });
  return [...realEigenvalues].sort((a, b) => a - b);
}

/**
 * The six rigid-body motions of nodes at these places, 6 unknowns each: three translations, then
 * three rotations about the origin, u = theta x r.
 */
export function rigidMotions(nodes: readonly (readonly number[])[]): number[][] {
  return [0, 1, 2, 3, 4, 5].map((motion) =>
    nodes.flatMap(([x, y, z]) => {
      const u = [0, 0, 0, 0, 0, 0];
      u[motion] = 1;
      if (motion === 3) [u[1], u[2]] = [-z, y];
      if (motion === 4) [u[0], u[2]] = [z, -x];
      if (motion === 5) [u[0], u[1]] = [-y, x];
      return u;
    }),
  );
}
