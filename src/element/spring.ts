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

/**
 * 12 x 12 row-major, unknowns of a plate node then of a body: springs between the node's displacement
 * and the body's rigid motion at the node, d = u_node - (u_body + theta_body x r); the node's rotations
 * take no part.
 *
 * @param k kx ky kz, N/m
 * @param r from the body's reference point to the node, m
 */
export function padMatrix(k: ArrayLike<number>, r: ArrayLike<number>): Float64Array {
  const [x, y, z] = [r[0], r[1], r[2]];
  // biome-ignore format: matrix layout
  const rows = [
    [1, 0, 0, 0, 0, 0, -1, 0, 0, 0, -z, y],
    [0, 1, 0, 0, 0, 0, 0, -1, 0, z, 0, -x],
    [0, 0, 1, 0, 0, 0, 0, 0, -1, -y, x, 0],
  ];
  const K = new Float64Array(144);
  rows.forEach((row, d) => {
    for (let i = 0; i < 12; i++)
      for (let j = 0; j < 12; j++) K[12 * i + j] += k[d] * row[i] * row[j];
  });
  return K;
}
