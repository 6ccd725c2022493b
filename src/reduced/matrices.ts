/** The matrices of a variant in the space: the base's, and what differs. */

import { choleskyInPlace, forwardInPlace } from "../linalg/dense.ts";
import { type ElementMatrices, matricesOf } from "../matrices/elements.ts";
import type { Reduction } from "../matrices/reduction.ts";
import { freeRigidMotions } from "../matrices/rigid.ts";
import type { Vec3 } from "../model/types.ts";
import { type Contribution, contributionOf, massOf, type SignedElement } from "./contribution.ts";
import type { Differences } from "./differences.ts";
import type { Meshed } from "./meshed.ts";
import { constantOf, TERMS } from "./plate-terms.ts";
import type { Terms } from "./terms.ts";
import type { ReducedFrame } from "./types.ts";

export interface ReducedMatrices {
  /** (width + probes) x width, row-major: [V W]'K V, the same of the mass less its rigid part, and of the loss */
  readonly K: Float64Array;
  readonly M: Float64Array;
  readonly H: Float64Array;
  /** rigid motions of the variant on the unknowns, M-orthonormal (n x rigid, column-major) */
  readonly R: Float64Array;
  readonly rigid: number;
  /** a vector y of the space stands for the motion V y - R S y (rigid x width, row-major) */
  readonly S: Float64Array;
  /** least ratio of a stiffness to that of the base */
  readonly softest: number;
}

/** A contribution and how much of it. */
interface Part {
  readonly of: Contribution;
  readonly stiffness: number;
  readonly mass: number;
  readonly loss: number;
}

/** @param cg of the variant, about which its rigid motions are taken, m */
export function reducedMatrices(
  frame: Pick<ReducedFrame, "base" | "space" | "whole">,
  terms: Terms,
  found: Differences,
  cg: Vec3,
): ReducedMatrices {
  const { space, whole } = frame;
  const size = (space.width + space.probes) * space.width;
  const changed = elementParts(frame, found);
  const plates = plateParts(frame, terms, found);
  const parts: Part[] = [
    { of: whole, stiffness: 1, mass: 1, loss: 1 },
    ...changed.parts,
    ...plates.parts,
  ];
  const sum = (pick: "K" | "M" | "H", weight: "stiffness" | "mass" | "loss") => {
    const out = new Float64Array(size);
    for (const part of parts) {
      const w = part[weight];
      if (w !== 0) addScaled(out, w, part.of[pick]);
    }
    return out;
  };
  const K = sum("K", "stiffness");
  const M = sum("M", "mass");
  const H = sum("H", "loss");
  return {
    K,
    H,
    ...withoutRigid(frame, found, M, parts, cg),
    softest: Math.min(changed.softest, plates.softest),
  };
}

/** out += c a */
function addScaled(out: Float64Array, c: number, a: Float64Array): void {
  for (let i = 0; i < out.length; i++) out[i] += c * a[i];
}

/** An element as it goes into a contribution. */
interface Exchanged extends SignedElement {
  readonly reduction: Reduction;
  readonly loss: number;
}

/** Elements of the base taken away, those of the variant put in their place. */
function elementParts(
  { base, space }: Pick<ReducedFrame, "base" | "space">,
  { meshed, elements, hanging }: Differences,
) {
  let softest = 1;
  const exchanged: Exchanged[] = [];
  const of = (m: Meshed, index: number) => matricesOf(m.mesh, m.model, m.massPerArea, index);
  const put = (all: readonly ElementMatrices[], sign: 1 | -1, ties: Meshed, weights: Meshed) => {
    for (const matrices of all) {
      const loss = weights.lossWeights[matrices.part];
      exchanged.push({ matrices, sign, reduction: ties.reduction, loss });
    }
  };
  for (const index of elements) {
    const [before, after] = [of(base, index), of(meshed, index)];
    before.forEach((b, i) => {
      softest = Math.min(softest, leastRatio(b, after[i]));
    });
    put(before, -1, base, base);
    put(after, 1, meshed, meshed);
  }
  // What is the same but for its ties has the variant's constants on the base's ties by now.
  for (const index of hanging) {
    const own = of(meshed, index);
    put(own, -1, base, meshed);
    put(own, 1, meshed, meshed);
  }
  const groups = new Map<string, Exchanged[]>();
  for (const e of exchanged) {
    const key = `${e.reduction === base.reduction} ${e.loss}`;
    groups.set(key, [...(groups.get(key) ?? []), e]);
  }
  const parts = [...groups.values()].map((group): Part => {
    const [{ reduction, loss }] = group;
    return { of: contributionOf(space, reduction, group, loss), stiffness: 1, mass: 1, loss: 1 };
  });
  return { parts, softest };
}

