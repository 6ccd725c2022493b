/** Products of vectors, and of a symmetric sparse matrix with one vector or with several at once. */

import type { SymmetricSparse } from "./sparse.ts";

/** a' b, of one size. */
export function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i] * b[i];
  return sum;
}

/** out = A x (both size n). */
export function multiply(out: Float64Array, A: SymmetricSparse, x: Float64Array): void {
  const { n, colPtr, rowIdx } = A.pattern;
  const values = A.values;
  out.fill(0, 0, n);
  for (let j = 0; j < n; j++) {
    const start = colPtr[j];
    const xj = x[j];
    let sum = values[start] * xj;
    for (let p = start + 1; p < colPtr[j + 1]; p++) {
      const i = rowIdx[p];
      out[i] += values[p] * xj;
      sum += values[p] * x[i];
    }
    out[j] += sum;
  }
}

/**
 * out = A X for X of n x columns, column-major; entries of each column are contiguous.
 *
 * Four columns go through A together, interleaved, so that A is read once for the four.
 */
export function multiplyBlock(
  out: Float64Array,
  A: SymmetricSparse,
  x: Float64Array,
  columns: number,
): void {
  const n = A.pattern.n;
  if (columns === 1) {
    multiply(out, A, x);
    return;
  }
  const xs = new Float64Array(4 * n);
  const ys = new Float64Array(4 * n);
  for (let c = 0; c < columns; c += 4) {
    const width = Math.min(4, columns - c);
    interleave(xs, x, n, c, width);
    multiplyFour(ys, A, xs);
    deinterleave(out, ys, n, c, width);
  }
}

/** xs[4 i + k] = X[i, first + k]; columns beyond `width` are zero. */
export function interleave(
  xs: Float64Array,
  x: Float64Array,
  n: number,
  first: number,
  width: number,
): void {
  if (width < 4) xs.fill(0);
  for (let k = 0; k < width; k++) {
    const start = (first + k) * n;
    for (let i = 0; i < n; i++) xs[4 * i + k] = x[start + i];
  }
}

/** X[i, first + k] = xs[4 i + k]. */
export function deinterleave(
  x: Float64Array,
  xs: Float64Array,
  n: number,
  first: number,
  width: number,
): void {
  for (let k = 0; k < width; k++) {
    const start = (first + k) * n;
    for (let i = 0; i < n; i++) x[start + i] = xs[4 * i + k];
  }
}

/** Y = A X for four interleaved vectors. */
function multiplyFour(y: Float64Array, A: SymmetricSparse, x: Float64Array): void {
  const { n, colPtr } = A.pattern;
  y.fill(0);
  for (let j = 0; j < n; ) {
    if (j + 1 < n && haveSameRows(A, j)) {
      twoColumns(y, A, x, j);
      j += 2;
    } else {
      oneColumn(y, A, x, j, colPtr[j]);
      j += 1;
    }
  }
}

/** Whether column j is (j + 1, j) and then just the rows of column j + 1, as within a mesh node. */
function haveSameRows({ pattern: { colPtr, rowIdx } }: SymmetricSparse, j: number): boolean {
  const start = colPtr[j];
  const middle = colPtr[j + 1];
  if (colPtr[j + 2] - middle !== middle - start - 1) return false;
  for (let p = start + 1, q = middle; p < middle; p++, q++) {
    if (rowIdx[p] !== rowIdx[q]) return false;
  }
  return true;
}

function oneColumn(
  y: Float64Array,
  { pattern: { colPtr, rowIdx }, values }: SymmetricSparse,
  x: Float64Array,
  j: number,
  start: number,
): void {
  const c = 4 * j;
  const x0 = x[c];
  const x1 = x[c + 1];
  const x2 = x[c + 2];
  const x3 = x[c + 3];
  const diagonal = values[start];
  let s0 = diagonal * x0;
  let s1 = diagonal * x1;
  let s2 = diagonal * x2;
  let s3 = diagonal * x3;
  for (let p = start + 1; p < colPtr[j + 1]; p++) {
    const i = rowIdx[p] << 2;
    const a = values[p];
    s0 += a * x[i];
    s1 += a * x[i + 1];
    s2 += a * x[i + 2];
    s3 += a * x[i + 3];
    y[i] += a * x0;
    y[i + 1] += a * x1;
    y[i + 2] += a * x2;
    y[i + 3] += a * x3;
  }
  y[c] += s0;
  y[c + 1] += s1;
  y[c + 2] += s2;
  y[c + 3] += s3;
}

/** Columns j and j + 1 with the same rows: every x[i] and y[i] is touched once for both. */
function twoColumns(
  y: Float64Array,
  { pattern: { colPtr, rowIdx }, values }: SymmetricSparse,
  x: Float64Array,
  j: number,
): void {
  const c = 4 * j;
  const x0 = x[c];
  const x1 = x[c + 1];
  const x2 = x[c + 2];
  const x3 = x[c + 3];
  const z0 = x[c + 4];
  const z1 = x[c + 5];
  const z2 = x[c + 6];
  const z3 = x[c + 7];
  const middle = colPtr[j + 1];
  const d = values[colPtr[j]];
  const e = values[colPtr[j] + 1];
  const f = values[middle];
  let s0 = d * x0 + e * z0;
  let s1 = d * x1 + e * z1;
  let s2 = d * x2 + e * z2;
  let s3 = d * x3 + e * z3;
  let t0 = e * x0 + f * z0;
  let t1 = e * x1 + f * z1;
  let t2 = e * x2 + f * z2;
  let t3 = e * x3 + f * z3;
  for (let p = colPtr[j] + 2, q = middle + 1; p < middle; p++, q++) {
    const i = rowIdx[p] << 2;
    const a = values[p];
    const b = values[q];
    const u0 = x[i];
    s0 += a * u0;
    t0 += b * u0;
    y[i] += a * x0 + b * z0;
    const u1 = x[i + 1];
    s1 += a * u1;
    t1 += b * u1;
    y[i + 1] += a * x1 + b * z1;
    const u2 = x[i + 2];
    s2 += a * u2;
    t2 += b * u2;
    y[i + 2] += a * x2 + b * z2;
    const u3 = x[i + 3];
    s3 += a * u3;
    t3 += b * u3;
    y[i + 3] += a * x3 + b * z3;
  }
  y[c] += s0;
  y[c + 1] += s1;
  y[c + 2] += s2;
  y[c + 3] += s3;
  y[c + 4] += t0;
  y[c + 5] += t1;
  y[c + 6] += t2;
  y[c + 7] += t3;
}
