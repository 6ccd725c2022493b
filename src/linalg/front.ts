/**
 * Dense kernels of one front: a panel of h rows and w columns, row by row, whose first w rows are
 * the pivot block, and the update matrix of the rows below, a lower triangle packed row by row.
 */

/** C[i, j] -= sum_k Y[i, k] X[j, k] over tiles of 3 x 3: nine sums and six operands fit the
 * sixteen vector registers. Measured at k = 12 / 48 / 300 in Gflop/s: 3 x 3 4.0 / 4.4 / 4.4,
 * 4 x 4 3.6 / 4.0 / 4.2, 4 x 3 3.5 / 4.0 / 4.3, 2 x 2 2.5 / 3.4 / 3.4, 4 x 4 on packed copies
 * 3.3 / 4.3 / 4.4. */
function tile3x3(
  C: Float64Array,
  c0: number,
  c1: number,
  c2: number,
  Y: Float64Array,
  y0: number,
  X: Float64Array,
  x0: number,
  stride: number,
  count: number,
): void {
  const y1 = (y0 + stride) | 0;
  const y2 = (y1 + stride) | 0;
  const x1 = (x0 + stride) | 0;
  const x2 = (x1 + stride) | 0;
  let s00 = 0;
  let s01 = 0;
  let s02 = 0;
  let s10 = 0;
  let s11 = 0;
  let s12 = 0;
  let s20 = 0;
  let s21 = 0;
  let s22 = 0;
  for (let k = 0; k < count; k = (k + 1) | 0) {
    const a0 = Y[(y0 + k) | 0];
    const a1 = Y[(y1 + k) | 0];
    const a2 = Y[(y2 + k) | 0];
    const b0 = X[(x0 + k) | 0];
    const b1 = X[(x1 + k) | 0];
    const b2 = X[(x2 + k) | 0];
    s00 += a0 * b0;
    s01 += a0 * b1;
    s02 += a0 * b2;
    s10 += a1 * b0;
    s11 += a1 * b1;
    s12 += a1 * b2;
    s20 += a2 * b0;
    s21 += a2 * b1;
    s22 += a2 * b2;
  }
  C[c0] -= s00;
  C[c0 + 1] -= s01;
  C[c0 + 2] -= s02;
  C[c1] -= s10;
  C[c1 + 1] -= s11;
  C[c1 + 2] -= s12;
  C[c2] -= s20;
  C[c2 + 1] -= s21;
  C[c2 + 2] -= s22;
}

/** sum_k Y[y + k] X[x + k] */
function dot(Y: Float64Array, y: number, X: Float64Array, x: number, count: number): number {
  let sum = 0;
  for (let k = 0; k < count; k = (k + 1) | 0) sum += Y[(y + k) | 0] * X[(x + k) | 0];
  return sum;
}

/** Columns factorised at a time, the rest of the panel being updated by tiles. Measured for 5280
 * unknowns (236 Mflop): 66 / 67 / 69 / 73 ms with 3 / 6 / 12 / 24 columns. */
const BLOCK = 6;

/**
 * Turns the panel at `p` into columns of L and writes the pivots to d[first ..].
 *
 * @param Y scratch, at least h w: receives L D for the panel, same layout
 */
export function factorPanel(
  L: Float64Array,
  p: number,
  h: number,
  w: number,
  d: Float64Array,
  first: number,
  Y: Float64Array,
): void {
  for (let start = 0; start < w; start += BLOCK) {
    const end = Math.min(start + BLOCK, w);
    if (start > 0) subtractEarlier(L, p, h, w, start, end, Y);
    // Within the block, row by row: y_ij = a_ij - sum_k y_ik l_jk, then d_j = y_jj, l_ij = y_ij / d_j.
    for (let i = start; i < h; i++) {
      const row = p + i * w;
      const y = i * w;
      const last = Math.min(i, end - 1);
      for (let j = start; j <= last; j++) {
        const value = L[row + j] - dot(Y, y + start, L, p + j * w + start, j - start);
        Y[y + j] = value;
        if (j === i) {
          d[first + j] = value;
          L[row + j] = 1;
        } else L[row + j] = value / d[first + j];
      }
    }
  }
}

/** Columns start .. end - 1 of the panel, rows from start on, minus what earlier columns contribute. */
function subtractEarlier(
  L: Float64Array,
  p: number,
  h: number,
  w: number,
  start: number,
  end: number,
  Y: Float64Array,
): void {
  let j = start;
  for (; j + 2 < end; j += 3) {
    let i = j;
    for (; i + 2 < h; i += 3) {
      const c = p + i * w + j;
      tile3x3(L, c, c + w, c + 2 * w, Y, i * w, L, p + j * w, w, start);
    }
    for (; i < h; i++) {
      for (let q = j; q < j + 3; q++) L[p + i * w + q] -= dot(Y, i * w, L, p + q * w, start);
    }
  }
  for (; j < end; j++) {
    for (let i = j; i < h; i++) L[p + i * w + j] -= dot(Y, i * w, L, p + j * w, start);
  }
}

/**
 * U -= L21 D L21' for the rows below the pivot block.
 *
 * @param u start of the packed triangle in U: entry (i, j) is U[u + i (i + 1) / 2 + j]
 */
export function updateBelow(
  U: Float64Array,
  u: number,
  L: Float64Array,
  p: number,
  h: number,
  w: number,
  Y: Float64Array,
): void {
  const r = h - w;
  const tiled = r - (r % 3);
  const top = w * w;
  for (let i = 0; i < tiled; i += 3) {
    const c0 = u + (i * (i + 1)) / 2;
    const c1 = c0 + i + 1;
    const c2 = c1 + i + 2;
    const y = top + i * w;
    for (let j = 0; j < i; j += 3) {
      tile3x3(U, c0 + j, c1 + j, c2 + j, Y, y, L, p + top + j * w, w, w);
    }
    triangle(U, c0 + i, c1 + i, c2 + i, Y, y, L, p + y, w);
  }
  for (let i = tiled; i < r; i++) {
    const c = u + (i * (i + 1)) / 2;
    for (let j = 0; j <= i; j++) U[c + j] -= dot(Y, top + i * w, L, p + top + j * w, w);
  }
}

/** The tile on the diagonal: only its lower half exists. */
function triangle(
  C: Float64Array,
  c0: number,
  c1: number,
  c2: number,
  Y: Float64Array,
  y: number,
  X: Float64Array,
  x: number,
  w: number,
): void {
  C[c0] -= dot(Y, y, X, x, w);
  C[c1] -= dot(Y, y + w, X, x, w);
  C[c1 + 1] -= dot(Y, y + w, X, x + w, w);
  C[c2] -= dot(Y, y + 2 * w, X, x, w);
  C[c2 + 1] -= dot(Y, y + 2 * w, X, x + w, w);
  C[c2 + 2] -= dot(Y, y + 2 * w, X, x + 2 * w, w);
}
