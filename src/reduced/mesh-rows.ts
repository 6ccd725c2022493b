/** How the vectors of the space and the probes move the mesh, unknown by unknown. */

import type { Reduction } from "../matrices/reduction.ts";
import type { Space } from "./space.ts";

/** Rows of T [V W], one after the other (rows x all, row-major). */
export interface MeshRows {
  /** width + probes */
  readonly all: number;
  /** by unknown of the mesh, on the base's ties */
  readonly base: Float64Array;
  /** how much more some unknowns move on a variant's ties */
  readonly more: Float64Array;
  /** by unknown of the mesh: its number among those, -1 where its ties stay */
  readonly moreNumber: Int32Array;
}

/** On the base's ties. */
export function baseRows({ full, ptr, col, coef }: Reduction, space: Space): MeshRows {
  const { n, V, width, W, probes } = space;
  const all = width + probes;
  const base = new Float64Array(full * all);
  for (let c = 0; c < all; c++) {
    const of = c < width ? V : W;
    const start = (c < width ? c : c - width) * n;
    for (let i = 0; i < full; i++) {
      let sum = 0;
      for (let k = ptr[i]; k < ptr[i + 1]; k++) sum += coef[k] * of[start + col[k]];
      base[i * all + c] = sum;
    }
  }
  return { all, base, more: new Float64Array(0), moreNumber: new Int32Array(full).fill(-1) };
}

/**
 * The same with a variant's ties. What remains as an unknown is the same on both.
 *
 * @param moved by unknown of the mesh: 1 where its ties differ
 */
export function variantRows(
  { all, base }: MeshRows,
  { ptr, col, coef, masters }: Reduction,
  moved: Uint8Array,
): MeshRows {
  const moreNumber = new Int32Array(moved.length).fill(-1);
  let count = 0;
  moved.forEach((m, dof) => {
    if (m) moreNumber[dof] = count++;
  });
  const more = new Float64Array(count * all);
  moreNumber.forEach((number, dof) => {
    if (number < 0) return;
    const to = number * all;
    for (let j = 0; j < all; j++) more[to + j] = -base[dof * all + j];
    for (let k = ptr[dof]; k < ptr[dof + 1]; k++) {
      const from = masters[col[k]] * all;
      const c = coef[k];
      for (let j = 0; j < all; j++) more[to + j] += c * base[from + j];
    }
  });
  return { all, base, more, moreNumber };
}

/** First columns of the rows at some unknowns of the mesh (their number x columns, column-major). */
export function rowsAt(rows: MeshRows, dofs: Int32Array, columns: number): Float64Array {
  const out = baseRowsAt(rows, dofs, columns);
  addMore(out, rows, dofs, columns, 1);
  return out;
}

/** The same on the base's ties. */
export function baseRowsAt({ all, base }: MeshRows, dofs: Int32Array, columns: number) {
  const m = dofs.length;
  const out = new Float64Array(m * columns);
  dofs.forEach((dof, i) => {
    const from = dof * all;
    for (let c = 0; c < columns; c++) out[c * m + i] = base[from + c];
  });
  return out;
}

/** out += share of what the variant's ties move more. */
export function addMore(
  out: Float64Array,
  { all, more, moreNumber }: MeshRows,
  dofs: Int32Array,
  columns: number,
  share: number,
): void {
  const m = dofs.length;
  dofs.forEach((dof, i) => {
    if (moreNumber[dof] < 0) return;
    const from = moreNumber[dof] * all;
    for (let c = 0; c < columns; c++) out[c * m + i] += share * more[from + c];
  });
}

/** Whether the ties of any unknown of a node differ. */
export function hasMoved({ moreNumber }: MeshRows, node: number): boolean {
  for (let dof = 6 * node; dof < 6 * node + 6; dof++) if (moreNumber[dof] >= 0) return true;
  return false;
}
