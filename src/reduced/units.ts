/** What units of a constant add to the matrices of a frame, as seen in the space. */

import type { SomeMatrices } from "../matrices/assemble.ts";
import type { Vec3 } from "../model/types.ts";
import type { Basis } from "./basis.ts";

import { baseRowsAt, type MeshRows } from "./mesh-rows.ts";
import { meshSum } from "./mesh-sum.ts";
import { momentumOf, rawMotions } from "./momentum.ts";
import { projection } from "./projection.ts";

/** The stiffness that a constant stands for, or the mass. */
export interface Unit {
  /** packed */
  readonly projected: Float64Array;
  /** of a mass: [V W]'M R with the rigid motions R of the base, see momentum.ts */
  readonly momentum?: Float64Array;
}

/** How much of a stiffness a variant has more than the base, and of it weighed by loss. */
export interface StiffnessShare {
  readonly of: Unit;
  readonly stiffness: number;
  readonly loss: number;
}

/** How much of a mass a variant has more than the base, and how far that went as a whole, m. */
export interface MassShare {
  readonly of: Unit;
  readonly mass: number;
  readonly shift: Vec3;
}

/** @param elements of the base, of which the stiffness is meant */
export function stiffnessUnit(
  { space }: Pick<Basis, "space">,
  rows: MeshRows,
  elements: readonly SomeMatrices[],
): Unit {
  const { unknowns, sums } = meshSum(
    elements.flatMap(({ nodes, K }) => (K ? [{ nodes, A: K, weights: [1] }] : [])),
    1,
  );
  return { projected: projection(space, sums[0], baseRowsAt(rows, unknowns, rows.all)) };
}

/** @param elements of the base, of which the mass is meant */
export function massUnit(
  { space, base, about }: Pick<Basis, "space" | "base" | "about">,
  rows: MeshRows,
  elements: readonly SomeMatrices[],
): Unit {
  const { unknowns, sums } = meshSum(
    elements.flatMap(({ nodes, M }) => (M ? [{ nodes, A: M, weights: [1] }] : [])),
    1,
  );
  const own = baseRowsAt(rows, unknowns, rows.all);
  const R = rawMotions(base.mesh.xyz, about, unknowns);
  return {
    projected: projection(space, sums[0], own),
    momentum: momentumOf(sums[0], own, rows.all, R),
  };
}
