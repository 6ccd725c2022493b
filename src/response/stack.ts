/**
 * The stack as it moves on its seat: screwed down it follows, on isolators it lags.
 *
 * With the mass matrix M about the stack's centre of gravity and the isolators' K (1 + i eta), the
 * seat's motion b gives the stack's s:
 *
 *   (K (1 + i eta) - omega^2 M) s = K (1 + i eta) b
 *
 * In the coordinates y = V' sqrt(M), V the eigenvectors of M^-1/2 K M^-1/2, every motion stands alone:
 * s_i = tau_i b_i with tau_i = kappa_i (1 + i eta)/(kappa_i (1 + i eta) - omega^2), and the six
 * sqrt(kappa_i) are the mount's natural frequencies on a rigid base. Screwed down, tau = 1.
 */

import { symmetricEigen } from "../linalg/dense.ts";
import type { StackDynamics } from "./mount-stiffness.ts";

/** The six natural coordinates of a stack. */
export interface StackCoordinates {
  /** y = W u, u the motion at the centre of gravity (6 x 6, row-major) */
  readonly W: Float64Array;
  /** u = W^-1 y */
  readonly back: Float64Array;
  /** squares of the mount's natural frequencies, rad^2/s^2; infinite when screwed down (size 6) */
  readonly kappa: Float64Array;
  readonly lossFactor: number;
}

/** @throws RangeError unless mass and inertia lie above zero */
export function stackCoordinates({ M, K, lossFactor }: StackDynamics): StackCoordinates {
  if (!M.every((m) => m > 0 && Number.isFinite(m))) {
    throw new RangeError(`a stack needs mass and inertia above zero, not ${M.join(", ")}`);
  }
  const root = M.map(Math.sqrt);
  const V = new Float64Array(36); // eigenvectors, one per row
  const kappa = new Float64Array(6).fill(Number.POSITIVE_INFINITY);
  if (K) {
    const scaled = K.map((k, i) => k / (root[Math.floor(i / 6)] * root[i % 6]));
    const { values, vectors } = symmetricEigen(scaled, 6);
    kappa.set(values);
    V.set(vectors);
  } else for (let i = 0; i < 6; i++) V[7 * i] = 1;
  const W = V.map((v, i) => v * root[i % 6]); // V' sqrt(M)
  const back = Float64Array.from({ length: 36 }, (_, i) => {
    const [row, column] = [Math.floor(i / 6), i % 6];
    return V[6 * column + row] / root[row]; // M^-1/2 V
  });
  return { W, back, kappa, lossFactor };
}
