/**
 * A patch of a plate (screw head, standoff face, clamped arm root) as weights on the plate's nodes:
 * the mean of the bilinear field over the patch. Because the patch has a size of its own, refining
 * the grid converges; a load on a single node of a plate would not.
 */

import { polygonPoints } from "../element/quadrature.ts";
import { bounds, clipToConvex, type Polygon } from "../model/polygon.ts";
import type { Patch, PlateGrid } from "./types.ts";

/**
 * @param shape convex, anticlockwise
 * @returns undefined when no part of the shape lies on the plate
 */
export function patchOn(grid: PlateGrid, shape: Polygon): Patch | undefined {
  const weight = new Map<number, number>();
  let area = 0;
  let mx = 0;
  let my = 0;
  const { x0, y0, a, b, nx, ny } = grid;
  const [sx0, sy0, sx1, sy1] = bounds(shape);
  const clamp = (v: number, n: number) => Math.min(n - 1, Math.max(0, v));
  const [i0, i1] = [clamp(Math.floor((sx0 - x0) / a), nx), clamp(Math.floor((sx1 - x0) / a), nx)];
  const [j0, j1] = [clamp(Math.floor((sy0 - y0) / b), ny), clamp(Math.floor((sy1 - y0) / b), ny)];
  for (let j = j0; j <= j1; j++) {
    for (let i = i0; i <= i1; i++) {
      const solid = grid.covered[j * nx + i];
      if (solid.length === 0) continue;
      const piece = clipToConvex(solid, shape);
      if (piece.length < 6) continue;
      const [x, y] = [x0 + i * a, y0 + j * b];
      const points = polygonPoints([piece], x + a / 2, y + b / 2);
      const corner = [0, 0, 0, 0];
      for (let k = 0; k < points.w.length; k++) {
        const [s, t, w] = [(points.x[k] - x) / a, (points.y[k] - y) / b, points.w[k]];
        corner[0] += w * (1 - s) * (1 - t);
        corner[1] += w * s * (1 - t);
        corner[2] += w * s * t;
        corner[3] += w * (1 - s) * t;
        area += w;
        mx += w * points.x[k];
        my += w * points.y[k];
      }
      const at = j * (nx + 1) + i;
      [at, at + 1, at + nx + 2, at + nx + 1].forEach((n, c) => {
        const node = grid.nodeAt[n];
        weight.set(node, (weight.get(node) ?? 0) + corner[c]);
      });
    }
  }
  if (!(area > 0)) return undefined;
  const nodes = [...weight.keys()].sort((p, q) => p - q);
  return {
    nodes: Int32Array.from(nodes),
    weights: Float64Array.from(nodes, (n) => (weight.get(n) ?? 0) / area),
    centre: [mx / area, my / area, grid.z],
    area,
  };
}
