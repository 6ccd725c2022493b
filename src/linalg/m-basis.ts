/** M-orthonormal vectors, kept together with M times them. */

import { dot } from "./product.ts";
import { innerProducts, subtractProduct } from "./tall.ts";

/** Grows in place: the first `count` columns are in use. */
export interface MBasis {
  readonly n: number;
  count: number;
  /** V' M V = I (n x capacity, column-major). */
  readonly V: Float64Array;
  /** M V, same layout. */
  readonly MV: Float64Array;
}

/** out = M X for n x columns, column-major. */
export type MassProduct = (out: Float64Array, x: Float64Array, columns: number) => void;

export function emptyBasis(n: number, capacity: number): MBasis {
  return { n, count: 0, V: new Float64Array(n * capacity), MV: new Float64Array(n * capacity) };
}

/** How the new vectors W stood to the basis: W = V C + Q B with Q the columns that were added. */
export interface Extension {
  /** count before x columns, row by row */
  readonly C: Float64Array;
  /** columns x columns, row by row, upper triangular up to dropped rows; `added` rows are used. */
  readonly B: Float64Array;
  readonly added: number;
}

/** A vector that loses all but this share of its length was already in the basis. */
const DEPENDENT = 1e-14;

/**
 * Adds the `columns` vectors that the caller wrote to V right behind the basis.
 *
 * Two passes of Gram-Schmidt ("twice is enough": L. Giraud, J. Langou & M. Rozloznik, Computers &
 * Mathematics with Applications 50 (2005), from memory), then one by one within the block. Vectors
 * that depend on the basis are dropped.
 *
 * @param recent last vectors of the basis that W leans on; the first pass stops at these. Lanczos
 *   vectors lean on the last two blocks only, which saves a third of the time of an iteration
 */
export function extendBasis(
  basis: MBasis,
  columns: number,
  mass: MassProduct,
  recent = basis.count,
): Extension {
  const { n, V, MV } = basis;
  const before = basis.count;
  const W = V.subarray(before * n, (before + columns) * n);
  const MW = MV.subarray(before * n, (before + columns) * n);
  const C = new Float64Array(before * columns);
  removeProjection(basis, W, columns, Math.max(0, before - recent), C);
  removeProjection(basis, W, columns, 0, C);
  mass(MW, W, columns);

  const B = new Float64Array(columns * columns);
  for (let c = 0; c < columns && basis.count < n; c++) {
    const w = W.subarray(c * n, (c + 1) * n);
    const Mw = MW.subarray(c * n, (c + 1) * n);
    const added = basis.count - before;
    let length = 0;
    for (let i = 0; i < before; i++) length += C[i * columns + c] ** 2;
    let inBlock = 0;
    for (let d = 0; d < added; d++) {
      const h = subtractColumn(w, Mw, basis, before + d);
      B[d * columns + c] = h;
      inBlock += h * h;
    }
    let norm = Math.sqrt(Math.max(0, dot(w, Mw)));
    length = Math.sqrt(length + inBlock + norm * norm);
    if (!(norm > DEPENDENT * length)) continue;
    if (norm * norm < 1e-4 * inBlock) {
      // Cancellation within the block has brought roundings of the basis forward: clean again.
      for (let pass = 0; pass < 2; pass++) removeProjection(basis, w, 1, 0);
      mass(Mw, w, 1);
      norm = Math.sqrt(Math.max(0, dot(w, Mw)));
      if (!(norm > DEPENDENT * length)) continue;
    }
    B[added * columns + c] = norm;
    for (let i = 0; i < n; i++) {
      W[added * n + i] = w[i] / norm;
      MW[added * n + i] = Mw[i] / norm;
    }
    basis.count++;
  }
  return { C, B, added: basis.count - before };
}

/** W -= V V' M W for the vectors from `first` on; the coefficients are added to `total`. */
export function removeProjection(
  { n, count, V, MV }: MBasis,
  W: Float64Array,
  columns: number,
  first: number,
  total?: Float64Array,
): void {
  const used = count - first;
  if (used === 0) return;
  const C = new Float64Array(used * columns);
  innerProducts(C, MV.subarray(first * n), used, W, columns, n);
  subtractProduct(W, columns, V.subarray(first * n), used, C, n);
  if (total === undefined) return;
  for (let q = 0; q < C.length; q++) total[first * columns + q] += C[q];
}

/** w -= v_d (v_d' M w), with Mw kept up to date; returns the coefficient. */
function subtractColumn(
  w: Float64Array,
  Mw: Float64Array,
  { n, V, MV }: MBasis,
  d: number,
): number {
  const start = d * n;
  let h = 0;
  for (let i = 0; i < n; i++) h += MV[start + i] * w[i];
  for (let i = 0; i < n; i++) {
    w[i] -= h * V[start + i];
    Mw[i] -= h * MV[start + i];
  }
  return h;
}
