/** Directions in space and the turning of element matrices into them. */

/** Rows are the local axes in global components (3 x 3, row-major): local = R global. */
export type Rotation = Float64Array;

/**
 * Local axes of a member: x along it, z as near to `up` as a right angle to x allows.
 *
 * @throws RangeError when the ends coincide or `up` is parallel to the member
 */
export function memberAxes(axis: ArrayLike<number>, up: ArrayLike<number>): Rotation {
  const L = Math.hypot(axis[0], axis[1], axis[2]);
  const x = [axis[0] / L, axis[1] / L, axis[2] / L];
  // y = up x x, z = x x y
  const y = [up[1] * x[2] - up[2] * x[1], up[2] * x[0] - up[0] * x[2], up[0] * x[1] - up[1] * x[0]];
  const n = Math.hypot(y[0], y[1], y[2]) / Math.hypot(up[0], up[1], up[2]);
  if (!(L > 0) || !(n > 1e-9))
    throw new RangeError("the member has no length or runs along its up");
  const scale = 1 / Math.hypot(y[0], y[1], y[2]);
  for (let i = 0; i < 3; i++) y[i] *= scale;
  return Float64Array.of(
    x[0],
    x[1],
    x[2],
    y[0],
    y[1],
    y[2],
    x[1] * y[2] - x[2] * y[1],
    x[2] * y[0] - x[0] * y[2],
    x[0] * y[1] - x[1] * y[0],
  );
}

export const IDENTITY: Rotation = Float64Array.of(1, 0, 0, 0, 1, 0, 0, 0, 1);

/** A turned into global axes, R' A R on each 3 x 3 block; n is a multiple of 3. */
export function toGlobal(A: Float64Array, n: number, R: Rotation): Float64Array {
  const half = new Float64Array(n * n); // A R
  for (let i = 0; i < n; i++) {
    for (let b = 0; b < n; b += 3) {
      for (let j = 0; j < 3; j++) {
        half[n * i + b + j] =
          A[n * i + b] * R[j] + A[n * i + b + 1] * R[3 + j] + A[n * i + b + 2] * R[6 + j];
      }
    }
  }
  const out = new Float64Array(n * n); // R' (A R)
  for (let b = 0; b < n; b += 3) {
    for (let i = 0; i < 3; i++) {
      for (let j = 0; j < n; j++) {
        out[n * (b + i) + j] =
          R[i] * half[n * b + j] +
          R[3 + i] * half[n * (b + 1) + j] +
          R[6 + i] * half[n * (b + 2) + j];
      }
    }
  }
  return out;
}

/** u in local axes, block by block: out = R u; length a multiple of 3. */
export function toLocal(u: ArrayLike<number>, R: Rotation): Float64Array {
  const out = new Float64Array(u.length);
  for (let b = 0; b < u.length; b += 3) {
    for (let i = 0; i < 3; i++) {
      out[b + i] = R[3 * i] * u[b] + R[3 * i + 1] * u[b + 1] + R[3 * i + 2] * u[b + 2];
    }
  }
  return out;
}
