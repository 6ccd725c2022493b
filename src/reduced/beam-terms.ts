/**
 * Beams whose sections alone differ. Without shear their matrices are linear in the section's constants, so
 * where a constant changes by one ratio along a part, and on the parts that are like it, one unit of it
 * stands for all. Constants that change otherwise (torsion along a taper, when the thickness changes) are
 * left to be exchanged element by element.
 */

import type { BeamConstants } from "../element/beam.ts";
import { beamOf, type ElementMatrices } from "../matrices/elements.ts";
import type { BeamElement, Mesh } from "../mesh/types.ts";
import type { Vec3 } from "../model/types.ts";
import type { Basis } from "./basis.ts";
import type { Known } from "./known.ts";
import type { Meshed } from "./meshed.ts";
import { sameNumber } from "./same.ts";
import {
  type MassShare,
  massUnit,
  type StiffnessShare,
  stiffnessUnit,
  type Unit,
} from "./units.ts";

const STIFF = ["EA", "EIy", "EIz", "GJ"] as const;
const HEAVY = ["rhoA", "rhoIy", "rhoIz", "rhoIp"] as const;
type Constant = (typeof STIFF)[number] | (typeof HEAVY)[number];

/** A beam of which some constants are left to be exchanged. */
export interface LeftOver {
  readonly beam: number;
  readonly constants: readonly Constant[];
}

export interface BeamShares {
  readonly stiff: readonly StiffnessShare[];
  readonly heavy: readonly MassShare[];
  readonly rest: readonly LeftOver[];
  /** least ratio of a stiffness to that of the base */
  readonly softest: number;
}

/** @param beams that differ in their sections or their loss factor alone */
export function beamShares(
  basis: Basis,
  known: Known,
  meshed: Meshed,
  beams: readonly number[],
): BeamShares {
  const { base } = basis;
  const wanted = new Set(beams);
  const stiff: StiffnessShare[] = [];
  const heavy: MassShare[] = [];
  const rest: LeftOver[] = [];
  let softest = 1;
  for (const family of known.beamFamilies) {
    const here = family.filter((beam) => wanted.has(beam));
    if (here.length === 0) continue;
    const shift = here.length === family.length ? shiftOf(base, meshed, family) : undefined;
    const left: Constant[] = [];
    for (const constant of [...STIFF, ...HEAVY]) {
      const isStiff = STIFF.some((c) => c === constant);
      const ratios = ratiosOf(base.mesh, meshed.mesh, here, constant);
      if (isStiff) softest = Math.min(softest, ...ratios);
      const ratio = ratios.every((r) => sameNumber(r, ratios[0])) ? ratios[0] : undefined;
      if (ratio === undefined || shift === undefined) {
        left.push(constant);
        continue;
      }
      const of = beamUnit(basis, known, family, constant);
      if (isStiff)
        stiff.push({ of, stiffness: ratio - 1, loss: lossOf(base, meshed, family, ratio) });
      else heavy.push({ of, mass: ratio - 1, shift });
    }
    if (left.length > 0) for (const beam of here) rest.push({ beam, constants: left });
  }
  return { stiff, heavy, rest, softest };
}

/** A beam with no other constants than these. */
export function onlyConstants(
  { mesh, model }: Meshed,
  { beam, constants }: LeftOver,
): ElementMatrices {
  const e = mesh.beams[beam];
  const sections = e.sections.map((section) => {
    const out: Record<keyof BeamConstants, number> = { ...NOTHING };
    for (const c of constants) out[c] = section[c];
    return out;
  });
  return beamOf({ ...e, sections }, model.theory);
}

const NOTHING = {
  EA: 0,
  EIy: 0,
  EIz: 0,
  GJ: 0,
  kGAy: 0,
  kGAz: 0,
  rhoA: 0,
  rhoIy: 0,
  rhoIz: 0,
  rhoIp: 0,
};

/** How far a family moved as a whole, m; undefined where its beams moved apart or are damped differently. */
function shiftOf(base: Meshed, meshed: Meshed, family: readonly number[]): Vec3 | undefined {
  const [a, b] = [base.mesh, meshed.mesh];
  const part = (beam: number) => b.beams[beam].part;
  const loss = meshed.lossWeights[part(family[0])];
  if (family.some((beam) => !sameNumber(meshed.lossWeights[part(beam)], loss))) return undefined;
  const nodes = family.flatMap((beam) => a.beams[beam].nodes);
  const by = (node: number, k: number) => b.xyz[3 * node + k] - a.xyz[3 * node + k];
  const shift: Vec3 = [by(nodes[0], 0), by(nodes[0], 1), by(nodes[0], 2)];
  const together = nodes.every((node) => shift.every((d, k) => sameNumber(by(node, k), d)));
  return together ? shift : undefined;
}

function ratiosOf(a: Mesh, b: Mesh, beams: readonly number[], constant: Constant): number[] {
  return beams.flatMap((beam) => {
    const [e, f]: BeamElement[] = [a.beams[beam], b.beams[beam]];
    return e.sections.map((s, g) =>
      s[constant] === f.sections[g][constant] ? 1 : f.sections[g][constant] / s[constant],
    );
  });
}

function lossOf(base: Meshed, meshed: Meshed, family: readonly number[], ratio: number): number {
  const { part } = base.mesh.beams[family[0]];
  return meshed.lossWeights[part] * ratio - base.lossWeights[part];
}

/** What a family's constant makes on the base. */
function beamUnit(basis: Basis, known: Known, family: readonly number[], constant: Constant): Unit {
  return known.unit(`beams ${family[0]} ${constant}`, () => {
    const elements = family.map((beam) =>
      onlyConstants(basis.base, { beam, constants: [constant] }),
    );
    return STIFF.some((c) => c === constant)
      ? stiffnessUnit(basis, known.rows, elements)
      : massUnit(basis, known.rows, elements);
  });
}
