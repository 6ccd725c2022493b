/** The lowest modes of K phi = lambda M phi, with the proof that none was missed. */

import { SolveError } from "../errors.ts";
import { countBelow, type EigenvalueCount } from "./completeness.ts";
import type { Factor } from "./factorise.ts";
import { findModes, polish, unacceptable } from "./find-modes.ts";
import { cutPlaces } from "./gap.ts";
import { emptyBasis, extendBasis, type MBasis } from "./m-basis.ts";
import { type Problem, stateProblem } from "./problem.ts";
import { fixSignsInPlace, type MeasuredModes, measure, orthogonalityError } from "./quality.ts";
import { searchMissing } from "./search.ts";
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
  /** max |phi_i' M phi_j - delta_ij|, the deflated vectors included. */
  readonly orthogonality: number;
  /** Vectors sent through (K - sigma M)^-1. */
  readonly operatorCalls: number;
  readonly factorisations: number;
  /** sigma below the lowest mode, of `factor` and of the residuals. */
  readonly shift: number;
  /** mu of the count below. */
  readonly checkShift: number;
  /** Deflated modes and modes found below mu ... */
  readonly expectedBelow: number;
  /** ... which equals the number of negative pivots of K - mu M, or an error is thrown. */
  readonly countedBelow: number;
  /** Of K - mu M: the smallest pivot relative to its diagonal entry, and the growth (1 is best). */
  readonly minPivotRatio: number;
  readonly growth: number;
  /** Stored entries of L, and operations of one factorisation. */
  readonly factorEntries: number;
  readonly factorFlops: number;
}

/** Searches for missed modes before giving up. */
const REPAIRS = 3;

/**
 * The lowest `count` modes of K phi = lambda M phi, K and M positive semi-definite on one pattern.
 *
 * Same input, same bytes: the only random numbers are those of a generator with a fixed seed.
 *
 * @throws SolveError when the modes cannot be found to a residual of 1e-8 (or of what the rounding of
 *   K and M permits), when deflated vectors strain the structure, or when counting shows that modes
 *   are missing and they do not turn up
 * @throws RangeError for a count that is no positive integer, or a shift above zero
 */
export function lowestModes(
  K: SymmetricSparse,
  M: SymmetricSparse,
  options: ModesOptions,
): ModeSet {
  const problem = stateProblem(K, M, options);
  const found = findModes(problem, options);
  const { modes, count } = prove(problem, found.modes, found.upper);
  return report(problem, modes, count);
}

/** Counts the eigenvalues below a cut above all modes; looks for the missing ones if need be. */
function prove(
  problem: Problem,
  found: MeasuredModes,
  upper: number,
): { modes: MeasuredModes; count: EigenvalueCount } {
  const { K, M, n, rigid, symbolic, work } = problem;
  let modes = found;
  const last = modes.lambda.length - 1;
  const lambda = modes.lambda[last];
  const phi = modes.phi.subarray(last * n);
  const places = cutPlaces(lambda, upper, problem.near.sigma);
  const count = countBelow(symbolic, K, M, places, { lambda, phi });
  work.factorisations += count.attempts;
  for (let repairs = 0; ; repairs++) {
    const expected = expectedBelow(rigid, modes, count.mu);
    if (count.below === expected) return { modes, count };
    if (count.below < expected || repairs === REPAIRS) {
      throw new SolveError(
        `the modes are not proved complete: ${count.below} eigenvalues lie below ` +
          `${count.mu.toPrecision(6)}, but ${expected} modes were found there ` +
          `(${rigid.count} of them given as rigid-body motions). Check that these motions are ` +
          "right, or ask for a few modes more or fewer",
      );
    }
    modes = addMissing(problem, modes, count.mu, count.below - expected);
  }
}

function expectedBelow(rigid: MBasis, { lambda }: MeasuredModes, mu: number): number {
  return rigid.count + lambda.reduce((below, l) => (l < mu ? below + 1 : below), 0);
}

function addMissing(
  problem: Problem,
  modes: MeasuredModes,
  mu: number,
  missing: number,
): MeasuredModes {
  const { sparseK, sparseM, n, rigid, operator, work } = problem;
  const known = emptyBasis(n, rigid.count + modes.lambda.length);
  known.V.set(rigid.V.subarray(0, n * rigid.count));
  known.MV.set(rigid.MV.subarray(0, n * rigid.count));
  known.count = rigid.count;
  known.V.set(modes.phi, n * rigid.count);
  extendBasis(known, modes.lambda.length, operator.multiplyMass);
  const more = searchMissing(operator, known, mu, missing, {
    sigma: problem.sigma,
    tolerance: problem.tolerance,
    random: problem.random,
  });
  work.operatorCalls += more.calls;
  const all = new Float64Array(modes.phi.length + more.vectors.length);
  all.set(modes.phi);
  all.set(more.vectors, modes.phi.length);
  const merged = polish(problem, measure(sparseK, sparseM, problem.near, rigid, all));
  const complaint = unacceptable(problem, merged);
  if (complaint !== undefined) throw new SolveError(complaint);
  return merged;
}

function report(problem: Problem, modes: MeasuredModes, count: EigenvalueCount): ModeSet {
  const { n, rigid, symbolic, near, work } = problem;
  const size = Math.min(problem.count, modes.lambda.length);
  const residuals = modes.residual.slice(0, size);
  const phi = modes.phi.slice(0, n * size);
  fixSignsInPlace(phi, n);
  return {
    lambda: modes.lambda.slice(0, size),
    phi,
    rigid: rigid.V.slice(0, n * rigid.count),
    factor: near.factor,
    evidence: {
      residuals,
      maxResidual: residuals.reduce((a, b) => Math.max(a, b), 0),
      roundingLimited: residuals.filter((r) => r > problem.tolerance).length,
      orthogonality: orthogonalityError(rigid, modes, size),
      operatorCalls: work.operatorCalls,
      factorisations: work.factorisations,
      shift: near.sigma,
      checkShift: count.mu,
      expectedBelow: expectedBelow(rigid, modes, count.mu),
      countedBelow: count.below,
      minPivotRatio: count.factor.minPivotRatio,
      growth: count.factor.growth,
      factorEntries: symbolic.factorEntries,
      factorFlops: symbolic.factorFlops,
    },
  };
}
