/** Which pieces of lines are in sight. Runs in the page: every function stands alone. */

import type { Projected, Raster, Scene } from "./viewer-types.ts";

/**
 * Pieces x1, y1, x2, y2 (pixels) of the lines between pairs of vertices that no surface covers.
 * A line on the rim of a surface counts as in sight if it is at one of the points around it, and lies
 * `before` mm nearer than it is, or rounding would make it flicker.
 */
export function inSight(
  raster: Raster,
  seen: Pick<Projected, "x" | "y" | "depth">,
  pairs: ArrayLike<number>,
  before: number,
): number[] {
  const { width, height, depth } = raster;
  const out: number[] = [];
  for (let e = 0; e < pairs.length; e += 2) {
    const [a, b] = [pairs[e], pairs[e + 1]];
    const [ax, ay, az] = [seen.x[a], seen.y[a], seen.depth[a]];
    const [dx, dy, dz] = [seen.x[b] - ax, seen.y[b] - ay, seen.depth[b] - az];
    const count = Math.max(1, Math.ceil(Math.hypot(dx, dy) / 3));
    let begun = -1;
    for (let k = 0; k <= count; k++) {
      let visible = false;
      if (k < count) {
        const s = (k + 0.5) / count;
        const x = Math.floor(ax + s * dx - 0.5);
        const y = Math.floor(ay + s * dy - 0.5);
        const z = az + s * dz + before;
        if (x < 0 || y < 0 || x + 1 >= width || y + 1 >= height) visible = true;
        else {
          const i = y * width + x;
          visible =
            depth[i] < z || depth[i + 1] < z || depth[i + width] < z || depth[i + width + 1] < z;
        }
      }
      if (visible && begun < 0) begun = k;
      if (!visible && begun >= 0) {
        const [s, t] = [begun / count, k / count];
        out.push(ax + s * dx, ay + s * dy, ax + t * dx, ay + t * dy);
        begun = -1;
      }
    }
  }
  return out;
}

/** Edges of some parts as pairs of vertices, without those between two faces that look away. */
export function edgesOf(
  scene: Scene,
  seen: Pick<Projected, "x" | "y">,
  wanted: (part: number) => boolean,
): number[] {
  const { edges, edgePart, soft, triangles } = scene;
  const { x, y } = seen;
  const faces = (t: number) => {
    const [a, b, c] = [triangles[3 * t], triangles[3 * t + 1], triangles[3 * t + 2]];
    return (x[b] - x[a]) * (y[c] - y[a]) - (x[c] - x[a]) * (y[b] - y[a]) < 0;
  };
  const out: number[] = [];
  for (let e = 0; e < edgePart.length; e++) {
    if (!wanted(edgePart[e])) continue;
    const [left, right] = [edges[4 * e + 2], edges[4 * e + 3]];
    if (left >= 0) {
      const [p, q] = [faces(left), faces(right)];
      if (soft[e] === 1 ? p === q : !(p || q)) continue;
    }
    out.push(edges[4 * e], edges[4 * e + 1]);
  }
  return out;
}
