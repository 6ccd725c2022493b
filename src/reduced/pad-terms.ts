/**
 * A pad's stiffness as the sum of constants times fixed matrices: its stiffness along each axis times its
 * heights, as long as its drawing in the plan stays. Pads that are alike, as mirrored copies are, go
 * together.
 */

import { PAD_TERMS, type PadTerm, padConstant, padUnit } from "../element/pad.ts";
import type { SomeMatrices } from "../matrices/assemble.ts";
import { padHeights } from "../matrices/elements.ts";
import type { Basis } from "./basis.ts";
import type { Known } from "./known.ts";
import type { Meshed } from "./meshed.ts";
import { same } from "./same.ts";
import { type StiffnessShare, stiffnessUnit, type Unit } from "./units.ts";

/** @param pads that differ in their constants alone */
export function padShares(
  frame: Basis,
  known: Known,
  meshed: Meshed,
  pads: readonly number[],
): StiffnessShare[] {
  const { base } = frame;
  return familiesOf(base, meshed, pads).flatMap((family) => {
    const before = constantsOf(base, family[0]);
    const after = constantsOf(meshed, family[0]);
    return PAD_TERMS.map((term, t) => ({
      of: padTermUnit(frame, known, family, term),
      stiffness: after.values[t] - before.values[t],
      loss: after.loss * after.values[t] - before.loss * before.values[t],
    }));
  });
}

/** Least ratio of a pad's stiffness to that of the base, each pad as a whole: its pieces come and go. */
export function softestPad(base: Meshed, { mesh }: Meshed): number {
  return Math.min(
    1,
    ...mesh.pads.flatMap(({ k }, p) => [0, 1, 2].map((i) => k[i] / base.mesh.pads[p].k[i])),
  );
}

/** Pads with the same constants on both frames. */
function familiesOf(base: Meshed, meshed: Meshed, pads: readonly number[]): number[][] {
  const families: { readonly constants: readonly unknown[]; readonly pads: number[] }[] = [];
  for (const pad of pads) {
    const constants = [constantsOf(base, pad), constantsOf(meshed, pad)];
    const found = families.find((f) => same(f.constants, constants));
    if (found) found.pads.push(pad);
    else families.push({ constants, pads: [pad] });
  }
  return families.map((f) => f.pads);
}

function constantsOf({ mesh, lossWeights }: Meshed, pad: number) {
  const e = mesh.pads[pad];
  const { reach } = padHeights(e, mesh);
  const values = PAD_TERMS.map((term) => padConstant(term, e.k, e.face, reach));
  return { values, loss: lossWeights[e.part] };
}

function padTermUnit(frame: Basis, known: Known, family: readonly number[], term: PadTerm): Unit {
  const name = `pads ${family.join()} ${term.axis} ${term.heights.join()}`;
  return known.unit(name, () => {
    const { mesh } = frame.base;
    const elements = family.flatMap((pad): SomeMatrices[] => {
      const e = mesh.pads[pad];
      const { body } = padHeights(e, mesh);
      return e.patch.pieces.map(({ nodes, points }) => ({
        nodes: [...nodes, e.node],
        K: padUnit(term, points, body),
      }));
    });
    return stiffnessUnit(frame, known.rows, elements);
  });
}
