/**
 * A patch of a plate (screw head, standoff face, clamped arm root) as weights on the plate's nodes:
 * the mean of the bilinear field over the patch. Because the patch has a size of its own, refining
 * the grid converges; a load on a single node of a plate would not.
 */

import { polygonPoints } from "../element/quadrature.ts";
import { bounds, clipToConvex, moments, type Polygon } from "../model/polygon.ts";
import { type Memo, memo } from "./memo.ts";
import type { Patch, PatchPiece, PlateGrid } from "./types.ts";

/** A patch as weights alone. */
export type Footing = Pick<Patch, "nodes" | "weights" | "centre" | "area">;

/** Patches of one plate that are kept. */
const KEPT = 256;
/** By the node numbers of a plate's grid, which belong to one drawing (see grid.ts), then by shape. */
const PATCHES = new WeakMap<Int32Array, Memo<{ readonly patch: Patch | undefined }>>();
const FOOTINGS = new WeakMap<Int32Array, Memo<{ readonly footing: Footing | undefined }>>();

/**
 * @param shape convex, anticlockwise
 * @returns undefined when no part of the shape lies on the plate
 */
export function patchOn(grid: PlateGrid, shape: Polygon): Patch | undefined {
  const { patch } = memoOf(PATCHES, grid)(shape.join(), () => {
    const cuts = cutsOf(grid, shape);
    const footing = footingOf(grid, cuts);
    const patch = footing && {
      ...footing,
      pieces: cuts.map((cut) => pieceOf(grid, cut, footing.area)),
    };
    return { patch };
  });
  return patch && atHeight(patch, grid.z);
}

/** The same without the points of its pieces. */
export function footingOn(grid: PlateGrid, shape: Polygon): Footing | undefined {
  const { footing } = memoOf(FOOTINGS, grid)(shape.join(), () => ({
    footing: footingOf(grid, cutsOf(grid, shape)),
  }));
  return footing && atHeight(footing, grid.z);
}

function memoOf<V>(memos: WeakMap<Int32Array, Memo<V>>, { nodeAt }: PlateGrid): Memo<V> {
  const found = memos.get(nodeAt) ?? memo<V>(KEPT);
  memos.set(nodeAt, found);
  return found;
}

/** On the same plate at another height. */
function atHeight<F extends Footing>(footing: F, z: number): F {
  const [x, y] = footing.centre;
  return { ...footing, centre: [x, y, z] };
}

/** The part of a shape in one cell. */
interface Cut {
  /** of the cell, anticlockwise from the corner of least x and y */
  readonly nodes: readonly [number, number, number, number];
  /** the corner of the cell of least x and y, m */
  readonly corner: readonly [number, number];
  readonly polygon: Polygon;
}

/** The shape cut by the grid. */
function cutsOf(grid: PlateGrid, shape: Polygon): Cut[] {
  const { x0, y0, a, b, nx, ny } = grid;
  const [sx0, sy0, sx1, sy1] = bounds(shape);
  const clamp = (v: number, n: number) => Math.min(n - 1, Math.max(0, v));
  const [i0, i1] = [clamp(Math.floor((sx0 - x0) / a), nx), clamp(Math.floor((sx1 - x0) / a), nx)];
  const [j0, j1] = [clamp(Math.floor((sy0 - y0) / b), ny), clamp(Math.floor((sy1 - y0) / b), ny)];
  const cuts: Cut[] = [];
  for (let j = j0; j <= j1; j++) {
    for (let i = i0; i <= i1; i++) {
      const solid = grid.covered[j * nx + i];
      if (solid.length === 0) continue;
      const polygon = clipToConvex(solid, shape);
      if (polygon.length < 6) continue;
      const at = j * (nx + 1) + i;
      const node = (k: number) => grid.nodeAt[k];
      cuts.push({
        nodes: [node(at), node(at + 1), node(at + nx + 2), node(at + nx + 1)],
        corner: [x0 + i * a, y0 + j * b],
        polygon,
      });
    }
  }
  return cuts;
}

/** Integrals of the four bilinear functions over each cut, from its moments (exact). */
function footingOf({ a, b, z }: PlateGrid, cuts: readonly Cut[]): Footing | undefined {
  const weight = new Map<number, number>();
  let [area, mx, my] = [0, 0, 0];
  for (const { nodes, corner, polygon } of cuts) {
    // About a vertex: a small patch far from the origin keeps its digits.
    const [px, py] = polygon;
    const m = moments(polygon.map((v, k) => v - (k % 2 === 0 ? px : py)));
    const [s, t] = [(px - corner[0]) / a, (py - corner[1]) / b];
    const S = s * m.area + m.x / a;
    const T = t * m.area + m.y / b;
    const ST = s * T + (t * m.x) / a + m.xy / (a * b);
    const N = [m.area - S - T + ST, S - ST, ST, T - ST];
    nodes.forEach((n, c) => {
      weight.set(n, (weight.get(n) ?? 0) + N[c]);
    });
    area += m.area;
    mx += px * m.area + m.x;
    my += py * m.area + m.y;
  }
  if (!(area > 0)) return undefined;
  const nodes = [...weight.keys()].sort((p, q) => p - q);
  return {
    nodes: Int32Array.from(nodes),
    weights: Float64Array.from(nodes, (n) => (weight.get(n) ?? 0) / area),
    centre: [mx / area, my / area, z],
    area,
  };
}

/** A cut as integration points weighted by their shares of the whole patch. */
function pieceOf({ a, b }: PlateGrid, { nodes, corner, polygon }: Cut, area: number): PatchPiece {
  const [cx, cy] = corner;
  const { x, y, w } = polygonPoints([polygon], cx + a / 2, cy + b / 2);
  return {
    nodes,
    points: {
      s: x.map((v) => (v - cx) / a),
      t: y.map((v) => (v - cy) / b),
      x,
      y,
      w: w.map((v) => v / area),
    },
  };
}
