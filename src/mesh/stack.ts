/** The sensor stack on its plate: its node follows the seat, or hangs on isolators above it. */

import { inputError } from "../errors.ts";
import type { BodyPart, Hold, Isolators, PlatePart, Vec3 } from "../model/types.ts";
import { addNode, addPart, type Draft } from "./draft.ts";
import type { Site } from "./fastening.ts";
import { seatOf } from "./seat.ts";

type SeatHold = Extract<Hold, { kind: "seat" }>;

/**
 * Adds the node that carries the stack.
 *
 * @throws InputError where there is no plate under it
 */
export function meshSeat(site: Site, body: BodyPart, hold: SeatHold, plate: PlatePart): number {
  const { draft } = site;
  const { screws, footprint, isolators } = hold;
  if (body.host.kind !== "plate") throw new Error(`"${body.name}" is a board on no plate`);
  const [x, y, z] = body.cg;
  const face = plate.z + (Math.sign(z - plate.z) * plate.thickness) / 2;
  const point: Vec3 = isolators ? [x, y, face] : body.cg;
  const seat = seatOf(site.grids[body.host.plate], screws, footprint, point);
  if (!seat) {
    throw inputError("stack", `there is nothing of the plate "${plate.name}" under it; move it`);
  }
  const base = addNode(draft, ...point);
  const m = seat.dofs.length;
  for (let d = 0; d < 6; d++) {
    draft.ties.push({
      dofs: Int32Array.of(...seat.dofs, 6 * base + d),
      coefs: Float64Array.of(...seat.rows.subarray(d * m, (d + 1) * m), -1),
      prefer: 6 * base + d,
    });
  }
  return isolators ? onIsolators(draft, base, point, screws, isolators) : base;
}

/**
 * Equal springs at the screws act on a rigid board as one spring at their middle, along the principal
 * axes of the pattern: k sum(1), and in rotation k sum(distance^2).
 */
function onIsolators(
  draft: Draft,
  base: number,
  point: Vec3,
  screws: SeatHold["screws"],
  { axial, lateral, lossFactor }: Isolators,
): number {
  const n = screws.length;
  const [mx, my] = [0, 1].map((i) => screws.reduce((s, p) => s + p[i], 0) / n);
  const sum = (f: (x: number, y: number) => number) =>
    screws.reduce((s, [x, y]) => s + f(x - mx, y - my), 0);
  const turn =
    Math.atan2(
      2 * sum((x, y) => x * y),
      sum((x, y) => x * x - y * y),
    ) / 2;
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const uu = sum((x, y) => (c * x + s * y) ** 2);
  const vv = sum((x, y) => (c * y - s * x) ** 2);
  const node = addNode(draft, ...point);
  draft.springs.push({
    nodes: [base, node],
    axes: Float64Array.of(c, s, 0, -s, c, 0, 0, 0, 1),
    k: Float64Array.of(
      n * lateral,
      n * lateral,
      n * axial,
      axial * vv,
      axial * uu,
      lateral * (uu + vv),
    ),
    part: addPart(draft, { name: "stack mount", kind: "mount", lossFactor }),
  });
  return node;
}
