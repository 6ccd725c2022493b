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

/** One term of a relative displacement: unknown, which of the seven functions below, factor. */
type Term = readonly [dof: number, f: number, c: number];

/** Functions of place: N1..N4 of the cell's corners, then 1, x, y from the body's reference point. */
const ONE = 4;
const X = 5;
const Y = 6;

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
  const z = contact - body[2];
  const corners = (f: (i: number) => Term[]) => [0, 1, 2, 3].flatMap(f);
  // d = u + theta x (0, 0, face) of the plate - (u + theta x r) of the body
  const d: Term[][] = [
    [
      ...corners((i) => [
        [6 * i, i, 1],
        [6 * i + 4, i, face],
      ]),
      [24, ONE, -1],
      [28, ONE, -z],
      [29, Y, 1],
    ],
    [
      ...corners((i) => [
        [6 * i + 1, i, 1],
        [6 * i + 3, i, -face],
      ]),
      [25, ONE, -1],
      [27, ONE, z],
      [29, X, -1],
    ],
    [...corners((i) => [[6 * i + 2, i, 1]]), [26, ONE, -1], [27, Y, -1], [28, X, 1]],
  ];
  const K = new Float64Array(900);
  d.forEach((terms, axis) => {
    for (const [p, f, c] of terms) {
      for (const [q, g, e] of terms) K[30 * p + q] += k[axis] * c * e * G[7 * f + g];
    }
  });
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
