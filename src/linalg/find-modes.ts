/** Modes of a problem up to a gap in the spectrum, to the accuracy asked for. */

import { SolveError } from "../errors.ts";
import { shiftedModes } from "./dense-modes.ts";
import { findGap } from "./gap.ts";
import { changeShift, type Problem, requireRigid } from "./problem.ts";
import { measure, type MeasuredModes, roundingFloor } from "./quality.ts";
import { rayleighRitz } from "./rayleigh-ritz.ts";
import { type Found, searchLowest } from "./search.ts";
import { betterShift } from "./shift.ts";

/** Up to this many unknowns the dense path is faster (measured: about equal at 60 for 10 modes). */
const SMALL = 60;
/** Up to this many it is, when a third of all modes is wanted. */
const MEDIUM = 400;

/** A residual above this is never handed out, unless it is down to rounding. */
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
  const modes = polish(problem, measure(sparseK, sparseM, problem.shifted.sigma, vectors));
  if (modes.lambda.length > 0) requireRigid(problem, modes.lambda[0]);
  return { modes, upper: gap.upper };
}

function findSparse(
  problem: Problem,
  { start, shift }: { readonly start?: Float64Array; readonly shift?: number },
): Omit<Found, "calls"> {
  for (let tries = 0; ; tries++) {
    const found = searchLowest(problem.operator, problem.rigid, {
      count: problem.count,
      sigma: problem.shifted.sigma,
      tolerance: problem.tolerance / 1000,
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
  return { vectors: modes.phi.subarray(0, n * below), gap: { below, upper } };
}

/**
 * Improves modes whose residual is above the tolerance: inverse iteration with Rayleigh-Ritz, until
 * the residuals are below the tolerance, explained by rounding, or no longer falling.
 *
 * @throws SolveError when that leaves a residual that cannot be accepted
 */
export function polish(problem: Problem, given: MeasuredModes): MeasuredModes {
  const { sparseK, sparseM, n, rigid, operator, tolerance, work } = problem;
  let modes = given;
  let before = Number.POSITIVE_INFINITY;
  for (let round = 0; ; round++) {
    const count = Math.min(problem.count, modes.lambda.length);
    const residual = modes.residual.subarray(0, count);
    if (residual.every((r) => r <= tolerance)) return modes;
    const floor = roundingFloor(sparseK, sparseM, modes);
    if (residual.every((r, c) => r <= Math.max(tolerance, 16 * floor[c]))) return modes;
    const worst = Math.max(...residual);
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
    if (round > 0 && modes.lambda.length < n - rigid.count) {
      Y = new Float64Array(modes.phi.length);
      operator.solve(Y, modes.massPhi, modes.lambda.length);
      work.operatorCalls += modes.lambda.length;
    }
    const sigma = problem.shifted.sigma;
    modes = measure(sparseK, sparseM, sigma, rayleighRitz(sparseK, operator.multiplyMass, rigid, Y));
  }
}
