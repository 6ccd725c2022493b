/** The rectangular grid of one plate, clipped to its outline and holes. */

import type { CellCover } from "../element/plate-cell.ts";
import { type PlanePoints, polygonPoints } from "../element/quadrature.ts";
import { bounds, clipToConvex, moments, type Polygon, rectangle } from "../model/polygon.ts";
import type { PlatePart } from "../model/types.ts";
import { addNode, type Draft } from "./draft.ts";
import { type Memo, memo } from "./memo.ts";
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

/** A cell of a plate's drawing. */
interface DrawnCell {
  /** position in the grid, j (nx + 1) + i of its corner of least x and y */
  readonly at: number;
  readonly cover: CellCover;
  readonly points?: PlanePoints;
}

/** What of a plate's grid depends on its drawing alone, and on the number of its first node. */
interface Plan {
  readonly covered: readonly Polygon[];
  readonly cells: readonly DrawnCell[];
  /** relative to the first node; -1 where there is none */
  readonly order: Int32Array;
  /** positions in the grid of the nodes, in their order */
  readonly nodes: readonly number[];
  /** node numbers in the grid by the number of the first */
  readonly nodeAt: Memo<Int32Array>;
}

/** More drawings than any frame has plates, times the meshes that are compared. */
const PLANS = memo<Plan>(32);
/** Numbers that a plate's first node may have in the frames that are compared. */
const FIRST_NODES = 4;

function planOf(plate: PlatePart, size: number): Plan {
  const { nx, ny } = gridShape(plate, size);
  const name = [nx, ny, plate.outline.join(), ...plate.holes.map((h) => h.join())].join(";");
  return PLANS(name, () => drawn(plate, size));
}

function drawn(plate: PlatePart, size: number): Plan {
  const { x0, y0, nx, ny, a, b } = gridShape(plate, size);
  const order = new Int32Array((nx + 1) * (ny + 1)).fill(-1);
  const nodes: number[] = [];
  const covered: Polygon[] = [];
  const cells: DrawnCell[] = [];
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
      const at = j * (nx + 1) + i;
      for (const k of cornersAt(at, nx)) {
        if (order[k] < 0) order[k] = nodes.push(k) - 1;
      }
      const whole = area > (1 - WHOLE) * a * b;
      const points = whole ? undefined : inCell(pieces, x, y, a, b);
      cells.push({ at, cover: cover(points, a, b), ...(points && { points }) });
    }
  }
  return { covered, cells, order, nodes, nodeAt: memo(FIRST_NODES) };
}

/** Positions of a cell's corners in the grid, anticlockwise from that of least x and y. */
function cornersAt(at: number, nx: number): readonly [number, number, number, number] {
  return [at, at + 1, at + nx + 2, at + nx + 1];
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
  const { covered, cells, order, nodes, nodeAt: numbered } = planOf(plate, size);
  const first = draft.xyz.length / 3;
  for (const k of nodes) {
    addNode(draft, x0 + (k % (nx + 1)) * a, y0 + Math.floor(k / (nx + 1)) * b, plate.z);
  }
  const nodeAt = numbered(`${first}`, () => order.map((k) => (k < 0 ? -1 : first + k)));
  for (const { at, cover, points } of cells) {
    const [p, q, r, s] = cornersAt(at, nx);
    draft.cells.push({
      nodes: [nodeAt[p], nodeAt[q], nodeAt[r], nodeAt[s]],
      plate: number,
      a,
      b,
      cover,
      ...(points && { points }),
      part,
    });
  }
  return { x0, y0, z: plate.z, a, b, nx, ny, nodeAt, covered };
}

/** Integration points of a clipped cell, from its own corner. */
function inCell(pieces: readonly Polygon[], x: number, y: number, a: number, b: number) {
  const p = polygonPoints(pieces, x + a / 2, y + b / 2);
  return { x: p.x.map((v) => v - x), y: p.y.map((v) => v - y), w: p.w };
}

/** The covered area shared to the four edges with linear weights. */
function cover(points: PlanePoints | undefined, a: number, b: number): CellCover {
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
