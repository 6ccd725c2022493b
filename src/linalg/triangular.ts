/**
 * Triangular solutions with L in supernodal panels, in permuted order, for one vector or for four
 * interleaved ones (component k of unknown i at 4 i + k).
 */

import type { Factor } from "./factorise.ts";

/** y := L^-1 y (size n) */
export function forwardOne({ symbolic, L }: Factor, y: Float64Array): void {
  const { supernodes, first, rowPtr, rowIdx, panelPtr } = symbolic;
  for (let s = 0; s < supernodes; s++) {
    const j = first[s];
    const w = first[s + 1] - j;
    let l = panelPtr[s];
    for (let i = 0; i < w; i++, l += w) {
      let sum = 0;
      for (let k = 0; k < i; k++) sum += L[l + k] * y[j + k];
      y[j + i] -= sum;
    }
    for (let q = rowPtr[s]; q < rowPtr[s + 1]; q++, l += w) {
      let sum = 0;
      for (let k = 0; k < w; k++) sum += L[l + k] * y[j + k];
      y[rowIdx[q]] -= sum;
    }
  }
}

/** y := L'^-1 y (size n) */
export function backwardOne({ symbolic, L }: Factor, y: Float64Array): void {
  const { supernodes, first, rowPtr, rowIdx, panelPtr } = symbolic;
  for (let s = supernodes - 1; s >= 0; s--) {
    const j = first[s];
    const w = first[s + 1] - j;
    let l = panelPtr[s] + w * w;
    for (let q = rowPtr[s]; q < rowPtr[s + 1]; q++, l += w) {
      const yi = y[rowIdx[q]];
      for (let k = 0; k < w; k++) y[j + k] -= L[l + k] * yi;
    }
    l = panelPtr[s] + w * w;
    for (let i = w - 1; i >= 0; i--) {
      l -= w;
      const yi = y[j + i];
      for (let k = 0; k < i; k++) y[j + k] -= L[l + k] * yi;
    }
  }
}

/**
 * Y := L^-1 Y for four interleaved vectors (size 4 n)
 *
 * @param touched 0 where the solution is known to be zero in a supernode: nothing is done there
 */
export function forwardFour({ symbolic, L }: Factor, y: Float64Array, touched?: Uint8Array): void {
  const { supernodes, first, rowPtr, rowIdx, panelPtr } = symbolic;
  for (let s = 0; s < supernodes; s++) {
    if (touched?.[s] === 0) continue;
    const j = first[s] << 2;
    const w = first[s + 1] - first[s];
    let l = panelPtr[s];
    for (let i = 0; i < w; i++, l += w) subtractRow(y, j + 4 * i, L, l, i, j);
    const end = rowPtr[s + 1];
    let q = rowPtr[s];
    for (; q + 1 < end; q += 2, l += 2 * w) {
      subtractTwoRows(y, rowIdx[q] << 2, rowIdx[q + 1] << 2, L, l, w, j);
    }
    if (q < end) subtractRow(y, rowIdx[q] << 2, L, l, w, j);
  }
}

/** Y := L'^-1 Y for four interleaved vectors (size 4 n) */
export function backwardFour({ symbolic, L }: Factor, y: Float64Array): void {
  const { supernodes, first, rowPtr, rowIdx, panelPtr } = symbolic;
  for (let s = supernodes - 1; s >= 0; s--) {
    const j = first[s] << 2;
    const w = first[s + 1] - first[s];
    let l = panelPtr[s] + w * w;
    const end = rowPtr[s + 1];
    let q = rowPtr[s];
    for (; q + 2 < end; q += 3, l += 3 * w) {
      spreadThreeRows(y, rowIdx[q] << 2, rowIdx[q + 1] << 2, rowIdx[q + 2] << 2, L, l, w, j);
    }
    for (; q < end; q++, l += w) spreadRow(y, rowIdx[q] << 2, L, l, w, j);
    l = panelPtr[s] + w * w;
    for (let i = w - 1; i >= 0; i--) {
      l -= w;
      spreadRow(y, j + 4 * i, L, l, i, j);
    }
  }
}

