/** What is under the pointer. Runs in the page: every function stands alone. */

import type { Picked, Projected, Scene } from "./viewer-types.ts";

/** The nearest triangle under a point of the picture among those of parts that are shown. */
export function pick(
  scene: Scene,
  seen: Pick<Projected, "x" | "y" | "depth">,
  px: number,
  py: number,
  shown: (part: number) => boolean,
): Picked | undefined {
  const { triangles, partOf } = scene;
  let found: Picked | undefined;
  for (let t = 0; t < partOf.length; t++) {
    const [a, b, c] = [triangles[3 * t], triangles[3 * t + 1], triangles[3 * t + 2]];
    const area = (p: number, q: number) =>
      (seen.x[p] - px) * (seen.y[q] - py) - (seen.x[q] - px) * (seen.y[p] - py);
    const [u, v, w] = [area(b, c), area(c, a), area(a, b)];
    if (u > 0 || v > 0 || w > 0 || u + v + w > -1e-9 || !shown(partOf[t])) continue;
    const sum = u + v + w;
    const depth = (u * seen.depth[a] + v * seen.depth[b] + w * seen.depth[c]) / sum;
    if (found !== undefined && depth <= found.depth) continue;
    found = { part: partOf[t], triangle: t, weights: [u / sum, v / sum, w / sum], depth };
  }
  return found;
}
