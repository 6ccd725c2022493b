/** How well the factors of a matrix solve with it. */

import type { Factor } from "./factorise.ts";
import { multiply } from "./product.ts";
import { fixedSeedGenerator } from "./random.ts";
import { solveInPlace } from "./solve.ts";
import { diagonal, type SymmetricSparse } from "./sparse.ts";

/**
 * Solves A y = A x for one x, with all unknowns of the same energy, and returns || S^-1 (A x - A y) || /
 * || S y ||, S = sqrt(diag): how far off, relative to its diagonal, the matrix is that was factorised.
 *
 * Measured on frames and grids: 2e-16 to 5e-16 for a definite A, growth times 1e-16 for an indefinite
 * one. One pivot wrong by a millionth gives 1e-10 or more as a rule; less where a pivot belongs to a
 * motion much softer than the shift, a rigid-body motion say, in which little energy is stored: such an
 * error is not seen here, and hardly moves elastic modes.
 *
 * @param scale what entries are compared with: the diagonal of A without cancellation (size n, positive)
 */
export function backwardError(
  factor: Factor,
  A: SymmetricSparse,
  scale: Float64Array = diagonal(A),
): number {
  const { n } = A.pattern;
  const random = fixedSeedGenerator();
  const s = scale.map(Math.sqrt);
  const x = s.map((si) => random() / si);
  const b = new Float64Array(n);
  multiply(b, A, x);
  const y = b.slice();
  solveInPlace(factor, y, 1); /* y := A^-1 A x */
  const Ay = new Float64Array(n);
  multiply(Ay, A, y);
  let residual = 0;
  let size = 0;
  for (let i = 0; i < n; i++) {
    residual += ((b[i] - Ay[i]) / s[i]) ** 2;
    size += (s[i] * y[i]) ** 2;
  }
  return Math.sqrt(residual / size);
}