/** y[i ..] -= sum_k L[l + k] y[j + 4 k ..] */
function subtractRow(
  y: Float64Array,
  i: number,
  L: Float64Array,
  l: number,
  w: number,
  j: number,
): void {
  let s0 = 0;
  let s1 = 0;
  let s2 = 0;
  let s3 = 0;
  let x = j;
  for (let k = 0; k < w; k++, x += 4) {
    const a = L[l + k];
    s0 += a * y[x];
    s1 += a * y[x + 1];
    s2 += a * y[x + 2];
    s3 += a * y[x + 3];
  }
  y[i] -= s0;
  y[i + 1] -= s1;
  y[i + 2] -= s2;
  y[i + 3] -= s3;
}

/** Two rows at a time: 4.4 Gflop/s at w = 24; three (twelve sums) gain nothing. */
function subtractTwoRows(
  y: Float64Array,
  i: number,
  i2: number,
  L: Float64Array,
  l: number,
  w: number,
  j: number,
): void {
  let s0 = 0;
  let s1 = 0;
  let s2 = 0;
  let s3 = 0;
  let t0 = 0;
  let t1 = 0;
  let t2 = 0;
  let t3 = 0;
  const l2 = l + w;
  let x = j;
  for (let k = 0; k < w; k++, x += 4) {
    const a = L[l + k];
    const b = L[l2 + k];
    const y0 = y[x];
    const y1 = y[x + 1];
    const y2 = y[x + 2];
    const y3 = y[x + 3];
    s0 += a * y0;
    s1 += a * y1;
    s2 += a * y2;
    s3 += a * y3;
    t0 += b * y0;
    t1 += b * y1;
    t2 += b * y2;
    t3 += b * y3;
  }
  y[i] -= s0;
  y[i + 1] -= s1;
  y[i + 2] -= s2;
  y[i + 3] -= s3;
  y[i2] -= t0;
  y[i2 + 1] -= t1;
  y[i2 + 2] -= t2;
  y[i2 + 3] -= t3;
}

/** y[j + 4 k ..] -= L[l + k] y[i ..] */
function spreadRow(
  y: Float64Array,
  i: number,
  L: Float64Array,
  l: number,
  w: number,
  j: number,
): void {
  const x0 = y[i];
  const x1 = y[i + 1];
  const x2 = y[i + 2];
  const x3 = y[i + 3];
  let x = j;
  for (let k = 0; k < w; k++, x += 4) {
    const a = L[l + k];
    y[x] -= a * x0;
    y[x + 1] -= a * x1;
    y[x + 2] -= a * x2;
    y[x + 3] -= a * x3;
  }
}

/** Three rows at a time: 5.8 Gflop/s at w = 24; with two it is 4.3. */
function spreadThreeRows(
  y: Float64Array,
  i: number,
  i2: number,
  i3: number,
  L: Float64Array,
  l: number,
  w: number,
  j: number,
): void {
  const x0 = y[i];
  const x1 = y[i + 1];
  const x2 = y[i + 2];
  const x3 = y[i + 3];
  const z0 = y[i2];
  const z1 = y[i2 + 1];
  const z2 = y[i2 + 2];
  const z3 = y[i2 + 3];
  const v0 = y[i3];
  const v1 = y[i3 + 1];
  const v2 = y[i3 + 2];
  const v3 = y[i3 + 3];
  const l2 = l + w;
  const l3 = l2 + w;
  let x = j;
  for (let k = 0; k < w; k++, x += 4) {
    const a = L[l + k];
    const b = L[l2 + k];
    const c = L[l3 + k];
    y[x] -= a * x0 + b * z0 + c * v0;
    y[x + 1] -= a * x1 + b * z1 + c * v1;
    y[x + 2] -= a * x2 + b * z2 + c * v2;
    y[x + 3] -= a * x3 + b * z3 + c * v3;
  }
}
