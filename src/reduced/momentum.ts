/**
 * [V W]'M R with the rigid motions R of the mesh: what the vectors of the space have of a variant's rigid
 * motions. The six are taken about a point that all variants share, ux uy uz rx ry rz.
 *
 * Ties do not hinder a rigid motion, so R is known at every node from where the node is. (The shares of
 * elements on ties that a variant moved cancel, whatever R is there on the base's.)
 */

import type { SymmetricSparse } from "../linalg/sparse.ts";
import { innerProducts } from "../linalg/tall.ts";
import type { Vec3 } from "../model/types.ts";
import { productOf } from "./projection.ts";

/** The six motions at some nodes (6 * nodes x 6, column-major). */
export function rawMotions(xyz: Float64Array, about: Vec3, nodes: Int32Array): Float64Array {
  const m = 6 * nodes.length;
  const R = new Float64Array(6 * m);
  nodes.forEach((node, p) => {
    const [x, y, z] = [0, 1, 2].map((k) => xyz[3 * node + k] - about[k]);
    const at = 6 * p;
    for (let k = 0; k < 6; k++) R[k * m + at + k] = 1;
    // u = theta x r
    R[3 * m + at + 1] = -z;
    R[3 * m + at + 2] = y;
    R[4 * m + at] = z;
    R[4 * m + at + 2] = -x;
    R[5 * m + at] = -y;
    R[5 * m + at + 1] = x;
  });
  return R;
}

/**
 * @param rows of V and W (order of M x all, column-major)
 * @param R order of M x 6, column-major
 * @returns all x 6, row-major
 */
export function momentumOf(
  M: SymmetricSparse,
  rows: Float64Array,
  all: number,
  R: Float64Array,
): Float64Array {
  const out = new Float64Array(all * 6);
  innerProducts(out, rows, all, productOf(M, R, 6), 6, M.pattern.n);
  return out;
}

/** The momentum of what is moved by d as a whole: theta x (r + d). */
export function shifted(momentum: Float64Array, [x, y, z]: Vec3): Float64Array {
  const out = momentum.slice();
  for (let i = 0; i < out.length; i += 6) {
    const px = momentum[i];
    const py = momentum[i + 1];
    const pz = momentum[i + 2];
    out[i + 3] += y * pz - z * py;
    out[i + 4] += z * px - x * pz;
    out[i + 5] += x * py - y * px;
  }
  return out;
}
