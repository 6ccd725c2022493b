/** Elements of the base taken away, those of a variant put in their place. */

import type { SymmetricSparse } from "../linalg/sparse.ts";
import { type ElementMatrices, matricesOf, type WholeCells } from "../matrices/elements.ts";
import { type LeftOver, onlyConstants } from "./beam-terms.ts";
import type { Differences } from "./differences.ts";
import type { Known } from "./known.ts";
import { dofsOf, type MeshRows, placeOf, rowsOf } from "./mesh-rows.ts";
import { type MeshSum, meshSum, type Weighted } from "./mesh-sum.ts";
import type { Meshed } from "./meshed.ts";

/** What the elements add, before it is seen in the space. */
export interface Exchange {
  readonly stiffness: Differing<"K" | "H">;
  readonly mass: Differing<"M">;
  /** least ratio of a stiffness to that of the base, pads left out (see `softestPad`) */
  readonly softest: number;
}

/** Matrices on some unknowns of the mesh. */
export type Differing<Name extends string> = Readonly<Record<Name, SymmetricSparse>> & {
  readonly dofs: Int32Array;
  /** of V and W there (their number x (width + probes), column-major) */
  readonly rows: Float64Array;
};

/**
 * @param rows of the variant
 * @param rest of beams that are known on the base's ties but for some constants
 */
export function exchangeOf(
  known: Known,
  rows: MeshRows,
  base: Meshed,
  { meshed, elements, hanging }: Differences,
  rest: readonly LeftOver[],
): Exchange {
  let softest = 1;
  const stiff: Weighted[] = [];
  const heavy: Weighted[] = [];
  const put = (e: ElementMatrices, sign: 1 | -1, places: readonly number[], weights: Meshed) => {
    const { K, M, part } = e;
    if (K) stiff.push({ places, A: K, weights: [sign, sign * weights.lossWeights[part]] });
    if (M) heavy.push({ places, A: M, weights: [sign] });
  };
  const own = (nodes: readonly number[]) => nodes.map((node) => placeOf(rows, node));
  const wholeCells: WholeCells = new Map();
  const ofVariant = (index: number) =>
    matricesOf(meshed.mesh, meshed.model, meshed.massPerArea, index, wholeCells);
  const { beams, cells, springs } = base.mesh;
  const firstPad = beams.length + cells.length + springs.length;
  for (const index of elements) {
    const [before, after] = [known.element(index), ofVariant(index)];
    if (index < firstPad) softest = Math.min(softest, leastRatio(before[0], after[0]));
    for (const e of before) put(e, -1, e.nodes, base);
    for (const e of after) put(e, 1, own(e.nodes), meshed);
  }
  for (const left of rest) {
    const { beam } = left;
    put(onlyConstants(base, left), -1, base.mesh.beams[beam].nodes, base);
    put(onlyConstants(meshed, left), 1, base.mesh.beams[beam].nodes, meshed);
  }
  // What is the same but for its ties has the variant's constants on the base's ties by now.
  for (const index of hanging) {
    for (const e of ofVariant(index)) {
      if (!e.nodes.some((node) => rows.ownNumber[node] >= 0)) continue; // another piece of the pad hangs
      put(e, -1, e.nodes, meshed);
      put(e, 1, own(e.nodes), meshed);
    }
  }
  const stiffness = meshSum(stiff, 2);
  const mass = meshSum(heavy, 1);
  return {
    stiffness: { K: stiffness.sums[0], H: stiffness.sums[1], ...at(rows, stiffness) },
    mass: { M: mass.sums[0], ...at(rows, mass) },
    softest,
  };
}

function at(rows: MeshRows, { unknowns }: MeshSum) {
  return { dofs: dofsOf(rows, unknowns), rows: rowsOf(rows, unknowns) };
}

/** What is less than this share of an element's largest diagonal entry is what rounding leaves of zero. */
const NOTHING = 1e-9;

/** Least ratio of the diagonals of two stiffnesses. */
function leastRatio(before: ElementMatrices, after: ElementMatrices): number {
  if (!before.K || !after.K) return 1;
  const order = 6 * before.nodes.length;
  let largest = 0;
  for (let i = 0; i < order; i++) largest = Math.max(largest, before.K[i * order + i]);
  let least = 1;
  for (let i = 0; i < order; i++) {
    const d = before.K[i * order + i];
    if (d > NOTHING * largest) least = Math.min(least, after.K[i * order + i] / d);
  }
  return least;
}