/** Least ratio of the diagonals of two stiffnesses; 1 where they are not between the same nodes. */
function leastRatio(before: ElementMatrices, after: ElementMatrices | undefined): number {
  if (!before.K || !after?.K || before.nodes.some((n, i) => n !== after.nodes[i])) return 1;
  const order = 6 * before.nodes.length;
  let least = 1;
  for (let i = 0; i < order; i++) {
    const d = before.K[i * order + i];
    if (d > 0) least = Math.min(least, after.K[i * order + i] / d);
  }
  return least;
}

/** Plates with other constants: each constant's share of the difference. */
function plateParts(
  { base }: Pick<ReducedFrame, "base">,
  terms: Terms,
  { meshed, plates }: Differences,
) {
  let softest = 1;
  const parts: Part[] = [];
  for (const plate of plates) {
    const part = base.mesh.parts.findIndex(
      (p) => p.kind === "plate" && p.name === base.model.plates[plate].name,
    );
    const loss = [base.lossWeights[part], meshed.lossWeights[part]];
    for (const term of TERMS) {
      const before = constantOf(base, plate, term);
      const after = constantOf(meshed, plate, term);
      if (before === 0 && after === 0) continue;
      const stiff = "entry" in term;
      if (stiff && term.kind !== "B" && term.entry % 4 === 0 && before > 0) {
        softest = Math.min(softest, after / before);
      }
      const of = terms(plate, term);
      parts.push({
        of,
        stiffness: stiff ? after - before : 0,
        mass: stiff ? 0 : after - before,
        loss: stiff ? loss[1] * after - loss[0] * before : 0,
      });
    }
  }
  return { parts, softest };
}

/** The mass as vectors of the space have it when their rigid part is taken out. */
function withoutRigid(
  { space }: Pick<ReducedFrame, "space">,
  { meshed }: Differences,
  M: Float64Array,
  parts: readonly Part[],
  cg: Vec3,
): Pick<ReducedMatrices, "M" | "R" | "rigid" | "S"> {
  const { n, width, probes } = space;
  const motions = freeRigidMotions(meshed.mesh, meshed.reduction, cg);
  const rigid = motions.length;
  const R = new Float64Array(n * rigid);
  motions.forEach((r, k) => {
    R.set(r, k * n);
  });
  const own = new Float64Array(rigid * rigid);
  const withSpace = new Float64Array((width + probes) * rigid);
  for (const { of, mass } of parts) {
    if (mass === 0 || rigid === 0) continue;
    const added = massOf(of, space, R, rigid);
    for (let i = 0; i < own.length; i++) own[i] += mass * added.own[i];
    for (let i = 0; i < withSpace.length; i++) withSpace[i] += mass * added.withSpace[i];
  }
  // R := R L'^-1 makes R'MR = 1; [V W]'M R goes along.
  choleskyInPlace(own, rigid);
  const rows = transposed(R, n, rigid);
  forwardInPlace(own, rigid, rows, n);
  const turned = withSpace;
  forwardInPlace(own, rigid, turned, width + probes);
  const S = transposed(turned.subarray(0, width * rigid), rigid, width);
  const out = M.slice();
  for (let i = 0; i < width + probes; i++) {
    for (let j = 0; j < width; j++) {
      let sum = 0;
      for (let k = 0; k < rigid; k++) sum += turned[i * rigid + k] * turned[j * rigid + k];
      out[i * width + j] -= sum;
    }
  }
  return { M: out, R: transposed(rows, rigid, n), rigid, S };
}

/** Column-major rows x columns to column-major columns x rows. */
function transposed(A: Float64Array, rows: number, columns: number): Float64Array {
  const out = new Float64Array(rows * columns);
  for (let c = 0; c < columns; c++)
    for (let r = 0; r < rows; r++) out[r * columns + c] = A[c * rows + r];
  return out;
}
