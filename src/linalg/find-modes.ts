/** Modes of a problem up to a gap in the spectrum, to the accuracy asked for. */

import { SolveError } from "../errors.ts";
import { shiftedModes } from "./dense-modes.ts";
import { findGap } from "./gap.ts";
import { changeShift, type Problem, requireRigid } from "./problem.ts";
import { type MeasuredModes, measure, roundingFloor } from "./quality.ts";
import { rayleighRitz } from "./rayleigh-ritz.ts";
import { type Found, searchLowest } from "./search.ts";
import { betterShift } from "./shift.ts";

/** Up to this many unknowns the dense path is faster (measured: about equal at 60 for 10 modes). */
const SMALL = 60;
/** Up to this many it is, when a third of all modes is wanted. */
const MEDIUM = 400;

/** A residual above this is never handed out, unless it is down to the rounding of K. */
const ACCEPTABLE = 1e-8;

export interface FoundModes {
  /** `count` modes or more, up to a gap. */
  readonly modes: MeasuredModes;
  /** Upper end of the gap. */
  readonly upper: number;
}

/** @throws SolveError when the modes cannot be had to an acceptable residual */
export function findModes(
  problem: Problem,
  options: { readonly start?: Float64Array; readonly shift?: number },
): FoundModes {
  const { sparseK, sparseM, n, rigid, count } = problem;
  const free = n - rigid.count;
  const dense =
    options.start === undefined && (free <= SMALL || (free <= MEDIUM && 3 * count >= free));
  const { vectors, gap } = dense ? findDense(problem) : findSparse(problem, options);
  const rough = measure(sparseK, sparseM, problem.shifted, rigid, vectors);
  requireRigid(problem, rough.lambda[0]);
  return { modes: polish(problem, rough), upper: gap.upper };
}

function findSparse(
  problem: Problem,
  { start, shift }: { readonly start?: Float64Array; readonly shift?: number },
): Omit<Found, "calls"> {
  for (let tries = 0; ; tries++) {
    const found = searchLowest(problem.operator, problem.rigid, {
      count: problem.count,
      sigma: problem.shifted.sigma,
      tolerance: problem.tolerance,
      random: problem.random,
      start,
      judgeShift: shift === undefined && tries < 2,
    });
    problem.work.operatorCalls += found.calls;
    if ("vectors" in found) return found;
    changeShift(problem, found.better);
  }
}

function findDense(problem: Problem): Omit<Found, "calls"> {
  const { K, M, n, rigid, count } = problem;
  const deflated = rigid.V.subarray(0, n * rigid.count);
  const solve = () => shiftedModes(K, M, n, problem.shifted.sigma, deflated);
  let modes = solve();
  const thetas = () => modes.lambda.map((l) => 1 / (l - problem.shifted.sigma));
  const better = betterShift(thetas(), problem.shifted.sigma);
  if (better !== undefined) {
    changeShift(problem, better);
    modes = solve();
  }
  const theta = thetas();
  const residual = new Float64Array(theta.length);
  const gap = findGap({ theta, residual, exhausted: true }, problem.shifted.sigma, count);
  const { below, upper } = gap ?? { below: theta.length, upper: Number.POSITIVE_INFINITY };
  const chosen = modes.phi.subarray(0, n * below);
  // Exactly M-orthogonal to the rigid motions, and the highest freed from the lowest.
  const vectors = rayleighRitz(problem.sparseK, problem.operator.multiplyMass, rigid, chosen);
  return { vectors, gap: { below, upper } };
}

/**
 * Improves modes whose residual is above the tolerance: inverse iteration with Rayleigh-Ritz, until
 * all are below, down to rounding, or no longer falling.
 *
 * @throws SolveError when that leaves a residual that cannot be accepted
 */
export function polish(problem: Problem, given: MeasuredModes): MeasuredModes {
  const { sparseK, sparseM, n, rigid, operator, tolerance, work } = problem;
  let modes = given;
  let before = Number.POSITIVE_INFINITY;
  for (let round = 0; ; round++) {
    const residual = modes.residual.subarray(0, problem.count);
    const worst = residual.reduce((a, r) => Math.max(a, r), 0);
    if (worst <= tolerance) return modes;
    const floor = roundingFloor(sparseK, sparseM, problem.shifted.sigma, modes);
    if (residual.every((r, c) => r <= Math.max(tolerance, 4 * floor[c]))) return modes;
    if (round > 4 || (round > 1 && worst > before / 2)) {
      const bad = residual.findIndex((r, c) => !(r <= Math.max(ACCEPTABLE, 64 * floor[c])));
      if (bad < 0) return modes;
      throw new SolveError(
        `mode ${bad + 1} (eigenvalue ${modes.lambda[bad].toPrecision(6)}) is found to a relative ` +
          `residual of ${residual[bad].toPrecision(2)} only, where ${ACCEPTABLE} is required`,
      );
    }
    before = worst;
    let Y = modes.phi;
    // With all modes at hand, inverse iteration would only drown the highest in the lowest.
    if (round > 0 && modes.lambda.length < n - rigid.count) {
      Y = new Float64Array(modes.phi.length);
      operator.solve(Y, modes.massPhi, modes.lambda.length);
      work.operatorCalls += modes.lambda.length;
    }
    const improved = rayleighRitz(sparseK, operator.multiplyMass, rigid, Y);
    modes = measure(sparseK, sparseM, problem.shifted, rigid, improved);
  }
}
