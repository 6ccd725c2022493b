/** The rectangular grid of one plate, clipped to its outline and holes. */

import { type PlanePoints, polygonPoints } from "../element/quadrature.ts";
import { bounds, clipToConvex, moments, type Polygon, rectangle } from "../model/polygon.ts";
import type { PlatePart } from "../model/types.ts";
import { addNode, type Draft } from "./draft.ts";
import type { PlateGrid } from "./types.ts";

/** Cells covered by less than this share are left out; the mass lost is below 1e-9 of a cell. */
const EMPTY = 1e-9;
/** Cells covered by more than 1 - this share count as whole. */
const WHOLE = 1e-12;
/**
 * Least stiffness of an edge member as a share of a whole cell's: keeps corners that hang on a sliver
 * from having none at all. Far below what any result shows.
 */
const FLOOR = 1e-6;

/**
 * Least number of cells along a side: in-plane bending of a strip n cells wide is (1 + 2/n^2) too
 * stiff, and narrow decks are where it shows.
 */
const LEAST_CELLS = 6;

/** Number of cells along each side for a mesh size. */
export function gridShape(plate: PlatePart, size: number) {
  const [x0, y0, x1, y1] = bounds(plate.outline);
  const nx = Math.max(LEAST_CELLS, Math.ceil((x1 - x0) / size - 1e-6));
  const ny = Math.max(LEAST_CELLS, Math.ceil((y1 - y0) / size - 1e-6));
  return { x0, y0, nx, ny, a: (x1 - x0) / nx, b: (y1 - y0) / ny };
}

/** Adds the nodes and cells of a plate to the draft. */
export function meshPlate(
  draft: Draft,
  plate: PlatePart,
  number: number,
  part: number,
  size: number,
): PlateGrid {
  const { x0, y0, nx, ny, a, b } = gridShape(plate, size);
  const nodeAt = new Int32Array((nx + 1) * (ny + 1)).fill(-1);
  const covered: Polygon[] = [];
  const node = (i: number, j: number) => {
    const k = j * (nx + 1) + i;
    if (nodeAt[k] < 0) nodeAt[k] = addNode(draft, x0 + i * a, y0 + j * b, plate.z);
    return nodeAt[k];
  };
  for (let j = 0; j < ny; j++) {
    for (let i = 0; i < nx; i++) {
      const [x, y] = [x0 + i * a, y0 + j * b];
      const cell = rectangle(x, y, x + a, y + b);
      const solid = clipToConvex(plate.outline, cell);
      const pieces = [solid, ...plate.holes.map((h) => clipToConvex(h, cell))];
      const area = pieces.reduce((sum, p) => sum + moments(p).area, 0);
      if (!(area > EMPTY * a * b)) {
        covered.push(new Float64Array(0));
        continue;
      }
      covered.push(solid);
      const whole = area > (1 - WHOLE) * a * b;
      const points = whole ? undefined : inCell(pieces, x, y, a, b);
      draft.cells.push({
        nodes: [node(i, j), node(i + 1, j), node(i + 1, j + 1), node(i, j + 1)],
        plate: number,
        a,
        b,
        cover: cover(points, a, b),
        ...(points && { points }),
        part,
      });
    }
  }
  return { x0, y0, z: plate.z, a, b, nx, ny, nodeAt, covered };
}

/** Integration points of a clipped cell, from its own corner. */
function inCell(pieces: readonly Polygon[], x: number, y: number, a: number, b: number) {
  const p = polygonPoints(pieces, x + a / 2, y + b / 2);
  return { x: p.x.map((v) => v - x), y: p.y.map((v) => v - y), w: p.w };
}

/** The covered area shared to the four edges with linear weights. */
function cover(points: PlanePoints | undefined, a: number, b: number) {
  const half = (a * b) / 2;
  if (!points) return { bottom: half, top: half, left: half, right: half };
  let area = 0;
  let top = 0;
  let right = 0;
  for (let k = 0; k < points.w.length; k++) {
    area += points.w[k];
    top += (points.w[k] * points.y[k]) / b;
    right += (points.w[k] * points.x[k]) / a;
  }
  const least = (w: number) => Math.max(w, FLOOR * half);
  return {
    bottom: least(area - top),
    top: least(top),
    left: least(area - right),
    right: least(right),
  };
}
