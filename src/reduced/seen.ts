/**
 * An exchange as seen in the space. With U the rows of the space on the base's ties, D by how much the
 * elements' matrices differ, dU how much more the ties of the variant move, and A all that the variant has
 * on what they move:
 *
 *   U'D U + dU'Z + Z'dU,   Z = A (U + dU/2)
 *
 * Ties move few unknowns, so dU has few rows, however many elements hang on them.
 */

import type { Vec3 } from "../model/types.ts";
import { addMore, baseRowsAt, type MeshRows } from "./mesh-rows.ts";
import type { MeshSum } from "./mesh-sum.ts";
import { momentumOf, rawMotions } from "./momentum.ts";
import { productOf, symmetricProduct } from "./projection.ts";
import type { Space } from "./space.ts";

/** Rows of one kind of matrices of an exchange, the same for each of the sums. */
export interface Seen {
  readonly differing: MeshSum;
  readonly hanging: MeshSum;
  /** U where the elements differ */
  readonly rows: Float64Array;
  /** U + dU/2 where they hang */
  readonly halfWay: Float64Array;
  /** dU where they hang and it is not zero, and which of those unknowns these are */
  readonly more: Float64Array;
  readonly moved: Int32Array;
}

export function seenBy(rows: MeshRows, differing: MeshSum, hanging: MeshSum): Seen {
  const { all, moreNumber } = rows;
  const at = hanging.unknowns;
  const moved = Int32Array.from(at.keys()).filter((i) => moreNumber[at[i]] >= 0);
  const halfWay = baseRowsAt(rows, at, all);
  addMore(halfWay, rows, at, all, 0.5);
  const more = new Float64Array(moved.length * all);
  addMore(
    more,
    rows,
    moved.map((i) => at[i]),
    all,
    1,
  );
  return {
    differing,
    hanging,
    rows: baseRowsAt(rows, differing.unknowns, all),
    halfWay,
    more,
    moved,
  };
}

/**
 * @param which of the sums
 * @returns packed
 */
export function seenSum(
  space: Pick<Space, "width" | "probes">,
  { differing, hanging, rows, halfWay, more, moved }: Seen,
  which: number,
): Float64Array {
  const { width, probes } = space;
  const D = differing.sums[which];
  const m = D.pattern.n;
  const DU = productOf(D, rows, width);
  const Z = productOf(hanging.sums[which], halfWay, width + probes);
  const n = hanging.unknowns.length;
  const k = moved.length;
  const total = m + 2 * k;
  const X = new Float64Array(total * (width + probes));
  const Y = new Float64Array(total * width);
  for (let c = 0; c < width + probes; c++) {
    const at = c * total;
    for (let i = 0; i < m; i++) X[at + i] = rows[c * m + i];
    for (let i = 0; i < k; i++) {
      X[at + m + i] = more[c * k + i];
      X[at + m + k + i] = Z[c * n + moved[i]];
    }
    if (c >= width) continue;
    for (let i = 0; i < m; i++) Y[at + i] = DU[c * m + i];
    for (let i = 0; i < k; i++) {
      Y[at + m + i] = Z[c * n + moved[i]];
      Y[at + m + k + i] = more[c * k + i];
    }
  }
  return symmetricProduct(space, X, Y, total);
}

/** [V W]'M R of the mass of an exchange, see momentum.ts. */
export function seenMomentum(
  { differing, hanging, rows, more, moved }: Seen,
  all: number,
  xyz: Float64Array,
  about: Vec3,
): Float64Array {
  const out = momentumOf(differing.sums[0], rows, all, rawMotions(xyz, about, differing.unknowns));
  const MR = productOf(hanging.sums[0], rawMotions(xyz, about, hanging.unknowns), 6);
  const n = hanging.unknowns.length;
  const k = moved.length;
  for (let c = 0; c < all; c++) {
    for (let r = 0; r < 6; r++) {
      let sum = 0;
      for (let i = 0; i < k; i++) sum += more[c * k + i] * MR[r * n + moved[i]];
      out[6 * c + r] += sum;
    }
  }
  return out;
}
