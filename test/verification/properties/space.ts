/** Turning and mirroring in space: 3 x 3 orthogonal matrices, row by row. */

import type fc from "fast-check";
import { tuple } from "fast-check";
import { whole } from "./runs.ts";

export type Vec3 = readonly [number, number, number];
export type Orthogonal = readonly [Vec3, Vec3, Vec3];

/** Of a rigid body about its centre of gravity; tensor entries, xy = -integral of x y dm. */
export type Inertia = Readonly<Record<"xx" | "yy" | "zz" | "xy" | "xz" | "yz", number>>;

export const MIRROR_X: Orthogonal = [
  [-1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];
export const MIRROR_Y: Orthogonal = [
  [1, 0, 0],
  [0, -1, 0],
  [0, 0, 1],
];

/** Turns about x, then y, then z, of whole degrees. */
export const rotation: fc.Arbitrary<Orthogonal> = tuple(
  whole(-180, 180),
  whole(-90, 90),
  whole(-180, 180),
).map(([a, b, c]) => turned(a, b, c));

/** The turn by `a` deg about x, then `b` deg about y, then `c` deg about z. */
export function turned(a: number, b: number, c: number): Orthogonal {
  const [ca, cb, cc] = [a, b, c].map((v) => Math.cos((v * Math.PI) / 180));
  const [sa, sb, sc] = [a, b, c].map((v) => Math.sin((v * Math.PI) / 180));
  return [
    [cc * cb, cc * sb * sa - sc * ca, cc * sb * ca + sc * sa],
    [sc * cb, sc * sb * sa + cc * ca, sc * sb * ca - cc * sa],
    [-sb, cb * sa, cb * ca],
  ];
}

/** Q v. */
export function apply(Q: Orthogonal, v: Vec3): Vec3 {
  const row = (i: 0 | 1 | 2) => Q[i][0] * v[0] + Q[i][1] * v[1] + Q[i][2] * v[2];
  return [row(0), row(1), row(2)];
}

/** +1 for a rotation, -1 where left and right change places. */
export function determinant([a, b, c]: Orthogonal): number {
  return (
    a[0] * (b[1] * c[2] - b[2] * c[1]) -
    a[1] * (b[0] * c[2] - b[2] * c[0]) +
    a[2] * (b[0] * c[1] - b[1] * c[0])
  );
}

/** Q I Q', the tensor of a body that is turned or mirrored. */
export function turnInertia(Q: Orthogonal, I: Inertia): Inertia {
  const rows = [
    [I.xx, I.xy, I.xz],
    [I.xy, I.yy, I.yz],
    [I.xz, I.yz, I.zz],
  ];
  const entry = (i: 0 | 1 | 2, j: 0 | 1 | 2) => {
    let sum = 0;
    for (const k of [0, 1, 2]) for (const l of [0, 1, 2]) sum += Q[i][k] * rows[k][l] * Q[j][l];
    return sum;
  };
  return {
    xx: entry(0, 0),
    yy: entry(1, 1),
    zz: entry(2, 2),
    xy: entry(0, 1),
    xz: entry(0, 2),
    yz: entry(1, 2),
  };
}

/** Of equal point masses at r and -r, which make every principal axis and product there is. */
export function inertiaOfPairs(mass: number, places: readonly Vec3[]): Inertia {
  const sum = (f: (r: Vec3) => number) =>
    places.reduce((total, r) => total + (mass / places.length) * f(r), 0);
  return {
    xx: sum(([, y, z]) => y * y + z * z),
    yy: sum(([x, , z]) => x * x + z * z),
    zz: sum(([x, y]) => x * x + y * y),
    xy: sum(([x, y]) => -x * y),
    xz: sum(([x, , z]) => -x * z),
    yz: sum(([, y, z]) => -y * z),
  };
}

export function plus(a: Vec3, b: Vec3): Vec3 {
  return [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
}

export function minus(a: Vec3, b: Vec3): Vec3 {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}
