/** A frame reduced to the space of its own modes and those of some variants. */

import { assembleElements, type System } from "../matrices/assemble.ts";
import type { MassProperties } from "../matrices/mass.ts";
import type { Seat } from "../mesh/seat.ts";
import type { Mesh } from "../mesh/types.ts";
import type { Model } from "../model/types.ts";
import { firstModes } from "../modes/first.ts";
import type { SolvedModes } from "../modes/solve.ts";
import { ROTOR_LOADS } from "../response/load.ts";
import { type ResidualMotion, residualMotions } from "../response/residual.ts";
import { knownOf } from "./known.ts";
import { reducedMatrices } from "./matrices.ts";
import { withReduction } from "./meshed.ts";
import { motionsOf } from "./motions.ts";
import { projection } from "./projection.ts";
import { remaindersOf } from "./seats.ts";
import { pairsOf } from "./solve.ts";
import { spanSpace } from "./space.ts";
import type { ReducedFrame } from "./types.ts";

export interface Base {
  readonly model: Model;
  readonly mesh: Mesh;
  readonly system: System;
  readonly mass: MassProperties;
  /** with more modes than are wanted, so that the highest wanted ones have company */
  readonly solved: SolvedModes;
}

/**
 * @param count modes wanted of each variant
 * @param seats of the base that most variants have too: what the space lacks of them is found once
 * @param snapshots modes of variants on the base's unknowns (each n x its number, column-major)
 */
export function reduceFrame(
  { model, mesh, system, mass, solved }: Base,
  count: number,
  snapshots: readonly Float64Array[],
  seats: readonly Seat[],
): ReducedFrame {
  const { K, M, reduction, elements } = system;
  const { modes, factor, shift } = solved;
  const base = withReduction(model, mesh, reduction);
  const beyond = modes.lambda[modes.lambda.length - 1];
  const scale = modes.lambda[Math.min(9, modes.lambda.length - 1)];
  const space = spanSpace(K, M, [modes.phi, ...snapshots], modes.rigid, factor, scale);
  const lossy = elements.map(({ nodes, K: k, part }) => ({
    nodes,
    K: k?.map((v) => v * base.lossWeights[part]),
  }));
  const rows = new Float64Array(space.V.length + space.W.length);
  rows.set(space.V);
  rows.set(space.W, space.V.length);
  const whole = {
    K: projection(space, K, rows),
    M: projection(space, M, rows),
    H: projection({ ...space, probes: 0 }, assembleElements(reduction, lossy).K, rows),
  };
  const kept = firstModes(solved, count);
  const none = { meshed: base, elements: [], beams: [], plates: [], pads: [], hanging: [] };
  const begun = { base, system, solved: kept, space, whole, about: mass.cg, count, beyond };
  const baseMatrices = reducedMatrices(begun, knownOf(begun), none, mass);
  const ritz = pairsOf(begun, baseMatrices);
  const everywhere = Int32Array.from({ length: reduction.full }, (_, i) => i);
  const { residuals } = motionsOf(begun, base, baseMatrices, ritz, count, everywhere);
  const exact = residualMotions(system, mesh, kept.modes, model.rotors, factor, shift);
  const reduced = { ...begun, baseMatrices, ritz };
  const lacking = remaindersOf(reduced, seats);
  return {
    ...reduced,
    remainder: exact.map((e, r) => less(e, residuals[r])),
    seats: seats.map((seat, i) => ({ seat, remainder: lacking[i] })),
  };
}

function less(a: ResidualMotion, b: ResidualMotion): ResidualMotion {
  return Object.fromEntries(
    ROTOR_LOADS.map((name) => [name, a[name].map((u, i) => u - b[name][i])]),
  ) as ResidualMotion;
}
