/** Rotations of a body as matrices, to hold kinematics to. */

import fc from "fast-check";
import type { Vec3 } from "../../src/model/types.ts";
import { between } from "../filter/filter-orders.ts";

/** Three rows. */
export type Matrix3 = readonly [Vec3, Vec3, Vec3];

export const vector = (size: number): fc.Arbitrary<Vec3> =>
  fc.tuple(between(-size, size), between(-size, size), between(-size, size));

/** By the angle |v| about v, right-handed: I + sin [k]x + (1 - cos) [k]x^2 (Rodrigues' formula). */
export function turn(v: Vec3): Matrix3 {
  const angle = Math.hypot(...v);
  if (angle === 0) {
    return [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ];
  }
  const [x, y, z] = v.map((c) => c / angle);
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const d = 1 - c;
  return [
    [c + d * x * x, d * x * y - s * z, d * x * z + s * y],
    [d * x * y + s * z, c + d * y * y, d * y * z - s * x],
    [d * x * z - s * y, d * y * z + s * x, c + d * z * z],
  ];
}

export function dot(a: Vec3, b: Vec3): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

export function times(R: Matrix3, v: Vec3): Vec3 {
  return [dot(R[0], v), dot(R[1], v), dot(R[2], v)];
}

export function transposed([a, b, c]: Matrix3): Matrix3 {
  return [
    [a[0], b[0], c[0]],
    [a[1], b[1], c[1]],
    [a[2], b[2], c[2]],
  ];
}
