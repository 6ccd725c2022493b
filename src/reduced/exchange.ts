/** Elements of the base that a variant has otherwise, and elements on ties that it has moved. */

import { type ElementMatrices, matricesOf, type WholeCells } from "../matrices/elements.ts";
import { type LeftOver, onlyConstants } from "./beam-terms.ts";
import type { Differences } from "./differences.ts";
import type { Known } from "./known.ts";
import { hasMoved, type MeshRows } from "./mesh-rows.ts";
import { type MeshSum, meshSum, type Weighted } from "./mesh-sum.ts";
import type { Meshed } from "./meshed.ts";

/** Sums of the stiffness and the same weighed by loss, and of the mass. */
export interface Sums {
  readonly stiffness: MeshSum;
  readonly mass: MeshSum;
}

export interface Exchange {
  /** how much more the elements have, on the mesh */
  readonly differing: Sums;
  /** all that the variant has on nodes whose ties moved */
  readonly hanging: Sums;
  /** least ratio of a stiffness to that of the base, pads left out (see `softestPad`) */
  readonly softest: number;
}

/**
 * @param rows of the variant
 * @param rest of beams that are known but for some constants
 */
export function exchangeOf(
  known: Known,
  rows: MeshRows,
  base: Meshed,
  { meshed, elements, hanging }: Differences,
  rest: readonly LeftOver[],
): Exchange {
  let softest = 1;
  const differing = collector();
  const onMoved = collector();
  const wholeCells: WholeCells = new Map();
  const ofVariant = (index: number) =>
    matricesOf(meshed.mesh, meshed.model, meshed.massPerArea, index, wholeCells);
  const hang = (e: ElementMatrices) => {
    if (e.nodes.some((node) => hasMoved(rows, node))) onMoved.add(e, 1, meshed);
  };
  const { beams, cells, springs } = base.mesh;
  const firstPad = beams.length + cells.length + springs.length;
  for (const index of elements) {
    const [before, after] = [known.element(index), ofVariant(index)];
    if (index < firstPad) softest = Math.min(softest, leastRatio(before[0], after[0]));
    for (const e of before) differing.add(e, -1, base);
    for (const e of after) {
      differing.add(e, 1, meshed);
      hang(e);
    }
  }
  for (const left of rest) {
    differing.add(onlyConstants(base, left), -1, base);
    differing.add(onlyConstants(meshed, left), 1, meshed);
  }
  for (const index of hanging) for (const e of ofVariant(index)) hang(e);
  return { differing: differing.sums(), hanging: onMoved.sums(), softest };
}

function collector() {
  const stiff: Weighted[] = [];
  const heavy: Weighted[] = [];
  return {
    add: ({ nodes, K, M, part }: ElementMatrices, sign: 1 | -1, { lossWeights }: Meshed) => {
      if (K) stiff.push({ nodes, A: K, weights: [sign, sign * lossWeights[part]] });
      if (M) heavy.push({ nodes, A: M, weights: [sign] });
    },
    sums: (): Sums => ({ stiffness: meshSum(stiff, 2), mass: meshSum(heavy, 1) }),
  };
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
