/** Whether a mode is the same, or opposite, on the left and the right of the frame. */

import type { Mesh } from "../mesh/types.ts";

/** Correlation above which a mode counts as symmetric, below minus which as antisymmetric. */
const CLEAR = 0.95;
/** What mirroring in y does to ux uy uz rx ry rz. */
const MIRROR = [1, -1, 1, -1, 1, -1];

/** Pairs of nodes that mirror each other about the plane y = middle (a node on it with itself). */
export function mirrorPairs(mesh: Mesh, middle = 0, tolerance = 1e-6): Int32Array {
  const n = mesh.xyz.length / 3;
  const key = (x: number, y: number, z: number) =>
    [x, y, z].map((v) => Math.round(v / tolerance)).join(",");
  const at = new Map<string, number>();
  for (let i = 0; i < n; i++) {
    const k = key(mesh.xyz[3 * i], mesh.xyz[3 * i + 1], mesh.xyz[3 * i + 2]);
    if (!at.has(k)) at.set(k, i);
  }
  return Int32Array.from({ length: n }, (_, i) => {
    const [x, y, z] = [mesh.xyz[3 * i], mesh.xyz[3 * i + 1], mesh.xyz[3 * i + 2]];
    return at.get(key(x, 2 * middle - y, z)) ?? -1;
  });
}

/** Words for tables; empty where the frame or the mode has no such symmetry. */
export function leftRightSymmetry(shape: Float64Array, pairs: Int32Array): string {
  let same = 0;
  let total = 0;
  for (let i = 0; i < pairs.length; i++) {
    for (let d = 0; d < 3; d++) {
      const u = shape[6 * i + d];
      total += u * u;
      if (pairs[i] >= 0) same += u * MIRROR[d] * shape[6 * pairs[i] + d];
    }
  }
  if (total === 0) return "";
  const c = same / total;
  if (c > CLEAR) return "symmetric left to right";
  return c < -CLEAR ? "antisymmetric left to right" : "";
}
