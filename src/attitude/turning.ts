/** A body that turns about axes of its own, step by step. */

import { IDENTITY, type Rotation } from "../element/rotation.ts";
import type { Vec3 } from "../model/types.ts";

/**
 * The body axes after a time t of constant angular acceleration along the body axes.
 *
 *   R(t) = exp(-[v]x) R,  v = omega t + alpha t^2/2 + (omega x alpha) t^3/12
 *
 * Exact where omega and alpha are parallel; else the error of a step is of order t^5 (W. Magnus, "On
 * the exponential solution of differential equations for a linear operator", Comm. Pure Appl. Math. 7,
 * 1954, two terms; from memory).
 *
 * @param R rows are the body axes at the start of the step, in a frame that stands still
 * @param omega rate at the start of the step, along the body axes, rad/s
 */
export function turnBody(R: Rotation, omega: Vec3, alpha: Vec3, t: number): Rotation {
  const [a, b, c] = [t, (t * t) / 2, (t * t * t) / 12];
  const v = [
    a * omega[0] + b * alpha[0] + c * (omega[1] * alpha[2] - omega[2] * alpha[1]),
    a * omega[1] + b * alpha[1] + c * (omega[2] * alpha[0] - omega[0] * alpha[2]),
    a * omega[2] + b * alpha[2] + c * (omega[0] * alpha[1] - omega[1] * alpha[0]),
  ];
  return product(backwards(v), R);
}

/** u of the body in the frame that stands still: R' u. */
export function toStill(u: Vec3, R: Rotation): Vec3 {
  return [0, 1, 2].map((j) => R[j] * u[0] + R[3 + j] * u[1] + R[6 + j] * u[2]) as unknown as Vec3;
}

/** exp(-[v]x) = I - sin [k]x + (1 - cos) [k]x^2 with v = angle k (Rodrigues), row-major. */
function backwards(v: readonly number[]): Rotation {
  const angle = Math.hypot(v[0], v[1], v[2]);
  if (angle === 0) return IDENTITY;
  const [x, y, z] = [v[0] / angle, v[1] / angle, v[2] / angle];
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const d = 2 * Math.sin(angle / 2) ** 2; // 1 - cos
  return Float64Array.of(
    c + d * x * x,
    d * x * y + s * z,
    d * x * z - s * y,
    d * x * y - s * z,
    c + d * y * y,
    d * y * z + s * x,
    d * x * z + s * y,
    d * y * z - s * x,
    c + d * z * z,
  );
}

/** A B, 3 x 3, row-major. */
function product(A: Rotation, B: Rotation): Rotation {
  const C = new Float64Array(9);
  for (let i = 0; i < 3; i++) {
    for (let j = 0; j < 3; j++) {
      C[3 * i + j] = A[3 * i] * B[j] + A[3 * i + 1] * B[3 + j] + A[3 * i + 2] * B[6 + j];
    }
  }
  return C;
}

/** Nearer to upside down no way is the shortest. */
const UPSIDE_DOWN = 1e-12;

/**
 * u turned by the shortest way that takes p upright, to (0, 0, 1); about x where p is upside down.
 *
 *   R u = z + R d,  d = u - p,  R d = d + k x d + k x (k x d)/(1 + p_z),  k = p x z (Rodrigues)
 *
 * @param p of length 1; where u is the same, exactly (0, 0, 1) comes out
 */
export function uprighted(u: Vec3, p: Vec3): Vec3 {
  const [x, y, z] = [u[0] - p[0], u[1] - p[1], u[2] - p[2]];
  const s = 1 + p[2];
  if (s < UPSIDE_DOWN) return [x, -y, 1 - z];
  // k = (p_y, -p_x, 0), c = k x d
  const c = [-p[0] * z, -p[1] * z, p[1] * y + p[0] * x];
  return [
    x + c[0] - (p[0] * c[2]) / s,
    y + c[1] - (p[1] * c[2]) / s,
    1 + z + c[2] + (p[1] * c[1] + p[0] * c[0]) / s,
  ];
}
