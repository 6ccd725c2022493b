/**
 * A plate's stiffness and mass as sums of its constants times fixed matrices: K and M of its cells are
 * linear in A, B, D, mass and rotary inertia per area as long as its drawing stays.
 */

import { cellMatrices, type ElementMatrices } from "../matrices/elements.ts";
import type { CellElement } from "../mesh/types.ts";
import { type Contribution, contributionOf } from "./contribution.ts";
import type { Meshed } from "./meshed.ts";
import type { Space } from "./space.ts";

/** Entries of the symmetric A and D that the cells use, and of B. */
const SYMMETRIC = [0, 1, 2, 4, 5, 8] as const;
const ALL = [0, 1, 2, 3, 4, 5, 6, 7, 8] as const;

type Matrix = "A" | "B" | "D";

/** One constant of a plate. */
export type Term =
  | { readonly kind: Matrix; readonly entry: number }
  | { readonly kind: "massPerArea" | "rotaryPerArea" };

export const TERMS: readonly Term[] = [
  ...SYMMETRIC.map((entry) => ({ kind: "A", entry }) as const),
  ...ALL.map((entry) => ({ kind: "B", entry }) as const),
  ...SYMMETRIC.map((entry) => ({ kind: "D", entry }) as const),
  { kind: "massPerArea" },
  { kind: "rotaryPerArea" },
];

export function constantOf({ model, massPerArea }: Meshed, plate: number, term: Term): number {
  const part = model.plates[plate];
  if ("entry" in term) return part[term.kind][term.entry];
  return term.kind === "massPerArea" ? massPerArea[plate] : part.rotaryPerArea;
}

/** What the plate's cells add for a unit of one constant. */
export function plateTerm(space: Space, base: Meshed, plate: number, term: Term): Contribution {
  const { mesh, reduction } = base;
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
  let whole: ElementMatrices | undefined;
  const made = (e: CellElement): ElementMatrices => {
    const { K, M } = cellMatrices(constants, massPerArea, e);
    const used = "entry" in term ? { K } : { M };
    return { nodes: e.nodes, ...used, part: e.part };
  };
  const elements = mesh.cells.flatMap((e) => {
    if (e.plate !== plate) return [];
    if (e.points) return [made(e)];
    whole ??= made(e);
    return [{ ...whole, nodes: e.nodes }];
  });
  return contributionOf(
    space,
    reduction,
    elements.map((matrices) => ({ matrices, sign: 1 as const })),
    1,
  );
}
