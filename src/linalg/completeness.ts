/** The proof that no mode was missed: Sylvester's law of inertia. */

import { SolveError } from "../errors.ts";
import { type Factor, factorise, PivotError } from "./factorise.ts";
import { combine, diagonal, type SymmetricSparse } from "./sparse.ts";
import type { Symbolic } from "./symbolic.ts";

export interface EigenvalueCount {
  /** Where the spectrum was cut. */
  readonly mu: number;
  /** Eigenvalues of the pencil below mu: the negative pivots of K - mu M. */
  readonly below: number;
  readonly factor: Factor;
  /** Factorisations it took. */
  readonly attempts: number;
}

/**
 * Counts the eigenvalues below the first of the places at which the factorisation is trustworthy.
 *
 * The computed pivots are those of a matrix off by about eps growth |K| + mu |M|; that moves the
 * eigenvalue next to mu by eps growth phi' diag(K + mu M) phi, which must be much less than its
 * distance from mu.
 *
 * @param places candidates for mu, the preferred one first
 * @param nearest the eigenvalue below mu, and its mode phi (size n; empty when there is none)
 * @throws SolveError when no place works
 */
export function countBelow(
  symbolic: Symbolic,
  K: SymmetricSparse,
  M: SymmetricSparse,
  places: readonly number[],
  nearest: { readonly lambda: number; readonly phi: Float64Array },
): EigenvalueCount {
  const k = diagonal(K);
  const m = diagonal(M);
  const trouble: string[] = [];
  for (let attempt = 0; attempt < places.length; attempt++) {
    const mu = places[attempt];
    const scale = k.map((kii, i) => kii + mu * m[i]);
    try {
      const factor = factorise(symbolic, combine(1, K, -mu, M), scale);
      const energy = nearest.phi.reduce((sum, x, i) => sum + scale[i] * x * x, 0);
      const shift = 8 * Number.EPSILON * factor.growth * energy;
      if (shift <= 0.1 * (mu - nearest.lambda)) {
        return { mu, below: factor.negativePivots, factor, attempts: attempt + 1 };
      }
      trouble.push(`at ${mu.toPrecision(6)} the pivots grow ${factor.growth.toPrecision(2)}-fold`);
    } catch (error) {
      if (!(error instanceof PivotError)) throw error;
      trouble.push(`at ${mu.toPrecision(6)} ${error.message}`);
    }
  }
  throw new SolveError(
    `the count of eigenvalues above ${nearest.lambda.toPrecision(6)} cannot be trusted: ` +
      `${trouble.join("; ")}. Ask for a few modes more or fewer`,
  );
}
