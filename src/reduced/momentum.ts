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

/** The six motions at some unknowns of the mesh (their number x 6, column-major). */
export function rawMotions(xyz: Float64Array, about: Vec3, dofs: Int32Array): Float64Array {
  const m = dofs.length;
  const R = new Float64Array(6 * m);
  dofs.forEach((dof, i) => {
    const node = Math.floor(dof / 6);
    const d = dof % 6;
    R[d * m + i] = 1;
    if (d > 2) return;
    // u = theta x r: along d by turning about the next axis but one, and about the next
    const [p, q] = [(d + 1) % 3, (d + 2) % 3];
    R[(3 + p) * m + i] = xyz[3 * node + q] - about[q];
    R[(3 + q) * m + i] = about[p] - xyz[3 * node + p];
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
