/** Modes of a problem up to a gap in the spectrum, to the accuracy asked for. */

import { SolveError } from "../errors.ts";
import { iterateAt, type Problem } from "./problem.ts";
import { type MeasuredModes, measure, rigidStrain, roundingFloor } from "./quality.ts";
import { rayleighRitz } from "./rayleigh-ritz.ts";
import { searchLowest } from "./search.ts";

/** A residual above this is never handed out, unless it is down to the rounding of K. */
const ACCEPTABLE = 1e-8;

export interface FoundModes {
  /** `count` modes or more, up to a gap. */
  readonly modes: MeasuredModes;
  /** Upper end of the gap. */
  readonly upper: number;
}

/**
 * Small problems take the same way as large ones: with 36 to 216 unknowns and 5 to 30 modes dense
 * algebra was never faster, and twice as slow at 60.
 *
 * @throws SolveError when the modes cannot be had to an acceptable residual
 */
export function findModes(
  problem: Problem,
  { start, shift }: { readonly start?: Float64Array; readonly shift?: number },
): FoundModes {
  const { sparseK, sparseM, rigid, work } = problem;
  let widened = shift !== undefined;
  for (let tries = 0; ; tries++) {
    const found = searchLowest(problem.operator, rigid, {
      count: problem.count,
      sigma: problem.sigma,
      tolerance: problem.tolerance,
      random: problem.random,
      start,
      judgeShift: !widened && tries < 2,
    });
    work.operatorCalls += found.calls;
    if ("better" in found) {
      problem.near = iterateAt(problem, found.better);
      continue;
    }
    if (found.gap.below === 0) {
      throw new SolveError("no motion but those of the rigid body has mass: nothing can vibrate");
    }
    const rough = measure(sparseK, sparseM, problem.near, rigid, found.vectors);
    requireRigid(problem, rough);
    const modes = polish(problem, rough);
    const complaint = unacceptable(problem, modes);
    if (complaint === undefined) return { modes, upper: found.gap.upper };
    if (widened) throw new SolveError(complaint);
    // The highest modes lose as many digits as theta has decades; a shift half way up the spectrum
    // halves these. It takes more steps, so it is not the first choice.
    widened = true;
    const { lambda } = modes;
    const lowest = Math.max(lambda[0], -problem.sigma);
    iterateAt(problem, -Math.sqrt(lowest * lambda[lambda.length - 1]));
  }
}

/**
 * Improves modes whose residual is above the tolerance: Rayleigh-Ritz, then inverse iteration with
 * Rayleigh-Ritz, until all are below, down to rounding, or no longer falling.
 */
export function polish(problem: Problem, given: MeasuredModes): MeasuredModes {
  const { sparseK, sparseM, n, rigid, operator, tolerance, work } = problem;
  const { sigma } = problem.near;
  let modes = given;
  let before = Number.POSITIVE_INFINITY;
  for (let round = 0; round < 5; round++) {
    const residual = modes.residual.subarray(0, problem.count);
    const worst = residual.reduce((a, r) => Math.max(a, r), 0);
    if (worst <= tolerance) return modes;
    const floor = roundingFloor(sparseK, sparseM, sigma, modes);
    if (residual.every((r, c) => r <= Math.max(tolerance, 4 * floor[c]))) return modes;
    if (round > 1 && worst > before / 2) return modes;
    before = worst;
    let Y = modes.phi;
    // With all modes at hand, inverse iteration would only drown the highest in the lowest.
    if (round > 0 && modes.lambda.length < n - rigid.count) {
      Y = new Float64Array(modes.phi.length);
      operator.solve(Y, modes.massPhi, modes.lambda.length);
      work.operatorCalls += modes.lambda.length;
    }
    const improved = rayleighRitz(sparseK, operator.multiplyMass, rigid, Y);
    modes = measure(sparseK, sparseM, problem.near, rigid, improved);
  }
  return modes;
}

/** What is wrong with the wanted modes; undefined when nothing is. */
export function unacceptable(problem: Problem, modes: MeasuredModes): string | undefined {
  const residual = modes.residual.subarray(0, problem.count);
  if (residual.every((r) => r <= ACCEPTABLE)) return undefined;
  const floor = roundingFloor(problem.sparseK, problem.sparseM, problem.near.sigma, modes);
  const bad = residual.findIndex((r, c) => !(r <= Math.max(ACCEPTABLE, 64 * floor[c])));
  if (bad < 0) return undefined;
  return (
    `mode ${bad + 1} (eigenvalue ${modes.lambda[bad].toPrecision(6)}) is found to a relative ` +
    `residual of ${residual[bad].toPrecision(2)} only, where ${ACCEPTABLE} is required`
  );
}

/** @throws SolveError when the deflated motions strain the structure */
function requireRigid({ sparseK, rigid, near }: Problem, modes: MeasuredModes): void {
  const strain = rigidStrain(sparseK, near.sigma, rigid, modes);
  const bad = strain.findIndex((s) => s > ACCEPTABLE);
  if (bad < 0) return;
  throw new SolveError(
    "the vectors to deflate are no rigid-body motions of this structure: they strain it, and bend " +
      `mode ${bad + 1} (eigenvalue ${modes.lambda[bad].toPrecision(6)}) by ` +
      `${strain[bad].toPrecision(2)} of itself, where ${ACCEPTABLE} is allowed`,
  );
}
