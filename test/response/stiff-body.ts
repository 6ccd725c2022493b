/** A craft that does not bend, in numbers. */

import type { MassProperties } from "../../src/matrices/mass.ts";
import type { Vec3 } from "../../src/model/types.ts";

export const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

const dot = (a: Vec3, b: Vec3) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const plus = (a: Vec3, b: Vec3): Vec3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const minus = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];

/** A force at a point with a couple, as moment about the centre of gravity. */
export function moment({ cg }: MassProperties, at: Vec3, force: Vec3, couple: Vec3): Vec3 {
  return plus(cross(minus(at, cg), force), couple);
}

/** Angular acceleration J^-1 M, by Cramer's rule. */
export function angularAcceleration({ inertia }: MassProperties, M: Vec3): Vec3 {
  const { xx, yy, zz, xy, xz, yz } = inertia;
  const [a, b, c]: readonly Vec3[] = [
    [xx, xy, xz],
    [xy, yy, yz],
    [xz, yz, zz],
  ];
  const det = dot(a, cross(b, c));
  return [dot(M, cross(b, c)) / det, dot(M, cross(c, a)) / det, dot(M, cross(a, b)) / det];
}
