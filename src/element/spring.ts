/** Springs between two coincident nodes, or between a node and the ground. */

/** Local stiffnesses kx ky kz (N/m), krx kry krz (N m/rad). */
export type SpringConstants = ArrayLike<number>;

/** 12 x 12 row-major in local axes: k (u2 - u1)^2 / 2 on each of the six motions. */
export function springMatrix(k: SpringConstants): Float64Array {
  const K = new Float64Array(144);
  for (let i = 0; i < 6; i++) {
    const j = i + 6;
    K[13 * i] = k[i];
    K[13 * j] = k[i];
    K[12 * i + j] = -k[i];
    K[12 * j + i] = -k[i];
  }
  return K;
}

/** 6 x 6 row-major: a spring to the ground. */
export function groundSpringMatrix(k: SpringConstants): Float64Array {
  const K = new Float64Array(36);
  for (let i = 0; i < 6; i++) K[7 * i] = k[i];
  return K;
}
