/**
 * A patch of a plate (screw head, standoff face, clamped arm root) as weights on the plate's nodes:
 * the mean of the bilinear field over the patch. Because the patch has a size of its own, refining
 * the grid converges; a load on a single node of a plate would not.
 */

import { polygonPoints } from "../element/quadrature.ts";
import { bounds, clipToConvex, type Polygon } from "../model/polygon.ts";
import type { Patch, PatchPiece, PlateGrid } from "./types.ts";

/**
 * @param shape convex, anticlockwise
 * @returns undefined when no part of the shape lies on the plate
 */
export function patchOn(grid: PlateGrid, shape: Polygon): Patch | undefined {
  const pieces = piecesOf(grid, shape);
  const area = pieces.reduce((sum, p) => sum + total(p.points.w), 0);
  if (!(area > 0)) return undefined;
  const weight = new Map<number, number>();
  let mx = 0;
  let my = 0;
  for (const { nodes, points } of pieces) {
    const { s, t, x, y, w } = points;
    for (let k = 0; k < w.length; k++) {
      w[k] /= area;
      const N = [(1 - s[k]) * (1 - t[k]), s[k] * (1 - t[k]), s[k] * t[k], (1 - s[k]) * t[k]];
      nodes.forEach((n, c) => {
        weight.set(n, (weight.get(n) ?? 0) + w[k] * N[c]);
      });
      mx += w[k] * x[k];
      my += w[k] * y[k];
    }
  }
  const nodes = [...weight.keys()].sort((p, q) => p - q);
  return {
    nodes: Int32Array.from(nodes),
    weights: Float64Array.from(nodes, (n) => weight.get(n) ?? 0),
    centre: [mx, my, grid.z],
    area,
    pieces,
  };
}

const total = (w: Float64Array) => w.reduce((sum, v) => sum + v, 0);

/** The shape cut by the grid, with integration points weighted by area. */
function piecesOf(grid: PlateGrid, shape: Polygon): PatchPiece[] {
  const { x0, y0, a, b, nx, ny } = grid;
  const [sx0, sy0, sx1, sy1] = bounds(shape);
  const clamp = (v: number, n: number) => Math.min(n - 1, Math.max(0, v));
  const [i0, i1] = [clamp(Math.floor((sx0 - x0) / a), nx), clamp(Math.floor((sx1 - x0) / a), nx)];
  const [j0, j1] = [clamp(Math.floor((sy0 - y0) / b), ny), clamp(Math.floor((sy1 - y0) / b), ny)];
  const pieces: PatchPiece[] = [];
  for (let j = j0; j <= j1; j++) {
    for (let i = i0; i <= i1; i++) {
      const solid = grid.covered[j * nx + i];
      if (solid.length === 0) continue;
      const piece = clipToConvex(solid, shape);
      if (piece.length < 6) continue;
      const [cx, cy] = [x0 + i * a, y0 + j * b];
      const { x, y, w } = polygonPoints([piece], cx + a / 2, cy + b / 2);
      const at = j * (nx + 1) + i;
      const node = (k: number) => grid.nodeAt[k];
      pieces.push({
        nodes: [node(at), node(at + 1), node(at + nx + 2), node(at + nx + 1)],
        points: { s: x.map((v) => (v - cx) / a), t: y.map((v) => (v - cy) / b), x, y, w },
      });
    }
  }
  return pieces;
}
