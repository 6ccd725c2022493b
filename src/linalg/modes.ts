/** The lowest modes of K phi = lambda M phi, with the proof that none was missed. */

import { SolveError } from "../errors.ts";
import type { Factor } from "./factorise.ts";
import { findModes } from "./find-modes.ts";
import { type Problem, stateProblem } from "./problem.ts";
import { type Proven, prove } from "./prove.ts";
import { fixSignsInPlace, uncertainty } from "./quality.ts";
import type { SymmetricSparse } from "./sparse.ts";
import type { Symbolic } from "./symbolic.ts";

export interface ModesOptions {
  /** Modes wanted, besides the deflated ones. */
  readonly count: number;
  /** Modes known beforehand, as a rule the six rigid-body motions: M-orthogonal to them is all that
   * is returned. Independent vectors of size n with K R = 0, not necessarily orthonormal. */
  readonly deflate?: readonly Float64Array[];
  /** sigma <= 0 in K - sigma M; chosen from K and M by default. */
  readonly shift?: number;
  /** Bound on the relative residuals (see Evidence); 1e-10 by default. */
  readonly tolerance?: number;
  /** Symbolic factorisation of the common pattern, when at hand. */
  readonly symbolic?: Symbolic;
  /** First vectors of the iteration (n x 4, column-major) in place of the fixed-seed ones. */
  readonly start?: Float64Array;
}

export interface ModeSet {
  /** Eigenvalues omega^2, ascending: `count` of them, or all there are if these are fewer. */
  readonly lambda: Float64Array;
  /** Modes with phi' M phi = 1 (n x lambda.length, column-major), largest component positive. */
  readonly phi: Float64Array;
  /** The deflated vectors made M-orthonormal (n x their number, column-major). */
  readonly rigid: Float64Array;
  /** Of K - sigma M with sigma = evidence.shift, for further solves. */
  readonly factor: Factor;
  readonly evidence: Evidence;
}

/** Why the modes can be believed. */
export interface Evidence {
  /** Relative residual of each mode, weighed by energy: with r = K phi - lambda M phi and
   * A = K - shift M, sqrt(r' A^-1 r) / sqrt(phi' A phi). An eigenvalue lambda* lies within
   * residual (lambda* - shift) of lambda. */
  readonly residuals: Float64Array;
  readonly maxResidual: number;
  /** Modes above the tolerance: rounding keeps them there (at most 1e-8, unless it explains more). */
  readonly roundingLimited: number;
  /** How far each eigenvalue may be off, an estimate, in the unit of lambda (see quality.ts). */
  readonly uncertainty: Float64Array;
  /** max |phi_i' M phi_j - delta_ij| over all modes counted, the deflated vectors included. */
  readonly orthogonality: number;
  /** Vectors sent through (K - sigma M)^-1. */
  readonly operatorCalls: number;
  readonly factorisations: number;
  /** sigma below the lowest mode, of `factor` and of the residuals, in the unit of lambda. */
  readonly shift: number;
  /** mu of the count below, in the unit of lambda. */
  readonly checkShift: number;
  /** Deflated modes and modes found below mu ... */
  readonly expectedBelow: number;
  /** ... which equals the number of negative pivots of K - mu M, or an error is thrown. */
  readonly countedBelow: number;
  /** Of K - mu M: the smallest pivot relative to its diagonal entry, and the growth (1 is best). */
  readonly minPivotRatio: number;
  readonly growth: number;
  /** How far the two factorisations are off, relative to the diagonals (see backward-error.ts). */
  readonly factorError: number;
  /** Stored entries of L, and operations of one factorisation. */
  readonly factorEntries: number;
  readonly factorFlops: number;
}

/**
 * The lowest `count` modes of K phi = lambda M phi, K and M positive semi-definite on one pattern.
 *
 * Same input, same bytes: the only random numbers are those of a generator with a fixed seed.
 *
 * @throws SolveError when the modes cannot be found to a residual of 1e-8 (or of what the rounding of
 *   K and M permits), when deflated vectors strain the structure, when counting shows that modes are
 *   missing and they do not turn up, or when K or M is no matrix of a structure
 * @throws RangeError for options that make no sense, such as a shift above zero
 */
export function lowestModes(
  K: SymmetricSparse,
  M: SymmetricSparse,
  options: ModesOptions,
): ModeSet {
  const problem = stateProblem(K, M, options);
  return report(problem, prove(problem, findModes(problem, options)));
}

/**
 * An eigenvalue this many times its uncertainty below zero is no zero that rounding has moved. Measured
 * on undeflated rigid-body motions: a fifth of the uncertainty; the rest is margin.
 */
const BELOW_ZERO = 100;

/** @throws SolveError when an eigenvalue is negative for more than rounding */
function requireStiffness(lambda: Float64Array, uncertain: Float64Array): void {
  const bad = lambda.findIndex((l, k) => l < -BELOW_ZERO * uncertain[k]);
  if (bad < 0) return;
  throw new SolveError(
    `eigenvalue ${bad + 1} is ${lambda[bad].toPrecision(6)}, below zero: the stiffness matrix is not ` +
      "positive semi-definite, some part has a negative stiffness",
  );
}

function report(problem: Problem, { modes, count, ...proof }: Proven): ModeSet {
  const { n, rigid, symbolic, near, work, sparseK, sparseM } = problem;
  const size = Math.min(problem.count, modes.lambda.length);
  const residuals = modes.residual.slice(0, size);
  const phi = modes.phi.slice(0, n * size);
  fixSignsInPlace(phi, n);
  const uncertain = uncertainty(sparseK, sparseM, near.sigma, modes).slice(0, size);
  requireStiffness(modes.lambda.subarray(0, size), uncertain);
  return {
    lambda: modes.lambda.slice(0, size),
    phi,
    rigid: rigid.V.slice(0, n * rigid.count),
    factor: near.factor,
    evidence: {
      residuals,
      maxResidual: residuals.reduce((a, b) => Math.max(a, b), 0),
      roundingLimited: residuals.filter((r) => r > problem.tolerance).length,
      uncertainty: uncertain,
      orthogonality: proof.orthogonality,
      operatorCalls: work.operatorCalls,
      factorisations: work.factorisations,
      shift: near.sigma,
      checkShift: count.mu,
      expectedBelow: proof.expected,
      countedBelow: count.below,
      minPivotRatio: count.factor.minPivotRatio,
      growth: count.factor.growth,
      factorError: proof.factorError,
      factorEntries: symbolic.factorEntries,
      factorFlops: symbolic.factorFlops,
    },
  };
}
