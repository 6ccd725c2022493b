/** Variants of a frame from its reduced model; solved exactly where that is not good enough. */

import { SolveError } from "../errors.ts";
import { reachWanted } from "../excitation/excite.ts";
import { assemble } from "../matrices/assemble.ts";
import { type Seat, seatOf } from "../mesh/seat.ts";
import { firstModes } from "../modes/first.ts";
import { MODES_DEFAULT_COUNT, type SolvedModes, solveModes } from "../modes/solve.ts";
import { reaches } from "../modes/warnings.ts";
import { namedCandidates } from "../ranking/candidates.ts";
import { longOverhangs } from "../ranking/overhang.ts";
import type { Overhang } from "../ranking/types.ts";
import { differences } from "../reduced/differences.ts";
import { type Known, knownOf } from "../reduced/known.ts";
import { withReduction } from "../reduced/meshed.ts";
import { reduceFrame } from "../reduced/reduce.ts";
import { type ReducedSolution, solveVariant } from "../reduced/solve.ts";
import type { ReducedFrame } from "../reduced/types.ts";
import type { ShakenFrame } from "../response/bare-frame.ts";
import { harmonics } from "../response/harmonic.ts";
import { packHarmonics } from "../response/shaken.ts";
import { type ExactOptions, outcomeOfSolved, type Solved, shaken, solveExactly } from "./exact.ts";
import { type OutcomeOptions, outcomeOf, spotsOn, wholeModesOf } from "./outcome.ts";
import type { Prepared } from "./prepare.ts";
import type { SamplePoint } from "./sample-point.ts";
import { samplePoints } from "./shape-samples.ts";
import type { Outcome } from "./types.ts";

/** A larger estimate of a frequency's error asks for an exact solution. */
export const REDUCED_TOLERANCE = 0.002;
/** Modes solved for beyond those wanted: the highest wanted ones need company. */
const COMPANY = 1.2;

/** What variants of one frame share; plain data, fit to be sent between threads. */
export interface ReducedVariants {
  readonly frame: ReducedFrame;
  /** plates that reach past their supports and have modes of their own there, on the base */
  readonly lively: readonly Pick<Overhang, "plate" | "direction" | "flagged">[];
  /** m */
  readonly meshSize: number;
  readonly count: number;
}

/** A frame to reduce. */
export interface ReducedBase {
  /** with the modes that are used */
  readonly solved: Solved;
  /** with more */
  readonly all: SolvedModes;
}

/** Most modes that are computed without being asked for, as in modes/solve.ts. */
const MOST_MODES = 320;

/**
 * @param modes number of elastic modes that are used; enough for what the motors shake where not given
 * @throws InputError, SolveError
 */
export function solveBase(prepared: Prepared, modes?: number): ReducedBase {
  const { bareModel, mesh, bareMass, excitation } = prepared;
  const system = assemble(mesh, bareModel);
  const reach = excitation ? reachWanted(excitation) : 0;
  for (let count = modes ?? MODES_DEFAULT_COUNT; ; count *= 2) {
    const all = solveModes(bareModel, mesh, system, bareMass.cg, Math.ceil(COMPANY * count));
    const kept = firstModes(all, count);
    const isAll = kept.modes.lambda.length < count;
    const isEnough = modes !== undefined || reaches(kept.modes, reach);
    if (isAll || isEnough || 2 * count > MOST_MODES) {
      return { solved: shaken(prepared, system, kept), all };
    }
  }
}

/** Whether a variant can be solved in a space made for this base: its mesh is alike element by element. */
export function isAlike(base: ReducedBase, { bareModel, mesh }: Prepared): boolean {
  const { system, prepared } = base.solved;
  const known = withReduction(prepared.bareModel, prepared.mesh, system.reduction);
  return !("unlike" in differences(known, bareModel, mesh));
}

/** The lowest modes of a variant, from which a space may be made (n x count, column-major). @throws SolveError */
export function modesOf({ bareModel, mesh, bareMass }: Prepared, count: number): Float64Array {
  const system = assemble(mesh, bareModel);
  return solveModes(bareModel, mesh, system, bareMass.cg, count).modes.phi;
}

