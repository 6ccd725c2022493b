/** Plates of the file as plates of the model: outline completed and checked, stiffness from the laminate. */

import type { HoleDef, PlateDef } from "../frame/types.ts";
import { plateStiffness } from "../material/material.ts";
import { completeOutline, copiesOf } from "./copies.ts";
import {
  bordersMeet,
  contains,
  crossingSides,
  disc,
  moments,
  oriented,
  overlap,
  type Polygon,
} from "./polygon.ts";
import { checkCopies, materialOf, mmAt, type Workbench, warnOfPlies } from "./workbench.ts";

export function buildPlates(bench: Workbench): void {
  for (const [name, def] of Object.entries(bench.file.plates)) {
    const outline = outlineOf(bench, name, def);
    const holes = outline ? holesOf(bench, name, def, outline) : [];
    const material = materialOf(bench, def.material);
    const { A, B, D, density, lossFactor, plyFit } = plateStiffness(
      material,
      def.thickness,
      def.warp,
    );
    warnOfPlies(bench, `plate "${name}"`, plyFit);
    const scaled = (a: Float64Array) => a.map((v) => v * def.fill);
    bench.plates.push({
      name,
      z: def.z,
      thickness: def.thickness,
      outline: outline ?? new Float64Array(0),
      holes,
      A: scaled(A),
      B: scaled(B),
      D: scaled(D),
      massPerArea: density * def.thickness * def.fill,
      rotaryPerArea: (density * def.thickness ** 3 * def.fill) / 12,
      lossFactor,
      material: def.material,
      note: def.note,
    });
  }
}

function polygonOf(points: readonly (readonly [number, number])[]): Polygon {
  return Float64Array.from(points.flat());
}

function outlineOf(bench: Workbench, name: string, def: PlateDef): Polygon | undefined {
  const path = `plates.${name}.outline`;
  const p = polygonOf(completeOutline(def.outline, def.symmetry));
  const crossing = p.length >= 6 ? crossingSides(p) : undefined;
  if (crossing) {
    const corner = (i: number) => mmAt(p[2 * i], p[2 * i + 1]);
    bench.findings.push({
      path,
      message: `the outline crosses itself: the side from ${corner(crossing[0])} meets the side from ${corner(crossing[1])}; list the corners in order around the plate${def.symmetry === "none" ? "" : `, only those of the part that "symmetry" mirrors`}`,
    });
    return undefined;
  }
  if (p.length < 6 || Math.abs(moments(p).area) < 1e-9) {
    bench.findings.push({
      path,
      message: "the outline encloses no area; give at least three corners that are not on one line",
    });
    return undefined;
  }
  return oriented(p, 1);
}

function holesOf(bench: Workbench, name: string, def: PlateDef, outline: Polygon): Polygon[] {
  const kept: Polygon[] = [];
  def.holes.forEach((hole, i) => {
    const path = `plates.${name}.holes#${i + 1}`;
    const middle = hole.kind === "round" ? hole.at : [middleOf(hole.outline)];
    if (!checkCopies(bench, path, hole.copies, middle)) return;
    for (const shape of holeShapes(hole)) {
      const fault = faultOf(shape, outline, kept);
      if (fault) bench.findings.push({ path, message: fault });
      else kept.push(oriented(shape, -1));
    }
  });
  return kept;
}

function middleOf(points: readonly (readonly [number, number])[]): readonly [number, number] {
  const { area, x, y } = moments(polygonOf(points));
  return area === 0 ? points[0] : [x / area, y / area];
}

/** What is wrong with a hole, if anything. */
function faultOf(shape: Polygon, outline: Polygon, others: readonly Polygon[]): string | undefined {
  const at = mmAt(shape[0], shape[1]);
  if (crossingSides(shape)) return `the outline of the hole at ${at} crosses itself`;
  if (!contains(outline, shape[0], shape[1]) || bordersMeet(shape, outline)) {
    return `the hole at ${at} reaches outside the plate; draw notches in the outline instead`;
  }
  if (others.some((other) => overlap(shape, other))) {
    return `the hole at ${at} overlaps another hole of this plate; draw the two as one outline`;
  }
  return undefined;
}

function holeShapes(hole: HoleDef): Polygon[] {
  return copiesOf(hole.copies).flatMap(({ sx, sy }) =>
    hole.kind === "round"
      ? hole.at.map(([x, y]) => disc(sx * x, sy * y, hole.diameter))
      : [polygonOf(hole.outline.map(([x, y]) => [sx * x, sy * y] as const))],
  );
}
