/** How the vectors of the space and the probes move the mesh, unknown by unknown. */

import type { Reduction } from "../matrices/reduction.ts";
import type { Space } from "./space.ts";

/** Rows of T [V W], one after the other (rows x all, row-major). */
export interface MeshRows {
  /** width + probes */
  readonly all: number;
  /** by unknown of the mesh, on the base's ties */
  readonly base: Float64Array;
  /** of nodes whose ties a variant has moved, six for each */
  readonly own: Float64Array;
  /** by node: its number among those, -1 where its ties stay */
  readonly ownNumber: Int32Array;
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
  const ownNumber = new Int32Array(full / 6).fill(-1);
  return { all, base, own: new Float64Array(0), ownNumber };
}

/**
 * The same with a variant's ties. What remains as an unknown is the same on both.
 *
 * @param moved by node: 1 where its ties differ
 */
export function variantRows(
  { all, base }: MeshRows,
  { ptr, col, coef, masters }: Reduction,
  moved: Uint8Array,
): MeshRows {
  const ownNumber = new Int32Array(moved.length).fill(-1);
  let count = 0;
  moved.forEach((m, node) => {
    if (m) ownNumber[node] = count++;
  });
  const own = new Float64Array(6 * count * all);
  ownNumber.forEach((number, node) => {
    if (number < 0) return;
    for (let d = 0; d < 6; d++) {
      const to = (6 * number + d) * all;
      for (let k = ptr[6 * node + d]; k < ptr[6 * node + d + 1]; k++) {
        const from = masters[col[k]] * all;
        const c = coef[k];
        for (let j = 0; j < all; j++) own[to + j] += c * base[from + j];
      }
    }
  });
  return { all, base, own, ownNumber };
}

/** First columns of the rows at some unknowns of the mesh (their number x columns, column-major). */
export function rowsAt(rows: MeshRows, dofs: Int32Array, columns: number): Float64Array {
  const out = new Float64Array(dofs.length * columns);
  dofs.forEach((dof, i) => {
    const number = rows.ownNumber[Math.floor(dof / 6)];
    if (number < 0) put(out, dofs.length, i, rows.base, dof * rows.all, columns);
    else put(out, dofs.length, i, rows.own, (6 * number + (dof % 6)) * rows.all, columns);
  });
  return out;
}

/** All of the rows of nodes on the base's ties or on the variant's: 6 * place + direction, see `placeOf`. */
export function rowsOf(
  { all, base, own, ownNumber }: MeshRows,
  unknowns: Int32Array,
): Float64Array {
  const m = unknowns.length;
  const onBase = 6 * ownNumber.length;
  const out = new Float64Array(m * all);
  unknowns.forEach((u, i) => {
    if (u < onBase) put(out, m, i, base, u * all, all);
    else put(out, m, i, own, (u - onBase) * all, all);
  });
  return out;
}

/** Row i of a column-major matrix. */
function put(
  out: Float64Array,
  m: number,
  i: number,
  from: Float64Array,
  start: number,
  columns: number,
): void {
  for (let c = 0; c < columns; c++) out[c * m + i] = from[start + c];
}

/** A node as it hangs on the variant's ties: its own number where they are the base's. */
export function placeOf({ ownNumber }: MeshRows, node: number): number {
  return ownNumber[node] < 0 ? node : ownNumber.length + ownNumber[node];
}

/** The unknowns of the mesh that these are. */
export function dofsOf({ ownNumber }: MeshRows, unknowns: Int32Array): Int32Array {
  const nodes = new Int32Array(ownNumber.length);
  ownNumber.forEach((number, node) => {
    if (number >= 0) nodes[number] = node;
  });
  const onBase = 6 * ownNumber.length;
  return unknowns.map((u) => (u < onBase ? u : 6 * nodes[Math.floor((u - onBase) / 6)] + (u % 6)));
}
