/** What the variants of a frame share beyond its plain data: made when first wanted, and kept. */

import { type ElementMatrices, matricesOf } from "../matrices/elements.ts";
import type { Basis } from "./basis.ts";
import { beamFamiliesOf } from "./beam-families.ts";
import { baseRows, baseRowsAt, type MeshRows } from "./mesh-rows.ts";
import { meshSum } from "./mesh-sum.ts";
import { momentumOf, rawMotions } from "./momentum.ts";
import { productOf } from "./projection.ts";
import type { Unit } from "./units.ts";

export interface Known {
  readonly rows: MeshRows;
  readonly momentum: Momentum;
  /** matrices of an element of the base, as `matricesOf` */
  readonly element: (index: number) => readonly ElementMatrices[];
  /** see beam-families.ts */
  readonly beamFamilies: readonly (readonly number[])[];
  /** a unit under a name of its own */
  readonly unit: (name: string, make: () => Unit) => Unit;
}

/** Of the whole base, see momentum.ts. */
export interface Momentum {
  /** [V W]'M R of the base's rigid motions (all x 6, row-major) */
  readonly whole: Float64Array;
  /** M [V W] along x, y and z at each node (3 * nodes x all, row-major) */
  readonly along: Float64Array;
}

export function knownOf({ base, system, space, about }: Basis): Known {
  const rows = baseRows(base.reduction, space);
  const elements = new Map<number, readonly ElementMatrices[]>();
  const units = new Map<string, Unit>();
  const { mesh, model, massPerArea } = base;
  return {
    rows,
    momentum: baseMomentum(rows, system, mesh.xyz, about),
    element: (index) => kept(elements, index, () => matricesOf(mesh, model, massPerArea, index)),
    beamFamilies: beamFamiliesOf(base),
    unit: (name, make) => kept(units, name, make),
  };
}

function kept<K, V>(all: Map<K, V>, key: K, make: () => V): V {
  const found = all.get(key) ?? make();
  all.set(key, found);
  return found;
}

function baseMomentum(
  rows: MeshRows,
  { elements }: Basis["system"],
  xyz: Float64Array,
  about: Basis["about"],
): Momentum {
  const { unknowns, sums } = meshSum(
    elements.flatMap(({ nodes, M }) => (M ? [{ nodes, A: M, weights: [1] }] : [])),
    1,
  );
  const own = baseRowsAt(rows, unknowns, rows.all);
  const MV = productOf(sums[0], own, rows.all);
  const m = unknowns.length;
  const along = new Float64Array(xyz.length * rows.all);
  unknowns.forEach((dof, i) => {
    if (dof % 6 > 2) return;
    const to = (3 * Math.floor(dof / 6) + (dof % 6)) * rows.all;
    for (let c = 0; c < rows.all; c++) along[to + c] = MV[c * m + i];
  });
  return { whole: momentumOf(sums[0], own, rows.all, rawMotions(xyz, about, unknowns)), along };
}
