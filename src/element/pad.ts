/**
 * A pad between a plate cell and a rigid body: an even layer of springs over part of the cell, each
 * between the plate's face and the body's rigid motion at that point. Because the springs are spread,
 * rocking stiffness needs no number of its own.
 */

/** Integration points of the part of a cell that a pad covers (each array of one length). */
export interface PadPoints {
  /** place in the cell, 0..1 along x and y */
  readonly s: Float64Array;
  readonly t: Float64Array;
  /** place in the plan, m */
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** share of the whole pad's area */
  readonly w: Float64Array;
}

/** Functions of place: N1..N4 of the cell's corners, then 1, x, y from the body's reference point. */
const ONE = 4;
const X = 5;
const Y = 6;

/** What a term of a displacement grows with: nothing, or one of the two heights of `padMatrix`. */
const PLAIN = 0;
const FACE = 1;
const REACH = 2;
export type PadHeight = typeof PLAIN | typeof FACE | typeof REACH;

/** One term of a relative displacement: unknown, which of the seven functions, sign, height. */
type Term = readonly [dof: number, f: number, sign: number, height: PadHeight];

const corners = (f: (i: number) => readonly Term[]) => [0, 1, 2, 3].flatMap(f);

/** Along x, y and z: d = u + theta x (0, 0, face) of the plate - (u + theta x r) of the body. */
const DISPLACEMENT: readonly (readonly Term[])[] = [
  [
    ...corners((i) => [
      [6 * i, i, 1, PLAIN],
      [6 * i + 4, i, 1, FACE],
    ]),
    [24, ONE, -1, PLAIN],
    [28, ONE, -1, REACH],
    [29, Y, 1, PLAIN],
  ],
  [
    ...corners((i) => [
      [6 * i + 1, i, 1, PLAIN],
      [6 * i + 3, i, -1, FACE],
    ]),
    [25, ONE, -1, PLAIN],
    [27, ONE, 1, REACH],
    [29, X, -1, PLAIN],
  ],
  [
    ...corners((i) => [[6 * i + 2, i, 1, PLAIN]]),
    [26, ONE, -1, PLAIN],
    [27, Y, -1, PLAIN],
    [28, X, 1, PLAIN],
  ],
];

/**
 * 30 x 30 row-major: six unknowns of each corner of the cell, anticlockwise, then of the body.
 *
 * @param k kx ky kz of the whole pad, N/m
 * @param body the body's reference point, m
 * @param contact height of the face the pad lies on, m
 * @param face the same from the plate's mid-plane, m
 */
export function padMatrix(
  k: ArrayLike<number>,
  points: PadPoints,
  body: ArrayLike<number>,
  contact: number,
  face: number,
): Float64Array {
  const G = gram(points, body[0], body[1]);
  const heights = [1, face, contact - body[2]];
  const K = new Float64Array(900);
  DISPLACEMENT.forEach((terms, axis) => {
    for (const [p, f, c, h] of terms) {
      for (const [q, g, e, i] of terms) {
        K[30 * p + q] += k[axis] * (c * heights[h]) * (e * heights[i]) * G[7 * f + g];
      }
    }
  });
  return K;
}

/** A constant of a pad that its matrix is linear in: the stiffness along an axis times two heights. */
export interface PadTerm {
  readonly axis: 0 | 1 | 2;
  readonly heights: readonly [PadHeight, PadHeight];
}

/** All that are not zero: nothing of the stiffness along z grows with a height. */
export const PAD_TERMS: readonly PadTerm[] = [
  ...([0, 1] as const).flatMap((axis) =>
    ([PLAIN, FACE, REACH] as const).flatMap((a) =>
      ([PLAIN, FACE, REACH] as const)
        .filter((b) => b >= a)
        .map((b) => ({ axis, heights: [a, b] as const })),
    ),
  ),
  { axis: 2, heights: [PLAIN, PLAIN] },
];

/** The constant itself; `padMatrix` is the sum of these times `padUnit` of each. */
export function padConstant(
  { axis, heights: [a, b] }: PadTerm,
  k: ArrayLike<number>,
  face: number,
  reach: number,
): number {
  const heights = [1, face, reach];
  return k[axis] * heights[a] * heights[b];
}

/** @param body its x and y, m */
export function padUnit(
  { axis, heights: [a, b] }: PadTerm,
  points: PadPoints,
  body: ArrayLike<number>,
): Float64Array {
  const G = gram(points, body[0], body[1]);
  const K = new Float64Array(900);
  for (const [p, f, c, h] of DISPLACEMENT[axis]) {
    for (const [q, g, e, i] of DISPLACEMENT[axis]) {
      if ((h === a && i === b) || (h === b && i === a)) K[30 * p + q] += c * e * G[7 * f + g];
    }
  }
  return K;
}

/** Integrals of the products of the seven functions over the piece (7 x 7). */
function gram({ s, t, x, y, w }: PadPoints, bx: number, by: number): Float64Array {
  const G = new Float64Array(49);
  const f = new Float64Array(7);
  f[ONE] = 1;
  for (let k = 0; k < w.length; k++) {
    f[0] = (1 - s[k]) * (1 - t[k]);
    f[1] = s[k] * (1 - t[k]);
    f[2] = s[k] * t[k];
    f[3] = (1 - s[k]) * t[k];
    f[X] = x[k] - bx;
    f[Y] = y[k] - by;
    for (let i = 0; i < 7; i++) {
      for (let j = 0; j <= i; j++) G[7 * i + j] += w[k] * f[i] * f[j];
    }
  }
  for (let i = 0; i < 7; i++) for (let j = 0; j < i; j++) G[7 * j + i] = G[7 * i + j];
  return G;
}