/** @param snapshots modes of some variants that are alike, as many each as the base has in `all` */
export function reduceVariants(
  { solved, all }: ReducedBase,
  snapshots: readonly Float64Array[],
): ReducedVariants {
  const { prepared, system, overhangs } = solved;
  const { bareModel: model, mesh, bareMass } = prepared;
  const count = solved.solved.modes.lambda.length;
  const base = { model, mesh, system, mass: bareMass, solved: all };
  return {
    frame: reduceFrame(base, count, snapshots, seatsOf(prepared)),
    lively: overhangs.map(({ plate, direction, flagged }) => ({ plate, direction, flagged })),
    meshSize: mesh.size,
    count,
  };
}

/** Solves variants one after the other; what it makes on the way serves the next ones. */
export interface VariantSolver {
  readonly outcome: (prepared: Prepared, options?: ExactOptions) => Outcome;
}

/** @param tolerance an estimate of a frequency's relative error above this asks for an exact solution */
export function variantSolver(
  reduced: ReducedVariants,
  tolerance = REDUCED_TOLERANCE,
): VariantSolver {
  const known = knownOf(reduced.frame);
  return {
    outcome: (prepared, options = {}) =>
      reducedOutcome(reduced, known, prepared, tolerance, options) ??
      outcomeOfSolved(solveExactly(prepared, reduced.count), options),
  };
}

/** undefined where the reduced model does not do. */
function reducedOutcome(
  reduced: ReducedVariants,
  known: Known,
  prepared: Prepared,
  tolerance: number,
  options: OutcomeOptions & Pick<ExactOptions, "moved">,
): Outcome | undefined {
  const { bareModel, mesh, bareMass } = prepared;
  const overhangs = knownOverhangs(reduced, prepared);
  if (!overhangs) return undefined;
  const points = samplePoints(bareModel, mesh);
  const watched = watchedBy(prepared, points);
  const found = solvedInSpace(() =>
    solveVariant(reduced.frame, known, bareModel, mesh, bareMass, watched),
  );
  if (!found) return undefined;
  if ("unlike" in found || !(found.error <= tolerance)) return undefined;
  const { modes, rigidShapes } = found;
  const bare = shakenBy(prepared, found);
  const spots = spotsOn(prepared, bare);
  return outcomeOf(
    {
      prepared,
      ...(bare && { bare }),
      spots,
      whole: wholeModesOf(modes, spots),
      terms: [...modes.shapes, ...rigidShapes],
      points,
      overhangs,
      solution: { method: "reduced", error: found.error },
      moved: options.moved ?? [],
    },
    options,
  );
}

/** undefined where the variant has no positive mass in the space: rounding, or a frame far from the base. */
function solvedInSpace<T>(solve: () => T): T | undefined {
  try {
    return solve();
  } catch (error) {
    if (error instanceof SolveError) return undefined;
    throw error;
  }
}

function shakenBy(
  { bareModel, mesh, excitation }: Prepared,
  { modes, rigidShapes, residuals, flexibility }: ReducedSolution,
): ShakenFrame | undefined {
  if (!excitation) return undefined;
  const h = harmonics(mesh, modes, rigidShapes, bareModel.rotors, residuals, excitation);
  return { mesh, modes, h, motions: packHarmonics(h), flexibility };
}

/**
 * The overhangs of the variant's drawing, with what the base's modes say of them; undefined where one is
 * new, so that its modes have to be looked at.
 */
function knownOverhangs({ lively }: ReducedVariants, { bareModel }: Prepared) {
  const all = longOverhangs(bareModel).map((o) => {
    const known = lively.find((l) => l.plate === o.plate && l.direction === o.direction);
    return known && { ...o, flagged: known.flagged };
  });
  const found = all.filter((o) => o !== undefined);
  return found.length === all.length ? found : undefined;
}

/** Unknowns of the mesh that the spots and the sample points read. */
function watchedBy(prepared: Prepared, points: readonly SamplePoint[]): Int32Array {
  const dofs = new Set<number>();
  for (const p of points) for (const d of p.dofs) dofs.add(d);
  for (const seat of seatsOf(prepared)) for (const d of seat.dofs) dofs.add(d);
  return Int32Array.from(dofs);
}

/** Seats of the stack at the spots. */
function seatsOf({ file, model, mesh }: Prepared): Seat[] {
  return namedCandidates(file, model).flatMap(({ plate, holes, footprint, cg }) => {
    const seat = seatOf(mesh.grids[plate], holes, footprint, cg);
    return seat ? [seat] : [];
  });
}
