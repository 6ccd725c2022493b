/** A rigid body carried by a node: 6 x 6 mass matrix, centre of gravity off the node allowed. */

/** Inertia tensor about the centre of gravity, kg m^2; products as tensor entries (Ixy = -int x y dm). */
export interface Inertia {
  readonly xx: number;
  readonly yy: number;
  readonly zz: number;
  readonly xy: number;
  readonly xz: number;
  readonly yz: number;
}

/** Uniform box with sides lx, ly, lz (m). */
export function boxInertia(m: number, lx: number, ly: number, lz: number): Inertia {
  return {
    xx: (m * (ly * ly + lz * lz)) / 12,
    yy: (m * (lx * lx + lz * lz)) / 12,
    zz: (m * (lx * lx + ly * ly)) / 12,
    xy: 0,
    xz: 0,
    yz: 0,
  };
}

/** Parallel axes: inertia about a point from which the centre of gravity lies at r (m). */
export function shiftInertia(I: Inertia, m: number, r: ArrayLike<number>): Inertia {
  const [x, y, z] = [r[0], r[1], r[2]];
  return {
    xx: I.xx + m * (y * y + z * z),
    yy: I.yy + m * (x * x + z * z),
    zz: I.zz + m * (x * x + y * y),
    xy: I.xy - m * x * y,
    xz: I.xz - m * x * z,
    yz: I.yz - m * y * z,
  };
}

/**
 * M = [m 1, -m [r]x; m [r]x, I_node], row-major: kinetic energy of the velocity v + w x r plus spin.
 *
 * @param r from the node to the centre of gravity, m
 */
export function rigidMass(m: number, I: Inertia, r: ArrayLike<number>): Float64Array {
  const [x, y, z] = [r[0], r[1], r[2]];
  const J = shiftInertia(I, m, r);
  // biome-ignore format: matrix layout
  return Float64Array.of(
    m, 0, 0, 0, m * z, -m * y,
    0, m, 0, -m * z, 0, m * x,
    0, 0, m, m * y, -m * x, 0,
    0, -m * z, m * y, J.xx, J.xy, J.xz,
    m * z, 0, -m * x, J.xy, J.yy, J.yz,
    -m * y, m * x, 0, J.xz, J.yz, J.zz,
  );
}
