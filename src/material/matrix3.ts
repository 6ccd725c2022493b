/**
 * The few operations on 3 x 3 matrices that lamination theory needs.
 * A matrix is a Float64Array(9), row-major. Written out because a general matrix package costs
 * more time to load than all laminates of a frame take to compute.
 */

import { SolveError } from "../errors.ts";

/** a b. */
export function multiply3(a: Float64Array, b: Float64Array): Float64Array {
  const out = new Float64Array(9);
  for (let i = 0; i < 3; i++) {
    for (let j = 0; j < 3; j++) {
      out[3 * i + j] = a[3 * i] * b[j] + a[3 * i + 1] * b[3 + j] + a[3 * i + 2] * b[6 + j];
    }
  }
  return out;
}

/** a'. */
export function transpose3(a: Float64Array): Float64Array {
  return Float64Array.of(a[0], a[3], a[6], a[1], a[4], a[7], a[2], a[5], a[8]);
}

/** a + factor b. */
export function addScaled3(a: Float64Array, factor: number, b: Float64Array): Float64Array {
  return a.map((value, i) => value + factor * b[i]);
}

/** x' a y for vectors of three. */
export function bilinear3(x: Float64Array, a: Float64Array, y: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < 3; i++) {
    sum += x[i] * (a[3 * i] * y[0] + a[3 * i + 1] * y[1] + a[3 * i + 2] * y[2]);
  }
  return sum;
}

/** Column j of a. */
export function column3(a: Float64Array, j: number): Float64Array {
  return Float64Array.of(a[j], a[3 + j], a[6 + j]);
}

/**
 * Inverse by cofactors. Throws SolveError when the determinant is zero or not finite.
 */
export function inverse3(m: Float64Array): Float64Array {
  const [a, b, c, d, e, f, g, h, i] = m;
  const c0 = e * i - f * h;
  const c1 = f * g - d * i;
  const c2 = d * h - e * g;
  const det = a * c0 + b * c1 + c * c2;
  if (det === 0 || !Number.isFinite(det)) {
    throw new SolveError(
      `A 3 x 3 stiffness matrix cannot be inverted (determinant ${det}); check the moduli of the material.`,
    );
  }
  return Float64Array.of(
    c0 / det,
    (c * h - b * i) / det,
    (b * f - c * e) / det,
    c1 / det,
    (a * i - c * g) / det,
    (c * d - a * f) / det,
    c2 / det,
    (b * g - a * h) / det,
    (a * e - b * d) / det,
  );
}
