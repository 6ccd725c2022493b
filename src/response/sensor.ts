/** What a board screwed to a plate moves like, and what its chip therefore reads. */

import { patchOn } from "../mesh/patch.ts";
import type { Mesh, Patch } from "../mesh/types.ts";
import { disc } from "../model/polygon.ts";
import type { Candidate } from "../model/types.ts";

/**
 * Rotation and displacement of the chip as a linear function of the mesh's unknowns: rows 0-2 the
 * rotations rx ry rz (rad), rows 3-5 the displacements of the chip (m).
 */
export interface Sensor {
  /** unknowns of the mesh that matter (size m) */
  readonly dofs: Int32Array;
  /** 6 x m row-major */
  readonly rows: Float64Array;
}

/**
 * The board follows its screws: the rigid motion that fits the mean motion under each screw head best
 * (least squares). Screws that miss the plate do not count; with fewer than three left the board takes
 * the mean motion of the plate under it.
 *
 * @returns undefined when there is no plate under the candidate at all
 */
export function boardSensor(mesh: Mesh, candidate: Candidate): Sensor | undefined {
  const grid = mesh.grids[candidate.plate];
  const screws = candidate.holes.flatMap(([x, y]) => {
    const patch = patchOn(grid, disc(x, y, candidate.footprint, 12));
    return patch ? [patch] : [];
  });
  if (screws.length >= 3) return fitted(screws, candidate.chip);
  const span = Math.max(
    ...candidate.holes.map(([x, y]) => Math.hypot(x - candidate.x, y - candidate.y)),
  );
  const under = patchOn(grid, disc(candidate.x, candidate.y, 2 * span, 16));
  return under && averaged(under, candidate.chip);
}

/** Least-squares rigid motion of the points: t = mean of t_i, theta = J^-1 sum d_i x t_i. */
function fitted(screws: readonly Patch[], chip: readonly [number, number, number]): Sensor {
  const n = screws.length;
  const mean = [0, 1, 2].map((i) => screws.reduce((s, p) => s + p.centre[i], 0) / n);
  const d = screws.map((p) => p.centre.map((v, i) => v - mean[i]));
  const sum = (f: (d: number[]) => number) => d.reduce((s, v) => s + f(v), 0);
  const [xx, yy, xy] = [sum((v) => v[0] ** 2), sum((v) => v[1] ** 2), sum((v) => v[0] * v[1])];
  const det = xx * yy - xy * xy;
  const r = chip.map((v, i) => v - mean[i]);
  const columns = new Map<number, Float64Array>();
  screws.forEach((p, s) => {
    const [dx, dy] = d[s];
    for (let k = 0; k < p.nodes.length; k++) {
      for (let m = 0; m < 3; m++) {
        const w = p.weights[k];
        const t = [0, 0, 0];
        t[m] = w / n;
        // d x t for a unit motion along m, the screws being in one plane (dz = 0)
        const turn = [
          m === 2 ? w * dy : 0,
          m === 2 ? -w * dx : 0,
          m === 1 ? w * dx : m === 0 ? -w * dy : 0,
        ];
        // J = [yy, -xy; -xy, xx] for rx and ry, xx + yy for rz
        const theta = [
          (xx * turn[0] + xy * turn[1]) / det,
          (xy * turn[0] + yy * turn[1]) / det,
          turn[2] / (xx + yy),
        ];
        addColumn(columns, 6 * p.nodes[k] + m, atChip(theta, t, r));
      }
    }
  });
  return compress(columns);
}

/** Mean translation and rotation of the plate under the board. */
function averaged(under: Patch, chip: readonly [number, number, number]): Sensor {
  const r = chip.map((v, i) => v - under.centre[i]);
  const columns = new Map<number, Float64Array>();
  for (let k = 0; k < under.nodes.length; k++) {
    for (let m = 0; m < 6; m++) {
      const motion = [0, 0, 0, 0, 0, 0];
      motion[m] = under.weights[k];
      addColumn(columns, 6 * under.nodes[k] + m, atChip(motion.slice(3), motion.slice(0, 3), r));
    }
  }
  return compress(columns);
}

/** (theta, t + theta x r) */
function atChip(theta: readonly number[], t: readonly number[], r: readonly number[]): number[] {
  return [
    ...theta,
    t[0] + theta[1] * r[2] - theta[2] * r[1],
    t[1] + theta[2] * r[0] - theta[0] * r[2],
    t[2] + theta[0] * r[1] - theta[1] * r[0],
  ];
}

function addColumn(columns: Map<number, Float64Array>, dof: number, values: readonly number[]) {
  const column = columns.get(dof) ?? new Float64Array(6);
  values.forEach((v, i) => {
    column[i] += v;
  });
  columns.set(dof, column);
}

function compress(columns: ReadonlyMap<number, Float64Array>): Sensor {
  const dofs = Int32Array.from([...columns.keys()].sort((a, b) => a - b));
  const rows = new Float64Array(6 * dofs.length);
  dofs.forEach((dof, j) => {
    const column = columns.get(dof) as Float64Array;
    for (let i = 0; i < 6; i++) rows[i * dofs.length + j] = column[i];
  });
  return { dofs, rows };
}

/** The six readings for a motion of the mesh (6 per node). */
export function sense(sensor: Sensor, u: Float64Array): Float64Array {
  const out = new Float64Array(6);
  const m = sensor.dofs.length;
  for (let i = 0; i < 6; i++) {
    let sum = 0;
    for (let j = 0; j < m; j++) sum += sensor.rows[i * m + j] * u[sensor.dofs[j]];
    out[i] = sum;
  }
  return out;
}
