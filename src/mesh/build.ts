/** The frame as a mesh: plates, arms, fastenings, bodies, then the check that all hangs together. */

import { inputError } from "../errors.ts";
import { bounds } from "../model/polygon.ts";
import type { Model } from "../model/types.ts";
import { meshArm } from "./arm.ts";
import { meshBody } from "./body.ts";
import { checkConnected } from "./connected.ts";
import { addNode, addPart, type Draft, emptyDraft } from "./draft.ts";
import {
  meshJoint,
  meshLink,
  meshMember,
  meshSpring,
  meshStandoff,
  meshSupport,
  type Site,
} from "./fastening.ts";
import { gridShape, meshPlate } from "./grid.ts";
import { tieRows } from "./ties.ts";
import type { Mesh } from "./types.ts";

/**
 * Cells across the widest plate's shorter side. Five-inch sample, frequencies against those of a mesh
 * with 20 across: arm modes below 500 Hz are 0.3 to 2.0 % high with 6 across, 0.2 to 1.5 % with 8 and
 * 0.1 to 0.8 % with 10; the first plate mode (600 Hz) 2.9, 2.8 and 1.4 %. The inputs leave about 7 %.
 */
const CELLS_ACROSS = 8;

/** Default mesh size, m: an eighth of the widest plate's shorter side, or of the longest arm. */
export function defaultMeshSize(model: Model): number {
  const sides = model.plates.map((p) => {
    const [x0, y0, x1, y1] = bounds(p.outline);
    return Math.min(x1 - x0, y1 - y0);
  });
  const span =
    sides.length > 0 ? Math.max(...sides) : Math.max(0, ...model.arms.map((a) => a.length));
  return span > 0 ? span / CELLS_ACROSS : 1;
}

/** More cells than this would need minutes and gigabytes. */
const MOST_CELLS = 40_000;

/** @throws InputError for a mesh size that is no length, or far too fine for the frame */
function checkSize(model: Model, size: number): void {
  if (!(size > 0) || !Number.isFinite(size)) {
    throw inputError("meshSize", `the mesh size must be a length above zero, not ${size * 1e3} mm`);
  }
  const cells = model.plates.reduce((sum, p) => {
    const { nx, ny } = gridShape(p, size);
    return sum + nx * ny;
  }, 0);
  if (cells > MOST_CELLS) {
    const coarse = size * Math.sqrt(cells / MOST_CELLS);
    throw inputError(
      "meshSize",
      `a mesh size of ${(size * 1e3).toPrecision(3)} mm cuts the plates into ${cells} cells; at most ${MOST_CELLS} are allowed, so use ${(coarse * 1e3).toPrecision(2)} mm or more (the default here is ${(defaultMeshSize(model) * 1e3).toPrecision(2)} mm)`,
    );
  }
}

/**
 * @param size mesh size, m; the file's or the default where not given
 * @throws InputError when parts miss each other or a part is loose
 */
export function buildMesh(model: Model, size = model.meshSize ?? defaultMeshSize(model)): Mesh {
  checkSize(model, size);
  const draft = emptyDraft();
  const grids = model.plates.map((plate, i) => {
    const part = addPart(draft, { name: plate.name, kind: "plate", lossFactor: plate.lossFactor });
    return meshPlate(draft, plate, i, part, size);
  });
  const points = new Map<string, number>();
  const pointNode = (name: string) => pointNodeOf(draft, model, points, name);
  const site: Site = { draft, model, grids, pointNode, size };

  const arms = model.arms.map((arm, i) => {
    const stations = model.bodies.flatMap((b) =>
      b.host.kind === "arm" && b.host.arm === i ? [b.host.s] : [],
    );
    return meshArm(draft, model, arm, grids, pointNode, size, stations, smearedOnArm(model, i));
  });
  for (const s of model.standoffs) meshStandoff(site, s);
  for (const j of model.joints) meshJoint(site, j);
  for (const m of model.members) meshMember(site, m);
  for (const l of model.links) meshLink(site, l);
  for (const s of model.springs) meshSpring(site, s);
  const armNode = (arm: number, s: number) => {
    const { nodes, s: fractions } = arms[arm];
    const nearest = fractions.reduce(
      (best, f, i) => (Math.abs(f - s) < Math.abs(fractions[best] - s) ? i : best),
      0,
    );
    return nodes[nearest];
  };
  const bodyNodes = model.bodies.map((b) => meshBody(site, b, armNode));
  for (const s of model.supports) meshSupport(site, s);
  const ties = [...tieRows(draft), ...draft.ties];
  checkConnected(draft, ties);
  return {
    size,
    xyz: Float64Array.from(draft.xyz),
    parts: draft.parts,
    beams: draft.beams,
    cells: draft.cells,
    springs: draft.springs,
    pads: draft.pads,
    masses: draft.masses,
    ties,
    fixed: [...new Set(draft.fixed)].sort((a, b) => a - b),
    grids,
    armTips: arms.map((a) => a.nodes[a.nodes.length - 1]),
    armNodes: arms.map((a) => a.nodes),
    bodyNodes,
    pointNodes: points,
  };
}

function pointNodeOf(
  draft: Draft,
  model: Model,
  points: Map<string, number>,
  name: string,
): number {
  const known = points.get(name);
  if (known !== undefined) return known;
  const p = model.points.get(name);
  if (!p) throw new Error(`the model names the point "${name}" but does not have it`);
  const node = addNode(draft, p[0], p[1], p[2]);
  points.set(name, node);
  return node;
}

function smearedOnArm(model: Model, arm: number): number {
  return model.smeared.reduce(
    (sum, s) => sum + s.perArm.reduce((t, p) => (p.arm === arm ? t + p.massPerLength : t), 0),
    0,
  );
}

/** Whether anything ties the frame to the ground. */
export function isHeld(mesh: Mesh): boolean {
  return mesh.fixed.length > 0 || mesh.springs.some((s) => s.nodes[1] < 0);
}
