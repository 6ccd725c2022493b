/** The modes of a frame: solved, proved complete, described. */

import { SolveError } from "../errors.ts";
import type { Factor } from "../linalg/factorise.ts";
import { lowestModes } from "../linalg/modes.ts";
import type { System } from "../matrices/assemble.ts";
import { expand } from "../matrices/reduction.ts";
import { freeRigidMotions } from "../matrices/rigid.ts";
import type { Mesh } from "../mesh/types.ts";
import type { Model, Vec3 } from "../model/types.ts";
import { describeModes } from "./describe.ts";
import type { Modes } from "./types.ts";
import { reaches } from "./warnings.ts";

/** Modes computed where no number is asked for, at least. */
export const MODES_DEFAULT_COUNT = 40;

/** Modes with what the forced response needs of the solution. */
export interface SolvedModes {
  readonly modes: Modes;
  /** rigid-body motions of the mesh, 6 per node each */
  readonly rigidShapes: readonly Float64Array[];
  /** of K - shift M, shift (rad^2/s^2) below the lowest mode */
  readonly factor: Factor;
  readonly shift: number;
}

/**
 * @param cg centre of gravity, about which the rigid-body motions are taken
 * @throws SolveError when the modes cannot be proved right and complete
 */
export function solveModes(
  model: Model,
  mesh: Mesh,
  system: System,
  cg: Vec3,
  count = MODES_DEFAULT_COUNT,
): SolvedModes {
  const { K, M, reduction } = system;
  const n = reduction.n;
  const deflate = freeRigidMotions(mesh, reduction, cg);
  const found = lowestModes(K, M, { count, deflate });
  const { lambda, phi, evidence } = found;
  requireKnown(lambda, evidence.uncertainty);
  const column = (a: Float64Array, k: number) => a.subarray(k * n, (k + 1) * n);
  const shapes = Array.from(lambda, (_, k) => expand(reduction, column(phi, k)));
  const rigid = deflate.map((_, k) => column(found.rigid, k));
  return {
    modes: {
      lambda,
      phi,
      rigid,
      shapes,
      described: describeModes(model, mesh, system, lambda, shapes),
      evidence: {
        maxResidual: evidence.maxResidual,
        orthogonality: evidence.orthogonality,
        operatorCalls: evidence.operatorCalls,
        factorisations: evidence.factorisations,
        counted: evidence.countedBelow,
        found: evidence.expectedBelow,
        checkFrequency: Math.sqrt(Math.max(0, evidence.checkShift)) / (2 * Math.PI),
        unknowns: n,
        factorEntries: evidence.factorEntries,
      },
    },
    rigidShapes: rigid.map((r) => expand(reduction, r)),
    factor: found.factor,
    shift: evidence.shift,
  };
}

/** An eigenvalue that may be off by more than this share of itself is no answer ... */
const KNOWN = 0.1;
/** ... unless it is zero for all that matters to a frame: 0.1 Hz, in rad^2/s^2. */
const STILL = (2 * Math.PI * 0.1) ** 2;

/**
 * Refuses modes that drown in the rounding of stiffer ones.
 *
 * @param lambda rad^2/s^2
 * @param uncertainty rad^2/s^2, of each
 * @throws SolveError naming the mode
 */
export function requireKnown(lambda: Float64Array, uncertainty: Float64Array): void {
  const lost = lambda.findIndex((l, k) => !(uncertainty[k] <= Math.max(KNOWN * l, STILL)));
  if (lost < 0) return;
  const Hz = (l: number) => (Math.sqrt(Math.max(0, l)) / (2 * Math.PI)).toPrecision(2);
  const [least, most] = [-1, 1].map((sign) => Hz(lambda[lost] + sign * uncertainty[lost]));
  throw new SolveError(
    `mode ${lost + 1} is too soft beside the rest of the frame to be computed: its frequency lies ` +
      `between ${least} and ${most} Hz, as far as rounding lets one tell. Use a coarser mesh, or ` +
      "stiffen what holds the part",
  );
}

/** Most modes that are computed without being asked for. */
const MOST_MODES = 320;

/** As many modes as asked for; else as many as reach past what the motors shake. */
export function solveEnoughModes(
  model: Model,
  mesh: Mesh,
  system: System,
  cg: Vec3,
  asked: number | undefined,
  shaken = 0,
): SolvedModes {
  let count = asked ?? MODES_DEFAULT_COUNT;
  let solved = solveModes(model, mesh, system, cg, count);
  while (asked === undefined && count < MOST_MODES && !reaches(solved.modes, shaken)) {
    count *= 2;
    const before = solved.modes.lambda.length;
    solved = solveModes(model, mesh, system, cg, count);
    if (solved.modes.lambda.length === before) break;
  }
  return solved;
}
