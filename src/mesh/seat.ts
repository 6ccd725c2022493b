/**
 * The seat of a board: how its screws let it move with the plate.
 *
 * The board follows the rigid motion that fits the mean motion under each screw head best (least
 * squares). It loads the plate through the same weights, hence adds mass but no stiffness, as a board on
 * grommets or slender posts does. One screwed down hard stiffens the plate: in bending little (1.6 mm of
 * glass fibre have a fifth of the rigidity of 2 mm of carbon cloth), in twist as much as the plate itself
 * has, since cloth along the edges is soft there (both from moduli from memory).
 */

import { disc } from "../model/polygon.ts";
import type { Vec3 } from "../model/types.ts";
import { type Footing, footingOn } from "./patch.ts";
import type { PlateGrid } from "./types.ts";

/** The rigid motion ux uy uz rx ry rz of a point fixed to the board, from the mesh's unknowns. */
export interface Seat {
  /** unknowns of the mesh that matter (size m) */
  readonly dofs: Int32Array;
  /** 6 x m row-major */
  readonly rows: Float64Array;
}

/** Corners of the polygon that stands for a round screw head, and for the round patch under a board. */
const HEAD_CORNERS = 12;
const BOARD_CORNERS = 16;

/**
 * Screws that miss the plate do not count; with fewer than three left the board takes the mean motion
 * of the plate under it.
 *
 * @param screws centres of the holes, m
 * @param footprint diameter of a screw head, m
 * @param point of the board whose motion is wanted, m
 * @returns undefined when there is no plate under the board at all
 */
export function seatOf(
  grid: PlateGrid,
  screws: readonly (readonly [number, number])[],
  footprint: number,
  point: Vec3,
): Seat | undefined {
  const heads = screws.flatMap(([x, y]) => {
    const head = footingOn(grid, disc(x, y, footprint, HEAD_CORNERS));
    return head ? [head] : [];
  });
  if (heads.length >= 3) return fitted(heads, point);
  const [cx, cy] = [0, 1].map((i) => screws.reduce((sum, s) => sum + s[i], 0) / screws.length);
  const span = Math.max(...screws.map(([x, y]) => Math.hypot(x - cx, y - cy)));
  const under = footingOn(grid, disc(cx, cy, 2 * span, BOARD_CORNERS));
  return under && averaged(under, point);
}

/** Least-squares rigid motion of the points: t = mean of t_i, theta = J^-1 sum d_i x t_i. */
function fitted(heads: readonly Footing[], point: Vec3): Seat {
  const n = heads.length;
  const mean = [0, 1, 2].map((i) => heads.reduce((s, p) => s + p.centre[i], 0) / n);
  const d = heads.map((p) => p.centre.map((v, i) => v - mean[i]));
  const sum = (f: (d: number[]) => number) => d.reduce((s, v) => s + f(v), 0);
  const [xx, yy, xy] = [sum((v) => v[0] ** 2), sum((v) => v[1] ** 2), sum((v) => v[0] * v[1])];
  const det = xx * yy - xy * xy;
  const r = point.map((v, i) => v - mean[i]);
  const parts = heads.map((head, s) => {
    const [dx, dy] = d[s];
    // columns: unit motions along x, y, z; d x t, the screws being in one plane (dz = 0)
    const turns = [
      [0, 0, -dy],
      [0, 0, dx],
      [dy, -dx, 0],
    ];
    const block = turns.map((turn, m) => {
      const t = [0, 0, 0];
      t[m] = 1 / n;
      // J = [yy, -xy; -xy, xx] for rx and ry, xx + yy for rz
      const theta = [
        (xx * turn[0] + xy * turn[1]) / det,
        (xy * turn[0] + yy * turn[1]) / det,
        turn[2] / (xx + yy),
      ];
      return atPoint(t, theta, r);
    });
    return { footing: head, block };
  });
  return seatFrom(parts);
}

/** Mean translation and rotation of the plate under the board. */
function averaged(under: Footing, point: Vec3): Seat {
  const r = point.map((v, i) => v - under.centre[i]);
  const block = Array.from({ length: 6 }, (_, m) => {
    const motion = [0, 0, 0, 0, 0, 0];
    motion[m] = 1;
    return atPoint(motion.slice(0, 3), motion.slice(3), r);
  });
  return seatFrom([{ footing: under, block }]);
}

/** (t + theta x r, theta) */
function atPoint(t: readonly number[], theta: readonly number[], r: readonly number[]): number[] {
  return [
    t[0] + theta[1] * r[2] - theta[2] * r[1],
    t[1] + theta[2] * r[0] - theta[0] * r[2],
    t[2] + theta[0] * r[1] - theta[1] * r[0],
    ...theta,
  ];
}

/** What a patch adds to the seat's motion: for each of the first unknowns of a node, 6 numbers. */
interface Part {
  readonly footing: Footing;
  readonly block: readonly (readonly number[])[];
}

function seatFrom(parts: readonly Part[]): Seat {
  const nodes = [...new Set(parts.flatMap(({ footing }) => [...footing.nodes]))].sort(
    (a, b) => a - b,
  );
  const place = new Map(nodes.map((node, k) => [node, k]));
  const each = parts[0].block.length;
  const m = each * nodes.length;
  const dofs = Int32Array.from(
    { length: m },
    (_, j) => 6 * nodes[Math.floor(j / each)] + (j % each),
  );
  const rows = new Float64Array(6 * m);
  for (const { footing, block } of parts) {
    footing.nodes.forEach((node, k) => {
      const first = each * (place.get(node) as number);
      block.forEach((column, d) => {
        for (let i = 0; i < 6; i++) rows[i * m + first + d] += footing.weights[k] * column[i];
      });
    });
  }
  return { dofs, rows };
}

/**
 * The seat of another point of the same board.
 *
 * @param lever from the seat's point to the other, m
 */
export function seatBeside({ dofs, rows }: Seat, lever: Vec3): Seat {
  const [x, y, z] = lever;
  const m = dofs.length;
  const beside = rows.slice();
  for (let j = 0; j < m; j++) {
    const [p, q, r] = [rows[3 * m + j], rows[4 * m + j], rows[5 * m + j]];
    beside[j] += q * z - r * y;
    beside[m + j] += r * x - p * z;
    beside[2 * m + j] += p * y - q * x;
  }
  return { dofs, rows: beside };
}

/** The motion of the seat for a motion u of the mesh (6 per node). */
export function seatMotion({ dofs, rows }: Seat, u: Float64Array): Float64Array {
  const out = new Float64Array(6);
  const m = dofs.length;
  for (let i = 0; i < 6; i++) {
    let sum = 0;
    for (let j = 0; j < m; j++) sum += rows[i * m + j] * u[dofs[j]];
    out[i] = sum;
  }
  return out;
}
