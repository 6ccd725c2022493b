/** A frame reduced to the space of its own modes and those of some variants. */

import { assembleElements, type System } from "../matrices/assemble.ts";
import type { Mesh } from "../mesh/types.ts";
import type { Model, Vec3 } from "../model/types.ts";
import { firstModes } from "../modes/first.ts";
import type { SolvedModes } from "../modes/solve.ts";
import { ROTOR_LOADS } from "../response/load.ts";
import { type ResidualMotion, residualMotions } from "../response/residual.ts";
import { projection } from "./contribution.ts";
import { reducedMatrices } from "./matrices.ts";
import { withReduction } from "./meshed.ts";
import { motionsOf, pairsOf } from "./solve.ts";
import { rowsOfSpace, spanSpace } from "./space.ts";
import type { ReducedFrame } from "./types.ts";

export interface Base {
  readonly model: Model;
  readonly mesh: Mesh;
  readonly system: System;
  readonly cg: Vec3;
  /** with more modes than are wanted, so that the highest wanted ones have company */
  readonly solved: SolvedModes;
}

/**
 * @param count modes wanted of each variant
 * @param snapshots modes of variants on the base's unknowns (each n x its number, column-major)
 */
export function reduceFrame(
  { model, mesh, system, cg, solved }: Base,
  count: number,
  snapshots: readonly Float64Array[],
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
  const all = Int32Array.from({ length: space.n }, (_, i) => i);
  const rows = rowsOfSpace(space, all);
  const whole = {
    K: projection(space, K, rows),
    M: projection(space, M, rows),
    H: projection(space, assembleElements(reduction, lossy).K, rows),
    unknowns: all,
    mass: M,
    rows,
  };
  const kept = firstModes(solved, count);
  const none = { meshed: base, elements: [], plates: [], hanging: [] };
  const begun = { base, system, solved: kept, space, whole, count, beyond };
  const noTerms = () => {
    throw new Error("the base has no plates that differ from it");
  };
  const baseMatrices = reducedMatrices(begun, noTerms, none, cg);
  const ritz = pairsOf(begun, baseMatrices);
  const everywhere = Int32Array.from({ length: reduction.full }, (_, i) => i);
  const { residuals } = motionsOf(begun, base, baseMatrices, ritz, count, everywhere);
  const exact = residualMotions(system, mesh, kept.modes, model.rotors, factor, shift);
  return { ...begun, baseMatrices, ritz, remainder: exact.map((e, r) => less(e, residuals[r])) };
}

function less(a: ResidualMotion, b: ResidualMotion): ResidualMotion {
  return Object.fromEntries(
    ROTOR_LOADS.map((name) => [name, a[name].map((u, i) => u - b[name][i])]),
  ) as ResidualMotion;
}
