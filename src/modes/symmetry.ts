/** Whether a mode is the same, or opposite, on the left and the right of the frame. */

import type { Mesh } from "../mesh/types.ts";

/** Correlation above which a mode counts as symmetric, below minus which as antisymmetric. */
const CLEAR = 0.95;
/** A shape that moves its nodes by less than this per radian of their rotation only twists, m/rad. */
const STILL = 1e-6;
/** What mirroring in y does to ux uy uz rx ry rz. */
const MIRROR = [1, -1, 1, -1, 1, -1];

/**
 * Pairs of nodes that mirror each other about the plane y = middle (a node on it with itself); -1 for a
 * node without a partner within half the tolerance. Nodes that share a place, such as both sides of a
 * joint, pair in the order in which they were made.
 */
export function mirrorPairs(mesh: Mesh, middle = 0, tolerance = 1e-6): Int32Array {
  const n = mesh.xyz.length / 3;
  const key = (...place: number[]) => place.map((v) => Math.floor(v / tolerance)).join(",");
  const at = new Map<string, number[]>();
  for (let i = 0; i < n; i++) {
    const k = key(mesh.xyz[3 * i], mesh.xyz[3 * i + 1], mesh.xyz[3 * i + 2]);
    at.set(k, [...(at.get(k) ?? []), i]);
  }
  const nodesAt = (...place: number[]): number[] => {
    // Rounding may put the partner of a node into the next box.
    let boxes: number[][] = [[]];
    for (const v of place) {
      boxes = boxes.flatMap((p) => [-tolerance / 2, tolerance / 2].map((d) => [...p, v + d]));
    }
    const keys = new Set(boxes.map((box) => key(...box)));
    const nodes = [...keys].flatMap((k) => at.get(k) ?? []);
    return nodes
      .filter((i) => place.every((v, d) => Math.abs(mesh.xyz[3 * i + d] - v) < tolerance / 2))
      .sort((a, b) => a - b);
  };
  return Int32Array.from({ length: n }, (_, i) => {
    const [x, y, z] = [mesh.xyz[3 * i], mesh.xyz[3 * i + 1], mesh.xyz[3 * i + 2]];
    const there = nodesAt(x, 2 * middle - y, z);
    return there.length < 2 ? (there[0] ?? -1) : (there[nodesAt(x, y, z).indexOf(i)] ?? -1);
  });
}

/** Words for tables; empty where the frame or the mode has no such symmetry. */
export function leftRightSymmetry(shape: Float64Array, pairs: Int32Array): string {
  const moves = overlap(shape, pairs, 0);
  const turns = overlap(shape, pairs, 3);
  // Where straight members twist alone, what nodes move is rounding.
  const { same, total } = moves.total > STILL * STILL * turns.total ? moves : turns;
  if (total === 0) return "";
  const c = same / total;
  if (c > CLEAR) return "symmetric left to right";
  return c < -CLEAR ? "antisymmetric left to right" : "";
}

/** The shape times its mirror image, and times itself, over translations (first = 0) or rotations (3). */
function overlap(shape: Float64Array, pairs: Int32Array, first: 0 | 3) {
  let same = 0;
  let total = 0;
  for (let i = 0; i < pairs.length; i++) {
    for (let d = first; d < first + 3; d++) {
      const u = shape[6 * i + d];
      total += u * u;
      if (pairs[i] >= 0) same += u * MIRROR[d] * shape[6 * pairs[i] + d];
    }
  }
  return { same, total };
}
