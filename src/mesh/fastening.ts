/** Standoffs, plate-to-plate joints, members, links, springs and supports. */

import { IDENTITY, memberAxes } from "../element/rotation.ts";
import { inputError } from "../errors.ts";
import { borderDistance, contains, disc } from "../model/polygon.ts";
import type {
  JointPart,
  LinkPart,
  MemberPart,
  Model,
  SpringPart,
  StandoffPart,
  SupportPart,
} from "../model/types.ts";
import { ALL_MOTIONS, addNode, addPart, type Draft, nodeAt } from "./draft.ts";
import { patchOn } from "./patch.ts";
import type { Patch, PlateGrid } from "./types.ts";

/** Elements of a standoff; least number in a member without a number of its own. */
const STANDOFF_ELEMENTS = 2;
const MEMBER_ELEMENTS = 8;

/** What the functions here need to look things up. */
export interface Site {
  readonly draft: Draft;
  readonly model: Model;
  readonly grids: readonly PlateGrid[];
  readonly pointNode: (name: string) => number;
  /** mesh size, m */
  readonly size: number;
}

/** The patch under a round foot. @throws InputError when it lies off the plate */
export function footOn(
  site: Site,
  plate: number,
  x: number,
  y: number,
  diameter: number,
  what: string,
): Patch {
  const found = patchOn(site.grids[plate], disc(x, y, diameter, 12));
  if (found) return found;
  const at = `${(x * 1e3).toFixed(1)}, ${(y * 1e3).toFixed(1)} mm`;
  throw inputError(
    what,
    `at ${at} there is no material of the plate "${site.model.plates[plate].name}"; move it onto the plate`,
  );
}

export function meshStandoff(site: Site, s: StandoffPart) {
  const { draft } = site;
  const part = addPart(draft, { name: s.name, kind: "standoff", lossFactor: s.section.lossFactor });
  const nodes = [];
  for (let i = 0; i <= STANDOFF_ELEMENTS; i++) {
    nodes.push(addNode(draft, s.x, s.y, s.from + ((s.to - s.from) * i) / STANDOFF_ELEMENTS));
  }
  const axes = memberAxes([0, 0, s.to - s.from], [1, 0, 0]);
  const length = Math.abs(s.to - s.from) / STANDOFF_ELEMENTS;
  for (let i = 1; i < nodes.length; i++) {
    draft.beams.push({
      nodes: [nodes[i - 1], nodes[i]],
      length,
      axes,
      sections: [s.section],
      part,
    });
  }
  const ends = [nodes[0], nodes[STANDOFF_ELEMENTS]];
  s.plates.forEach((plate, i) => {
    const patch = footOn(site, plate, s.x, s.y, s.footprint, `standoffs.${s.group}`);
    draft.rigidTies.push({ node: ends[i], to: { patch }, motions: ALL_MOTIONS });
  });
}

export function meshJoint(site: Site, j: JointPart) {
  const { draft, model } = site;
  const z = (model.plates[j.plates[0]].z + model.plates[j.plates[1]].z) / 2;
  const [one, two] = j.plates.map((p) =>
    footOn(site, p, j.x, j.y, j.footprint, `joints.${j.name}`),
  );
  const a = addNode(draft, j.x, j.y, z);
  draft.rigidTies.push({ node: a, to: { patch: one }, motions: ALL_MOTIONS });
  if (!j.stiffness) {
    draft.rigidTies.push({ node: a, to: { patch: two }, motions: ALL_MOTIONS });
    return;
  }
  const b = addNode(draft, j.x, j.y, z);
  draft.rigidTies.push({ node: b, to: { patch: two }, motions: ALL_MOTIONS });
  const k = Float64Array.from(j.stiffness, (v) => (Number.isFinite(v) ? v : 0));
  const stiff = ALL_MOTIONS.filter((m) => !Number.isFinite(j.stiffness?.[m] ?? 0));
  if (stiff.length > 0) draft.rigidTies.push({ node: b, to: { node: a }, motions: stiff });
  const part = addPart(draft, { name: j.name, kind: "joint", lossFactor: j.lossFactor });
  draft.springs.push({ nodes: [a, b], axes: IDENTITY, k, part });
}

