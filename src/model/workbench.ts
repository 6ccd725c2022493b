/** What the builders of the model share: the file, what is built so far, and what is wrong. */

import type { Finding } from "../errors.ts";
import type { FrameFile } from "../frame/types.ts";
import { libraryMaterial } from "../material/library-materials.ts";
import { libraryPly } from "../material/library-plies.ts";
import { laminateFromStack, type Material } from "../material/material.ts";
import { borderDistance, contains } from "./polygon.ts";
import type { ArmPart, PlatePart, Vec3 } from "./types.ts";

export interface Workbench {
  readonly file: FrameFile;
  readonly findings: Finding[];
  readonly warnings: string[];
  readonly materials: Map<string, Material>;
  readonly plates: PlatePart[];
  readonly arms: ArmPart[];
}

/** The material a part names, from the file or the library; laminates are read once. */
export function materialOf(bench: Workbench, name: string): Material {
  const known = bench.materials.get(name);
  if (known) return known;
  const made = make(bench, name);
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
