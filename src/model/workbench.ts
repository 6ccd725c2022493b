/** What the builders of the model share: the file, what is built so far, and what is wrong. */

import type { Finding } from "../errors.ts";
import type { FrameFile } from "../frame/types.ts";
import { libraryMaterial } from "../material/library-materials.ts";
import { libraryPly } from "../material/library-plies.ts";
import { laminateFromStack, type Material, type PlyFit } from "../material/material.ts";
import { withModuli } from "../material/with-moduli.ts";
import type { Copies } from "./copies.ts";
import { borderDistance, contains } from "./polygon.ts";
import type { ArmPart, PlatePart, Vec3 } from "./types.ts";

/** Places closer than this are the same, m. */
const SAME = 1e-6;

export interface Workbench {
  readonly file: FrameFile;
  readonly findings: Finding[];
  readonly warnings: string[];
  readonly materials: Map<string, Material>;
  readonly plates: PlatePart[];
  readonly arms: ArmPart[];
}

/**
 * The material a part names, from the file or the library, its moduli times the file's factor; laminates
 * are read once.
 */
export function materialOf(bench: Workbench, name: string): Material {
  const known = bench.materials.get(name);
  if (known) return known;
  const made = withModuli(make(bench, name), bench.file.modulusFactors[name] ?? 1);
  bench.materials.set(name, made);
  return made;
}

function make(bench: Workbench, name: string): Material {
  const def = bench.file.materials[name];
  if (!def) return libraryMaterial(name).material;
  if (def.kind !== "laminate") return def;
  const ply = bench.file.plies[def.ply] ?? libraryPly(def.ply).ply;
  const own = def.lossFactor === undefined ? ply : { ...ply, lossFactor: def.lossFactor };
  return laminateFromStack(own, def.stack, `materials.${name}.stack`);
}

/** A stack's plies may be stretched by this factor either way before the user hears of it. */
const PLY_STRETCH = 2;

/** A word where a laminate's plies do not belong to a part's thickness. */
export function warnOfPlies(bench: Workbench, part: string, fit: PlyFit | undefined): void {
  if (!fit || (fit.scale <= PLY_STRETCH && fit.scale >= 1 / PLY_STRETCH)) return;
  const ply = (v: number) => `${(v * 1e3).toFixed(3)} mm`;
  bench.warnings.push(
    `${part}: its ${fit.count} plies would be ${ply(fit.implied)} each, where the ply is ${ply(fit.nominal)}; check the stack against the thickness`,
  );
}

export function plateNumber(bench: Workbench, name: string): number {
  return bench.plates.findIndex((p) => p.name === name);
}

/** Whether a round foot at (x, y) lies on the plate at least with its centre or its rim. */
export function onPlate(plate: PlatePart, x: number, y: number, diameter = 0): boolean {
  if (contains(plate.outline, x, y)) return true;
  return borderDistance(plate.outline, x, y) <= diameter / 2;
}

/** Lengths as people read them: "12.5 mm". */
export function mm(v: number): string {
  return `${Number((v * 1e3).toFixed(2))} mm`;
}

/** A place as people read it: "(12.5, -3) mm". */
export function mmAt(...v: readonly number[]): string {
  return `(${v.map((c) => Number((c * 1e3).toFixed(2))).join(", ")}) mm`;
}

export function vec3(f: (i: number) => number): Vec3 {
  return [f(0), f(1), f(2)];
}

/**
 * A finding where mirroring puts a part on top of itself: it would be there, and weigh, twice.
 *
 * @returns whether all is well
 */
export function checkCopies(
  bench: Workbench,
  path: string,
  copies: Copies,
  at: readonly (readonly number[])[],
): boolean {
  const flipsX = copies === "front and rear" || copies === "all four corners";
  const flipsY = copies === "left and right" || copies === "all four corners";
  const own = at.find(([x, y]) => (flipsX && Math.abs(x) < SAME) || (flipsY && Math.abs(y) < SAME));
  if (!own) return true;
  bench.findings.push({
    path,
    message: `"copies": "${copies}" mirrors the part at ${mmAt(own[0], own[1])} onto itself, so it would be there twice; leave "copies" out for a part on the axis, or name the copies that are really there`,
  });
  return false;
}