export function meshMember(site: Site, m: MemberPart) {
  const { draft } = site;
  const first = site.pointNode(m.from);
  const last = site.pointNode(m.to);
  const p = nodeAt(draft, first);
  const d = nodeAt(draft, last).map((v, i) => v - p[i]);
  const axes = memberAxes(d, m.up);
  const part = addPart(draft, { name: m.name, kind: "member", lossFactor: m.section.lossFactor });
  const n = m.elements ?? Math.max(MEMBER_ELEMENTS, Math.ceil(Math.hypot(...d) / site.size - 1e-6));
  const length = Math.hypot(...d) / n;
  let before = first;
  for (let i = 1; i <= n; i++) {
    const f = i / n;
    const next = i === n ? last : addNode(draft, p[0] + f * d[0], p[1] + f * d[1], p[2] + f * d[2]);
    draft.beams.push({ nodes: [before, next], length, axes, sections: [m.section], part });
    before = next;
  }
}

export function meshLink(site: Site, l: LinkPart) {
  const node = site.pointNode(l.point);
  const [x, y] = nodeAt(site.draft, node);
  const to =
    "point" in l.to
      ? { node: site.pointNode(l.to.point) }
      : { patch: footOn(site, l.to.plate, x, y, l.to.footprint, `links.${l.name}`) };
  site.draft.rigidTies.push({ node, to, motions: l.ties });
}

export function meshSpring(site: Site, s: SpringPart) {
  const { draft } = site;
  const node = site.pointNode(s.point);
  const part = addPart(draft, { name: s.name, kind: "spring", lossFactor: s.lossFactor });
  const k = Float64Array.from(s.stiffness);
  if (s.other === undefined) {
    draft.springs.push({ nodes: [node, -1], axes: IDENTITY, k, part });
    return;
  }
  const other = site.pointNode(s.other);
  const p = nodeAt(draft, node);
  const apart = Math.hypot(...nodeAt(draft, other).map((v, i) => v - p[i]));
  let anchor = other;
  if (apart > 1e-9) {
    // The other point reaches the spring by a rigid arm.
    anchor = addNode(draft, p[0], p[1], p[2]);
    draft.rigidTies.push({ node: anchor, to: { node: other }, motions: ALL_MOTIONS });
  }
  draft.springs.push({ nodes: [anchor, node], axes: IDENTITY, k, part });
}

/** Fixes unknowns; a line or an area of a plate takes the grid nodes that lie on it. */
export function meshSupport(site: Site, s: SupportPart) {
  const { draft, model } = site;
  if ("point" in s.where) {
    const node = site.pointNode(s.where.point);
    for (const m of s.fix) draft.fixed.push(6 * node + m);
    return;
  }
  const { plate, along, within } = s.where;
  const grid = site.grids[plate];
  const near = 1e-6 * Math.min(grid.a, grid.b);
  const line = along && Float64Array.of(...along[0], ...along[1]);
  const nodes = Array.from(grid.nodeAt).filter((n) => {
    if (n < 0) return false;
    const [x, y] = nodeAt(draft, n);
    if (line) return borderDistance(line, x, y) < near;
    return within === undefined || contains(within, x, y) || borderDistance(within, x, y) < near;
  });
  if (nodes.length === 0) {
    throw inputError(
      `supports.${s.name}`,
      `no grid point of the plate "${model.plates[plate].name}" lies there; a line must run along the plate's grid (its bounding box is cut into ${grid.nx} x ${grid.ny} cells), an area must hold at least one grid point`,
    );
  }
  for (const n of nodes) for (const m of s.fix) draft.fixed.push(6 * n + m);
}
