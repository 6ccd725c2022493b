/** Mass, centre of gravity and inertia: from the drawing, and from the matrices as a check. */

import { type Inertia, shiftInertia } from "../element/rigid-mass.ts";
import { inputError } from "../errors.ts";
import { multiply } from "../linalg/product.ts";
import type { Mesh } from "../mesh/types.ts";
import type { Model, Vec3 } from "../model/types.ts";
import type { System } from "./assemble.ts";
import { massPieces, type Piece } from "./mass-pieces.ts";
import { restrict } from "./reduction.ts";
import { rigidMotions } from "./rigid.ts";

export interface MassProperties {
  /** kg */
  readonly mass: number;
  /** m */
  readonly cg: Vec3;
  /** about the centre of gravity, kg m^2 */
  readonly inertia: Inertia;
}

export interface PartMass {
  readonly name: string;
  readonly kind: string;
  readonly mass: number;
  readonly cg: Vec3;
}

export interface MassReport extends MassProperties {
  /** one entry per name, in the order of the file */
  readonly parts: readonly PartMass[];
}

/** @throws InputError for a frame that weighs nothing */
export function requireMass({ mass }: Pick<MassProperties, "mass">): void {
  if (mass > 0) return;
  throw inputError(
    "",
    "the frame has no mass, so nothing can vibrate; give materials a density or add bodies",
  );
}

/** From the drawing alone: areas, widths and bodies, no mesh error in it. */
export function massFromDrawing(model: Model, mesh: Mesh): MassReport {
  const all = massPieces(model, mesh);
  const total = sumPieces(all);
  const byName = new Map<string, Piece[]>();
  for (const p of all) {
    const key = `${p.kind}\u0000${p.name}`;
    byName.set(key, [...(byName.get(key) ?? []), p]);
  }
  const parts = [...byName.values()].map((group) => {
    const { mass, cg } = sumPieces(group);
    return { name: group[0].name, kind: group[0].kind, mass, cg };
  });
  return { ...total, parts };
}

const KEYS = ["xx", "yy", "zz", "xy", "xz", "yz"] as const;

function sumPieces(pieces: readonly Piece[]): MassProperties {
  const mass = pieces.reduce((m, p) => m + p.mass, 0);
  const mean = (i: number) =>
    mass > 0 ? pieces.reduce((s, p) => s + p.mass * p.cg[i], 0) / mass : 0;
  const cg: Vec3 = [mean(0), mean(1), mean(2)];
  const inertia = { xx: 0, yy: 0, zz: 0, xy: 0, xz: 0, yz: 0 };
  for (const p of pieces) {
    const r = p.cg.map((v, i) => v - cg[i]);
    const I = shiftInertia(p.inertia, p.mass, r);
    for (const k of KEYS) inertia[k] += I[k];
  }
  return { mass, cg, inertia };
}

/**
 * R'MR of the assembled mass matrix, R the six rigid-body motions about `about`. Only meaningful while
 * nothing is held, because held unknowns leave the matrices.
 */
export function massFromMatrices(system: System, mesh: Mesh, about: Vec3): MassProperties {
  const R = rigidMotions(mesh, about).map((r) => restrict(system.reduction, r));
  const MR = R.map((r) => {
    const out = new Float64Array(r.length);
    multiply(out, system.M, r);
    return out;
  });
  const at = (i: number, j: number) => R[i].reduce((sum, v, k) => sum + v * MR[j][k], 0);
  const mass = at(0, 0);
  // m [r]x sits between translations and rotations: entry (y, rx) is -m rz, (z, rx) is m ry.
  const r: Vec3 = [at(1, 5) / mass, at(2, 3) / mass, at(0, 4) / mass];
  const about0 = {
    xx: at(3, 3),
    yy: at(4, 4),
    zz: at(5, 5),
    xy: at(3, 4),
    xz: at(3, 5),
    yz: at(4, 5),
  };
  return {
    mass,
    cg: [about[0] + r[0], about[1] + r[1], about[2] + r[2]],
    inertia: shiftInertia(about0, -mass, r),
  };
}

/**
 * Largest difference between the two ways: mass relative to the mass, centre of gravity to the radius
 * of gyration, inertia to its trace.
 */
export function massDifference(a: MassProperties, b: MassProperties): number {
  const trace = a.inertia.xx + a.inertia.yy + a.inertia.zz;
  const radius = Math.sqrt(trace / a.mass);
  return Math.max(
    Math.abs(a.mass - b.mass) / a.mass,
    ...a.cg.map((v, i) => Math.abs(v - b.cg[i]) / radius),
    ...KEYS.map((k) => Math.abs(a.inertia[k] - b.inertia[k]) / trace),
  );
}
