/** Plates for the three-dimensional picture: a grid clipped to the true outline, moving with the mesh. */

import type { PlateGrid } from "../mesh/types.ts";
import type { Polygon } from "../model/polygon.ts";
import type { PlatePart, Vec3 } from "../model/types.ts";
import {
  addCell,
  atNode,
  type DisplayDraft,
  fixedTo,
  type Vertex,
  within,
} from "./display-draft.ts";
import { trapezoids } from "./trapezoids.ts";

/** The middle surface of a flat part: triangles anticlockwise from above, and its borders. */
export interface Sheet {
  readonly triangles: (readonly [Vertex, Vertex, Vertex])[];
  readonly borders: (readonly Vertex[])[];
}

/**
 * The grid of one plate. Motion is carried by the corners of coarse cells, `step` cells of the mesh wide;
 * the surface is drawn as fine as the mesh.
 */
interface Net {
  readonly draft: DisplayDraft;
  readonly grid: PlateGrid;
  readonly step: number;
  readonly cells: Map<number, number>;
  readonly corners: Map<string, Vertex>;
  /** points already there, by cell and place in it */
  readonly points: Map<string, Vertex>;
}

/** One plate: its surface without the holes, and its borders. */
export function drawPlate(
  draft: DisplayDraft,
  plate: PlatePart,
  grid: PlateGrid,
  step: number,
): Sheet {
  const net = netOf(draft, grid, step);
  const { x0, y0, a, b, nx, ny } = grid;
  const triangles: (readonly [Vertex, Vertex, Vertex])[] = [];
  carriersInRows(net);
  for (let j = 0; j < ny; j++) {
    for (let i = 0; i < nx; i++) {
      const box = [x0 + i * a, y0 + j * b, x0 + (i + 1) * a, y0 + (j + 1) * b] as const;
      for (const t of trapezoids(plate.outline, plate.holes, box)) {
        const at = (x: number, y: number) => pointIn(net, i, j, x, y);
        const [p, q] = [at(t.left[0], t.y0), at(t.right[0], t.y0)];
        const [r, s] = [at(t.right[1], t.y1), at(t.left[1], t.y1)];
        if (p !== q) triangles.push([p, q, r]);
        if (r !== s) triangles.push([p, r, s]);
      }
    }
  }
  return {
    triangles,
    borders: [plate.outline, ...plate.holes].map((p) => borderLine(net, p)),
  };
}

/** A chip's place on a plate, and the chip itself, which tips with the plate's nearest node. */
export function chipOnPlate(
  draft: DisplayDraft,
  grid: PlateGrid,
  [x, y, z]: Vec3,
): readonly [Vertex, Vertex] {
  const net = netOf(draft, grid, 1);
  const nodes = [...grid.nodeAt].filter((n) => n >= 0);
  const node = nearest(draft, nodes, x, y);
  return [pointIn(net, ...meshCell(grid, x, y), x, y), fixedTo(draft, node, x, y, z)];
}

/** Carriers to and fro, row by row: neighbours in the list are neighbours on the plate, which packs best. */
function carriersInRows({ draft, grid, step }: Net): void {
  const [columns, rows] = [Math.ceil(grid.nx / step), Math.ceil(grid.ny / step)];
  for (let q = 0; q <= rows; q++) {
    for (let k = 0; k <= columns; k++) {
      const p = q % 2 === 0 ? k : columns - k;
      const [i, j] = [Math.min(p * step, grid.nx), Math.min(q * step, grid.ny)];
      const node = grid.nodeAt[j * (grid.nx + 1) + i];
      if (node >= 0) atNode(draft, node);
    }
  }
}

function netOf(draft: DisplayDraft, grid: PlateGrid, step: number): Net {
  return { draft, grid, step, cells: new Map(), corners: new Map(), points: new Map() };
}

