/** Six-degree stiffness of a stack on soft mounts, and how much of it each motion feels. */

import type { Candidate, Vec3 } from "../model/types.ts";

/**
 * Stiffness of equal mounts that carry a rigid body on a rigid base (size 36, 6 x 6 row-major), for
 * motions ux uy uz rx ry rz of the body's centre of gravity: N/m, N/rad, N m/rad. A mount at r from the
 * centre of gravity stretches by u + theta x r, so with B = [1, -[r]x], K = sum of B' k B. The mounts
 * are points: they resist no rotation by themselves.
 *
 * @param mounts where they bear, m
 * @param axial of one mount along z, N/m
 * @param lateral of one mount along x and y, N/m
 */
export function mountStiffness(
  mounts: readonly Vec3[],
  cg: Vec3,
  axial: number,
  lateral: number,
): Float64Array {
  const K = new Float64Array(36);
  const k = [lateral, lateral, axial];
  for (const mount of mounts) {
    const [x, y, z] = mount.map((v, i) => v - cg[i]);
    // biome-ignore format: matrix layout
    const B = [
      [1, 0, 0, 0, z, -y],
      [0, 1, 0, -z, 0, x],
      [0, 0, 1, y, -x, 0],
    ];
    for (let i = 0; i < 6; i++) {
      for (let j = 0; j < 6; j++) {
        K[6 * i + j] += B.reduce((sum, b, axis) => sum + b[i] * k[axis] * b[j], 0);
      }
    }
  }
  return K;
}

/** A stack as a rigid body that may ride on soft mounts, for motions of its centre of gravity. */
export interface StackDynamics {
  /** Diagonal of the mass matrix: m m m Ixx Iyy Izz (size 6), kg and kg m^2. */
  readonly M: Float64Array;
  /** Real part of the mounts' stiffness K (1 + i lossFactor), 6 x 6 row-major (size 36). */
  readonly K: Float64Array | undefined;
  /** 0 where the stack is screwed down. */
  readonly lossFactor: number;
}

/**
 * The stack of a candidate: one mount at each of its holes, on the face of the plate. Its axes are the
 * frame's; stacks are boxes, so there are no products of inertia. K is undefined when it is screwed down.
 */
export function stackDynamics({ stack, cg, holes, isolators }: Candidate): StackDynamics {
  const { mass: m, inertia } = stack;
  const M = Float64Array.of(m, m, m, inertia.xx, inertia.yy, inertia.zz);
  if (!isolators) return { M, K: undefined, lossFactor: 0 };
  const { axial, lateral, lossFactor, z } = isolators;
  const mounts = holes.map(([x, y]): Vec3 => [x, y, z]);
  return { M, K: mountStiffness(mounts, cg, axial, lateral), lossFactor };
}
