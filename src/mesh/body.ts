/** Bodies: rigid masses on plates, arms or points. */

import { boxInertia } from "../element/rigid-mass.ts";
import { inputError } from "../errors.ts";
import { bounds, type Polygon, rectangle } from "../model/polygon.ts";
import type { BodyPart } from "../model/types.ts";
import { ALL_MOTIONS, addNode, addPart, nodeAt, TRANSLATIONS } from "./draft.ts";
import { footOn, type Site } from "./fastening.ts";
import { patchOn } from "./patch.ts";
import { meshSeat } from "./stack.ts";
import type { Patch } from "./types.ts";

/**
 * A spread body is cut into boxes about this long, each following the plate under it, so that it adds
 * mass but hardly any stiffness, m.
 */
const PIECE = 12e-3;

/** Boxes along a length, halves up, counted in nanometres: where the body lies must not decide it. */
function piecesAlong(length: number): number {
  return Math.max(1, Math.round(Math.round(length * 1e9) / (PIECE * 1e9)));
}

/**
 * Adds a body and returns the node that moves with it.
 *
 * @param armNode the node of an arm at a fraction of its length
 */
export function meshBody(
  site: Site,
  body: BodyPart,
  armNode: (arm: number, s: number) => number,
): number {
  const { draft, model } = site;
  const part = addPart(draft, { name: body.name, kind: "body", lossFactor: 0 });
  const carry = (node: number) => {
    const p = nodeAt(draft, node);
    const offset = [0, 1, 2].map((i) => body.cg[i] - p[i]) as [number, number, number];
    draft.masses.push({ node, mass: body.mass, inertia: body.inertia, offset, part });
    return node;
  };
  const { host, hold } = body;
  if (host.kind === "arm") return carry(armNode(host.arm, host.s));
  if (host.kind === "point") return carry(site.pointNode(host.point));

  const plate = model.plates[host.plate];
  const path = body.role === "stack" ? "stack" : `bodies.${body.name}`;
  const patch = (area: Polygon) => {
    const found = patchOn(site.grids[host.plate], area);
    if (found) return found;
    throw inputError(
      path,
      `no part of its footprint lies on the plate "${plate.name}"; move it onto the plate`,
    );
  };
  const [x, y, z] = body.cg;
  if (hold.kind === "rigid") {
    const node = addNode(draft, x, y, z);
    // Three screws and more hold a body by their positions; fewer, or a row of them, by their heads.
    const motions = inARow(hold.screws) ? ALL_MOTIONS : TRANSLATIONS;
    for (const [sx, sy] of hold.screws) {
      const to = { patch: footOn(site, host.plate, sx, sy, hold.footprint, path) };
      draft.rigidTies.push({ node, to, motions });
    }
    return carry(node);
  }
  if (hold.kind === "seat") return carry(meshSeat(site, body, hold, plate));
  if (hold.kind === "spread") return spread(site, body, hold.area, part, patch);
  if (hold.kind === "soft") {
    // The pad lies on the plate's face: the body's node sits there, not at the centre of gravity.
    const face = (Math.sign(z - plate.z) * plate.thickness) / 2;
    const node = addNode(draft, x, y, plate.z + face);
    const mount = addPart(draft, {
      name: `${body.name} mount`,
      kind: "mount",
      lossFactor: hold.lossFactor,
    });
    draft.pads.push({ node, patch: patch(hold.area), face, k: hold.stiffness, part: mount });
    return carry(node);
  }
  throw new Error(`a body on a plate is never held "${hold.kind}"`);
}

/** Whether points span no area: fewer than three, or all on a line. */
function inARow(points: readonly (readonly [number, number])[]): boolean {
  const n = points.length;
  const [mx, my] = [0, 1].map((i) => points.reduce((s, p) => s + p[i], 0) / n);
  let [xx, yy, xy] = [0, 0, 0];
  for (const [x, y] of points) {
    xx += (x - mx) ** 2;
    yy += (y - my) ** 2;
    xy += (x - mx) * (y - my);
  }
  return xx * yy - xy * xy <= 1e-6 * (xx + yy) ** 2;
}

/**
 * A box that lies on the plate without stiffening it: cut into equal boxes, which together have its
 * mass, centre of gravity and inertia exactly. A body with an inertia of its own stays whole.
 *
 * @returns the node of the piece in the middle
 */
function spread(
  site: Site,
  body: BodyPart,
  area: Polygon,
  part: number,
  patch: (area: Polygon) => Patch,
): number {
  const { draft } = site;
  const [x0, y0, x1, y1] = bounds(area);
  const box = body.size && isBox(body) ? body.size : undefined;
  const nx = box ? piecesAlong(x1 - x0) : 1;
  const ny = box ? piecesAlong(y1 - y0) : 1;
  const mass = body.mass / (nx * ny);
  const inertia = box ? boxInertia(mass, box[0] / nx, box[1] / ny, box[2]) : body.inertia;
  const nodes: number[] = [];
  for (let i = 0; i < nx; i++) {
    for (let j = 0; j < ny; j++) {
      const at = (n: number, k: number) => (k + 0.5) / n - 0.5;
      const x = body.cg[0] + at(nx, i) * (box?.[0] ?? 0);
      const y = body.cg[1] + at(ny, j) * (box?.[1] ?? 0);
      const [dx, dy] = [(x1 - x0) / nx, (y1 - y0) / ny];
      const under = rectangle(x0 + i * dx, y0 + j * dy, x0 + (i + 1) * dx, y0 + (j + 1) * dy);
      const node = addNode(draft, x, y, body.cg[2]);
      const to = { patch: patchOn(site.grids[plateOf(body)], under) ?? patch(area) };
      draft.rigidTies.push({ node, to, motions: ALL_MOTIONS });
      draft.masses.push({ node, mass, inertia, offset: [0, 0, 0], part });
      nodes.push(node);
    }
  }
  return nodes[Math.floor(nodes.length / 2)];
}

function plateOf({ host, name }: BodyPart): number {
  if (host.kind === "plate") return host.plate;
  throw new Error(`"${name}" is spread but on no plate`);
}

/** Whether the inertia is that of the even box of the body's size. */
function isBox({ mass, size, inertia }: BodyPart): boolean {
  if (!size) return false;
  const box = boxInertia(mass, ...(size as [number, number, number]));
  return (["xx", "yy", "zz", "xy", "xz", "yz"] as const).every(
    (k) => Math.abs(box[k] - inertia[k]) <= 1e-12 * (box.xx + box.yy + box.zz),
  );
}
