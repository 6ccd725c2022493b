/**
 * A plate's stiffness and mass as sums of its constants times fixed matrices: K and M of its cells are
 * linear in A, B, D, mass and rotary inertia per area as long as its drawing stays.
 */

import { cellMatrices, type ElementMatrices } from "../matrices/elements.ts";
import type { CellElement } from "../mesh/types.ts";
import type { Vec3 } from "../model/types.ts";
import type { Basis } from "./basis.ts";
import type { Known } from "./known.ts";
import type { Meshed } from "./meshed.ts";
import {
  type MassShare,
  massUnit,
  type StiffnessShare,
  stiffnessUnit,
  type Unit,
} from "./units.ts";

/** Entries of the symmetric A and D that the cells use, and of B. */
const SYMMETRIC = [0, 1, 2, 4, 5, 8] as const;
const ALL = [0, 1, 2, 3, 4, 5, 6, 7, 8] as const;

type Matrix = "A" | "B" | "D";

/** One constant of a plate. */
type Term =
  | { readonly kind: Matrix; readonly entry: number }
  | { readonly kind: "massPerArea" | "rotaryPerArea" };

const TERMS: readonly Term[] = [
  ...SYMMETRIC.map((entry) => ({ kind: "A", entry }) as const),
  ...ALL.map((entry) => ({ kind: "B", entry }) as const),
  ...SYMMETRIC.map((entry) => ({ kind: "D", entry }) as const),
  { kind: "massPerArea" },
  { kind: "rotaryPerArea" },
];

/**
 * Each constant's share of the difference.
 *
 * @param plates that differ in their constants alone
 */
export function plateShares(frame: Basis, known: Known, meshed: Meshed, plates: readonly number[]) {
  const { base } = frame;
  const stiff: StiffnessShare[] = [];
  const heavy: MassShare[] = [];
  let softest = 1;
  for (const plate of plates) {
    const part = base.mesh.parts.findIndex(
      (p) => p.kind === "plate" && p.name === base.model.plates[plate].name,
    );
    const loss = [base.lossWeights[part], meshed.lossWeights[part]];
    const shift = shiftOf(base, meshed, plate);
    for (const term of TERMS) {
      const before = constantOf(base, plate, term);
      const after = constantOf(meshed, plate, term);
      if (before === 0 && after === 0) continue;
      const of = plateUnit(frame, known, plate, term);
      if ("entry" in term) {
        stiff.push({ of, stiffness: after - before, loss: loss[1] * after - loss[0] * before });
        if (term.kind !== "B" && term.entry % 4 === 0 && before > 0) {
          softest = Math.min(softest, after / before);
        }
      } else heavy.push({ of, mass: after - before, shift });
    }
  }
  return { stiff, heavy, softest };
}

function shiftOf(base: Meshed, meshed: Meshed, plate: number): Vec3 {
  const [a, b] = [base.mesh.grids[plate], meshed.mesh.grids[plate]];
  return [b.x0 - a.x0, b.y0 - a.y0, b.z - a.z];
}

function constantOf({ model, massPerArea }: Meshed, plate: number, term: Term): number {
  const part = model.plates[plate];
  if ("entry" in term) return part[term.kind][term.entry];
  return term.kind === "massPerArea" ? massPerArea[plate] : part.rotaryPerArea;
}

/** What the plate's cells add for a unit of one constant. */
function plateUnit(frame: Basis, known: Known, plate: number, term: Term): Unit {
  return known.unit(`plate ${plate} ${term.kind} ${"entry" in term ? term.entry : ""}`, () => {
    const elements = unitCells(frame.base, plate, term);
    return "entry" in term
      ? stiffnessUnit(frame, known.rows, elements)
      : massUnit(frame, known.rows, elements);
  });
}

/** The plate's cells if all its constants were zero but one, and that 1. */
function unitCells({ mesh }: Meshed, plate: number, term: Term): ElementMatrices[] {
  const unit = (kind: Matrix) => {
    const values = new Float64Array(9);
    if ("entry" in term && term.kind === kind) {
      values[term.entry] = 1;
      if (kind !== "B") values[3 * (term.entry % 3) + Math.floor(term.entry / 3)] = 1;
    }
    return values;
  };
  const constants = {
    A: unit("A"),
    B: unit("B"),
    D: unit("D"),
    rotaryPerArea: term.kind === "rotaryPerArea" ? 1 : 0,
  };
  const massPerArea = term.kind === "massPerArea" ? 1 : 0;
  const made = (e: CellElement): ElementMatrices => ({
    nodes: e.nodes,
    ...cellMatrices(constants, massPerArea, e),
    part: e.part,
  });
  let whole: ElementMatrices | undefined;
  return mesh.cells.flatMap((e) => {
    if (e.plate !== plate) return [];
    if (e.points) return [made(e)];
    whole ??= made(e);
    return [{ ...whole, nodes: e.nodes }];
  });
}