/** A vertex at (x, y) in the mesh's cell (i, j), by its place in the coarse cell around it. */
function pointIn(net: Net, i: number, j: number, x: number, y: number): Vertex {
  const { grid, step } = net;
  const [ci, cj] = [Math.floor(i / step), Math.floor(j / step)];
  const [x0, x1] = [ci, ci + 1].map((k) => grid.x0 + Math.min(k * step, grid.nx) * grid.a);
  const [y0, y1] = [cj, cj + 1].map((k) => grid.y0 + Math.min(k * step, grid.ny) * grid.b);
  const [s, t] = [(x - x0) / (x1 - x0), (y - y0) / (y1 - y0)].map((v) => Number(v.toFixed(3)));
  const corner = [s, t].every((v) => v === 0 || v === 1);
  if (corner) return cornerOf(net, ci, cj, ci + s, cj + t);
  const cell = cellOf(net, ci, cj);
  // A point on the border of two cells is one vertex, or the cells would part there.
  const key = `${Math.round(x * 2e5)} ${Math.round(y * 2e5)}`;
  const known = net.points.get(key);
  if (known !== undefined) return known;
  const vertex = within(net.draft, cell, s, t);
  net.points.set(key, vertex);
  return vertex;
}

function cellOf(net: Net, ci: number, cj: number): number {
  const key = cj * (net.grid.nx + 1) + ci;
  const known = net.cells.get(key);
  if (known !== undefined) return known;
  const at = (p: number, q: number) => cornerOf(net, ci, cj, ci + p, cj + q);
  const cell = addCell(net.draft, [at(0, 0), at(1, 0), at(1, 1), at(0, 1)]);
  net.cells.set(key, cell);
  return cell;
}

/**
 * The corner (p, q) of the coarse grid as the coarse cell (ci, cj) has it: the node there, or where the
 * mesh has none a point that moves with the nearest node of this very cell, not with one across a gap.
 */
function cornerOf(net: Net, ci: number, cj: number, p: number, q: number): Vertex {
  const { draft, grid, step } = net;
  const [i, j] = [Math.min(p * step, grid.nx), Math.min(q * step, grid.ny)];
  const node = grid.nodeAt[j * (grid.nx + 1) + i];
  if (node >= 0) return atNode(draft, node);
  const [x, y] = [grid.x0 + i * grid.a, grid.y0 + j * grid.b];
  const owner = nearest(draft, nodesOf(net, ci, cj), x, y);
  const key = `${i} ${j} ${owner}`;
  const known = net.corners.get(key);
  if (known !== undefined) return known;
  const vertex = fixedTo(draft, owner, x, y, grid.z);
  net.corners.set(key, vertex);
  return vertex;
}

/** Nodes of the mesh in a coarse cell, its border included; it has some where anything is drawn. */
function nodesOf({ grid, step }: Net, ci: number, cj: number): number[] {
  const nodes: number[] = [];
  for (let j = cj * step; j <= Math.min((cj + 1) * step, grid.ny); j++) {
    for (let i = ci * step; i <= Math.min((ci + 1) * step, grid.nx); i++) {
      const node = grid.nodeAt[j * (grid.nx + 1) + i];
      if (node >= 0) nodes.push(node);
    }
  }
  return nodes.length > 0 ? nodes : [...grid.nodeAt].filter((n) => n >= 0);
}

function nearest(
  { mesh: { xyz } }: DisplayDraft,
  nodes: readonly number[],
  x: number,
  y: number,
): number {
  const off = (n: number) => Math.hypot(xyz[3 * n] - x, xyz[3 * n + 1] - y);
  return nodes.reduce((best, n) => (off(n) < off(best) - 1e-9 ? n : best));
}

/** A border with a vertex at every corner and at least every cell, closed. */
function borderLine(net: Net, p: Polygon): Vertex[] {
  const { grid } = net;
  const reach = Math.min(grid.a, grid.b);
  const line: Vertex[] = [];
  for (let i = 0; i < p.length; i += 2) {
    const j = (i + 2) % p.length;
    const [dx, dy] = [p[j] - p[i], p[j + 1] - p[i + 1]];
    const pieces = Math.max(1, Math.ceil(Math.hypot(dx, dy) / reach));
    for (let k = 0; k < pieces; k++) {
      const [x, y] = [p[i] + (dx * k) / pieces, p[i + 1] + (dy * k) / pieces];
      line.push(pointIn(net, ...meshCell(grid, x, y), x, y));
    }
  }
  return line.length > 0 ? [...line, line[0]] : line;
}

/** The mesh's cell that holds (x, y); of several, the last inside the grid. */
function meshCell(grid: PlateGrid, x: number, y: number): [number, number] {
  const at = (v: number, n: number) => Math.min(n - 1, Math.max(0, Math.floor(v + 1e-9)));
  return [at((x - grid.x0) / grid.a, grid.nx), at((y - grid.y0) / grid.b, grid.ny)];
}
