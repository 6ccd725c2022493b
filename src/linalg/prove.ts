/** The proof that the modes found are modes, each counted once, and none missing. */

import { SolveError } from "../errors.ts";
import { backwardError } from "./backward-error.ts";
import { countBelow, type EigenvalueCount } from "./completeness.ts";
import type { Factor } from "./factorise.ts";
import { type FoundModes, polish, unacceptable } from "./find-modes.ts";
import { cutPlaces } from "./gap.ts";
import { emptyBasis, extendBasis, type MBasis } from "./m-basis.ts";
import type { Problem } from "./problem.ts";
import { type MeasuredModes, measure, orthogonalityError } from "./quality.ts";
import { searchMissing } from "./search.ts";
import { combine, diagonal } from "./sparse.ts";

export interface Proven {
  readonly modes: MeasuredModes;
  readonly count: EigenvalueCount;
  /** Modes below count.mu, the deflated ones included: as many as were counted. */
  readonly expected: number;
  /** max |phi_i' M phi_j - delta_ij| over all of these. */
  readonly orthogonality: number;
  /** The larger backward error of the two factorisations that all this leans on. */
  readonly factorError: number;
}

/** Searches for missed modes before giving up. */
const REPAIRS = 3;
/** A mode with a residual above this stands for no eigenvalue in particular. */
const VAGUE = 1e-3;
/** Modes further from M-orthogonal than this could be one mode twice. */
const ORTHOGONAL = 1e-8;
/** Backward error of a sound factorisation, over its growth: ten thousand times what was measured. */
const SOUND = 1e-12;

/**
 * As many vectors that are M-orthonormal, each with its eigenvalue below a cut by its residual, as there
 * are eigenvalues below that cut: these are the modes below it, all of them. Looks for missing ones if
 * need be.
 *
 * @throws SolveError when one of these does not hold
 */
export function prove(problem: Problem, found: FoundModes): Proven {
  const { K, M, n, rigid, symbolic, work } = problem;
  let { modes } = found;
  const last = modes.lambda.length - 1;
  const nearest = { lambda: modes.lambda[last], phi: modes.phi.subarray(last * n) };
  const places = cutPlaces(nearest.lambda, found.upper, problem.near.sigma);
  const count = countBelow(symbolic, K, M, places, nearest);
  work.factorisations += count.attempts;
  for (let repairs = 0; ; repairs++) {
    const expected = expectedBelow(rigid, modes, count.mu);
    if (count.below === expected) {
      requireCountable(modes);
      requireBelow(modes, problem.near.sigma, count.mu);
      const orthogonality = requireOrthogonal(rigid, modes);
      return { modes, count, expected, orthogonality, factorError: factorError(problem, count) };
    }
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

/** Beyond the wanted modes, which are held to much less, some may be known roughly only. */
function requireCountable({ lambda, residual }: MeasuredModes): void {
  const vague = residual.findIndex((r) => !(r <= VAGUE));
  if (vague < 0) return;
  throw new SolveError(
    `mode ${vague + 1} (eigenvalue ${lambda[vague].toPrecision(6)}) has a relative residual of ` +
      `${residual[vague].toPrecision(2)}: with more than ${VAGUE} it cannot be counted as a mode`,
  );
}

/**
 * No counted vector may stand for an eigenvalue above mu. Each has one within its residual, relative
 * to lambda - sigma; m of them together have m within sqrt(m) times that (W. Kahan; Parlett, The
 * Symmetric Eigenvalue Problem, chapter 11, from memory). Kahan's radius is one for the whole set; here
 * every vector has its own, since the rounding of a soft mode says nothing about a stiff one.
 */
function requireBelow({ lambda, residual }: MeasuredModes, sigma: number, mu: number): void {
  const counted = lambda.filter((l) => l < mu);
  const share = Math.sqrt(counted.length);
  const lost = counted.findIndex((l, k) => !(l + share * residual[k] * (l - sigma) < mu));
  if (lost < 0) return;
  throw new SolveError(
    `mode ${lost + 1} (eigenvalue ${lambda[lost].toPrecision(6)}) cannot be told from what lies above ` +
      `${mu.toPrecision(6)}, where the eigenvalues are counted. Ask for a few modes more or fewer`,
  );
}

function requireOrthogonal(rigid: MBasis, modes: MeasuredModes): number {
  const error = orthogonalityError(rigid, modes, modes.lambda.length);
  if (error <= ORTHOGONAL) return error;
  throw new SolveError(
    `the modes are not orthogonal: a product phi_i' M phi_j is off by ${error.toPrecision(2)}, where ` +
      `${ORTHOGONAL} is allowed. One mode may have been counted twice in place of another`,
  );
}

/** Of the factor below the modes, which weighs the residuals, and of the one that counts. */
function factorError({ K, M, near }: Problem, { mu, factor }: EigenvalueCount): number {
  const k = diagonal(K);
  const m = diagonal(M);
  const error = (shift: number, of: Factor) => {
    const scale = k.map((kii, i) => kii + Math.abs(shift) * m[i]);
    const found = backwardError(of, combine(1, K, -shift, M), scale);
    if (found <= SOUND * Math.max(1, of.growth)) return found;
    throw new SolveError(
      `the factors of stiffness minus ${shift.toPrecision(6)} times mass are those of another ` +
        `matrix: solutions are off by ${found.toPrecision(2)}`,
    );
  };
  return Math.max(error(near.sigma, near.factor), error(mu, factor));
}
