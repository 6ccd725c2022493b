/** Plates for the three-dimensional picture: a grid clipped to the true outline, moving with the mesh. */

import type { PlateGrid } from "../mesh/types.ts";
import type { Polygon } from "../model/polygon.ts";
import type { PlatePart, Vec3 } from "../model/types.ts";
import {
  addFrame,
  atNode,
  type DisplayDraft,
  fixedTo,
  follow,
  type Vertex,
} from "./display-draft.ts";
import { trapezoids } from "./trapezoids.ts";

/** What a drawn part adds: triangles and lines of vertices. */
export interface Drawn {
  readonly triangles: (readonly [Vertex, Vertex, Vertex])[];
  readonly lines: (readonly Vertex[])[];
}

/** The grid of one plate as it is drawn: `step` cells of the mesh make one drawn cell. */
interface Sheet {
  readonly draft: DisplayDraft;
  readonly grid: PlateGrid;
  readonly step: number;
  readonly corners: Map<number, Vertex>;
  readonly frames: Map<number, number>;
  /** followers already there, by cell and weights */
  readonly points: Map<string, Vertex>;
}

/** One plate: its surface without the holes, and its borders as lines. */
export function drawPlate(
  draft: DisplayDraft,
  plate: PlatePart,
  grid: PlateGrid,
  step: number,
): Drawn {
  const sheet = sheetOf(draft, grid, step);
  const triangles: (readonly [Vertex, Vertex, Vertex])[] = [];
  const [columns, rows] = [Math.ceil(grid.nx / step), Math.ceil(grid.ny / step)];
  for (let j = 0; j < rows; j++) {
    for (let i = 0; i < columns; i++) {
      const cell = cellBox(sheet, i, j);
      for (const t of trapezoids(plate.outline, plate.holes, cell)) {
        const at = (x: number, y: number) => pointIn(sheet, i, j, x, y);
        const [a, b] = [at(t.left[0], t.y0), at(t.right[0], t.y0)];
        const [c, d] = [at(t.right[1], t.y1), at(t.left[1], t.y1)];
        if (a !== b) triangles.push([a, b, c]);
        if (c !== d) triangles.push([a, c, d]);
      }
    }
  }
  const lines = [plate.outline, ...plate.holes].map((p) => borderLine(sheet, p));
  return { triangles, lines };
}

/** A chip's place on a plate, and the chip itself, which tips with the plate's nearest node. */
export function chipOnPlate(
  draft: DisplayDraft,
  grid: PlateGrid,
  [x, y, z]: Vec3,
): readonly [Vertex, Vertex] {
  const sheet = sheetOf(draft, grid, 1);
  const node = nearestNode(grid, (x - grid.x0) / grid.a, (y - grid.y0) / grid.b);
  return [pointIn(sheet, ...cellAt(sheet, x, y), x, y), fixedTo(draft, node, x, y, z)];
}

function sheetOf(draft: DisplayDraft, grid: PlateGrid, step: number): Sheet {
  return { draft, grid, step, corners: new Map(), frames: new Map(), points: new Map() };
}

function cellBox({ grid, step }: Sheet, i: number, j: number) {
  const { x0, y0, a, b, nx, ny } = grid;
  const x = (n: number) => x0 + Math.min(n * step, nx) * a;
  const y = (n: number) => y0 + Math.min(n * step, ny) * b;
  return [x(i), y(j), x(i + 1), y(j + 1)] as const;
}

/** A vertex in the drawn cell (i, j), bilinear between its corners. */
function pointIn(sheet: Sheet, i: number, j: number, x: number, y: number): Vertex {
  const [x0, y0, x1, y1] = cellBox(sheet, i, j);
  const s = Number(((x - x0) / (x1 - x0)).toFixed(3));
  const t = Number(((y - y0) / (y1 - y0)).toFixed(3));
  if ((s === 0 || s === 1) && (t === 0 || t === 1)) return corner(sheet, i + s, j + t);
  const cell = j * (sheet.grid.nx + 1) + i;
  const key = `${cell} ${s} ${t}`;
  const known = sheet.points.get(key);
  if (known !== undefined) return known;
  const frame = frameOf(sheet, cell, i, j);
  const vertex = follow(sheet.draft, frame, s * (1 - t), s * t, (1 - s) * t);
  sheet.points.set(key, vertex);
  return vertex;
}

function frameOf(sheet: Sheet, cell: number, i: number, j: number): number {
  const known = sheet.frames.get(cell);
  if (known !== undefined) return known;
  const at = (p: number, q: number) => corner(sheet, p, q);
  const frame = addFrame(sheet.draft, [at(i, j), at(i + 1, j), at(i + 1, j + 1), at(i, j + 1)]);
  sheet.frames.set(cell, frame);
  return frame;
}

/** The carrier at a corner of the drawn grid; where the mesh has no node, one moves with the nearest. */
function corner(sheet: Sheet, i: number, j: number): Vertex {
  const { draft, grid, step, corners } = sheet;
  const [p, q] = [Math.min(i * step, grid.nx), Math.min(j * step, grid.ny)];
  const key = q * (grid.nx + 1) + p;
  const known = corners.get(key);
  if (known !== undefined) return known;
  const node = grid.nodeAt[key];
  const vertex =
    node >= 0
      ? atNode(draft, node)
      : fixedTo(draft, nearestNode(grid, p, q), grid.x0 + p * grid.a, grid.y0 + q * grid.b, grid.z);
  corners.set(key, vertex);
  return vertex;
}

function nearestNode(grid: PlateGrid, p: number, q: number): number {
  let best = -1;
  let least = Number.POSITIVE_INFINITY;
  grid.nodeAt.forEach((node, k) => {
    if (node < 0) return;
    const i = k % (grid.nx + 1);
    const distance = Math.hypot((i - p) * grid.a, ((k - i) / (grid.nx + 1) - q) * grid.b);
    if (distance < least) [best, least] = [node, distance];
  });
  return best;
}

/** A border with a vertex at every corner and at least every cell, closed. */
function borderLine(sheet: Sheet, p: Polygon): Vertex[] {
  const { grid, step } = sheet;
  const reach = step * Math.min(grid.a, grid.b);
  const line: Vertex[] = [];
  for (let i = 0; i < p.length; i += 2) {
    const j = (i + 2) % p.length;
    const [dx, dy] = [p[j] - p[i], p[j + 1] - p[i + 1]];
    const pieces = Math.max(1, Math.ceil(Math.hypot(dx, dy) / reach));
    for (let k = 0; k < pieces; k++) {
      const [x, y] = [p[i] + (dx * k) / pieces, p[i + 1] + (dy * k) / pieces];
      line.push(pointIn(sheet, ...cellAt(sheet, x, y), x, y));
    }
  }
  return line.length > 0 ? [...line, line[0]] : line;
}

/** The drawn cell that holds (x, y); of several, the last inside the grid. */
function cellAt({ grid, step }: Sheet, x: number, y: number): [number, number] {
  const at = (v: number, n: number) =>
    Math.min(Math.ceil(n / step) - 1, Math.max(0, Math.floor((v + 1e-9) / step)));
  return [at((x - grid.x0) / grid.a, grid.nx), at((y - grid.y0) / grid.b, grid.ny)];
}
