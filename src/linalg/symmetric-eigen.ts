/**
 * All eigenvalues and vectors of a small symmetric matrix in flat memory: Householder's reduction to a
 * tridiagonal matrix, then QL with implicit shifts. H. Bowdler, R. S. Martin, C. Reinsch & J. H. Wilkinson,
 * "The QR and QL algorithms for symmetric matrices", and R. S. Martin et al., "Householder's
 * tridiagonalization", in Handbook for Automatic Computation, vol. II (1971) (from memory).
 *
 * The transformations are kept with one vector after the other, so that every inner loop runs along
 * memory: for 117 unknowns this takes about half the time of rows that are arrays of their own.
 */

import { SolveError } from "../errors.ts";
import type { SymmetricEigen } from "./dense.ts";

/** Iterations for one eigenvalue; two are usual. */
const MOST_ITERATIONS = 50;

/**
 * @param A n x n, symmetric, given in full; not changed
 * @returns ascending
 * @throws SolveError where an eigenvalue does not converge, as with entries that are not numbers
 */
export function symmetricPairs(A: Float64Array, n: number): SymmetricEigen {
  if (n === 0) return { values: new Float64Array(0), vectors: new Float64Array(0) };
  const Q = A.slice(); // vector i from i n on
  const d = new Float64Array(n);
  const e = new Float64Array(n);
  tridiagonalise(Q, d, e, n);
  accumulate(Q, d, n);
  e.copyWithin(0, 1);
  e[n - 1] = 0;
  diagonalise(Q, d, e, n);
  const order = Array.from(d.keys()).sort((a, b) => d[a] - d[b] || a - b);
  const vectors = new Float64Array(n * n);
  order.forEach((k, c) => {
    vectors.set(Q.subarray(k * n, (k + 1) * n), c * n);
  });
  return { values: Float64Array.from(order, (k) => d[k]), vectors };
}

/** Householder vectors into Q, the off-diagonal into e[1..], the factors of the vectors into d. */
function tridiagonalise(Q: Float64Array, d: Float64Array, e: Float64Array, n: number): void {
  for (let j = 0; j < n; j++) d[j] = Q[j * n + n - 1];
  for (let i = n - 1; i > 0; i--) {
    let scale = 0;
    for (let k = 0; k < i; k++) scale += Math.abs(d[k]);
    let h = 0;
    if (scale === 0) {
      e[i] = d[i - 1];
      for (let j = 0; j < i; j++) {
        d[j] = Q[j * n + i - 1];
        Q[j * n + i] = 0;
        Q[i * n + j] = 0;
      }
      d[i] = h;
      continue;
    }
    for (let k = 0; k < i; k++) {
      d[k] /= scale;
      h += d[k] * d[k];
    }
    const f = d[i - 1];
    const g = f > 0 ? -Math.sqrt(h) : Math.sqrt(h);
    e[i] = scale * g;
    h -= f * g;
    d[i - 1] = f - g;
    reflect(Q, d, e, h, i, n);
    d[i] = h;
  }
}

/** One similarity transformation on the leading i unknowns; d holds the Householder vector. */
function reflect(
  Q: Float64Array,
  d: Float64Array,
  e: Float64Array,
  h: number,
  i: number,
  n: number,
): void {
  e.fill(0, 0, i);
  for (let j = 0; j < i; j++) {
    const f = d[j];
    Q[i * n + j] = f;
    let g = e[j] + Q[j * n + j] * f;
    for (let k = j + 1, p = j * n + j + 1; k < i; k++, p++) {
      g += Q[p] * d[k];
      e[k] += Q[p] * f;
    }
    e[j] = g;
  }
  let sum = 0;
  for (let j = 0; j < i; j++) {
    e[j] /= h;
    sum += e[j] * d[j];
  }
  const half = sum / (h + h);
  for (let j = 0; j < i; j++) e[j] -= half * d[j];
  for (let j = 0; j < i; j++) {
    const f = d[j];
    const g = e[j];
    for (let k = j, p = j * n + j; k < i; k++, p++) Q[p] -= f * e[k] + g * d[k];
    d[j] = Q[j * n + i - 1];
    Q[j * n + i] = 0;
  }
}

/** The product of the transformations into Q, the diagonal into d. */
function accumulate(Q: Float64Array, d: Float64Array, n: number): void {
  const v = new Float64Array(n);
  for (let i = 0; i < n - 1; i++) {
    Q[i * n + n - 1] = Q[i * n + i];
    Q[i * n + i] = 1;
    const h = d[i + 1];
    const next = (i + 1) * n;
    if (h !== 0) {
      for (let k = 0; k <= i; k++) v[k] = Q[next + k] / h;
      let j = 0;
      for (; j < i; j += 2) reflectTwo(Q, v, j * n, n, next, i);
      if (j === i) reflectOne(Q, v, j * n, next, i);
    }
    Q.fill(0, next, next + i + 1);
  }
  for (let j = 0; j < n; j++) {
    d[j] = Q[j * n + n - 1];
    Q[j * n + n - 1] = 0;
  }
  Q[n * n - 1] = 1;
}

/** Vector at `row` -= v times its product with that at `next`. */
function reflectOne(Q: Float64Array, v: Float64Array, row: number, next: number, i: number): void {
  let g = 0;
  for (let k = 0; k <= i; k++) g += Q[next + k] * Q[row + k];
  for (let k = 0; k <= i; k++) Q[row + k] -= g * v[k];
}

/** The same for it and the one after it. */
function reflectTwo(
  Q: Float64Array,
  v: Float64Array,
  row: number,
  n: number,
  next: number,
  i: number,
): void {
  const other = row + n;
  let g = 0;
  let h = 0;
  for (let k = 0; k <= i; k++) {
    const x = Q[next + k];
    g += x * Q[row + k];
    h += x * Q[other + k];
  }
  for (let k = 0; k <= i; k++) {
    const x = v[k];
    Q[row + k] -= g * x;
    Q[other + k] -= h * x;
  }
}

/** QL with implicit shifts: d becomes the eigenvalues, Q the vectors. */
function diagonalise(Q: Float64Array, d: Float64Array, e: Float64Array, n: number): void {
  let shift = 0;
  let largest = 0;
  for (let l = 0; l < n; l++) {
    largest = Math.max(largest, Math.abs(d[l]) + Math.abs(e[l]));
    let m = l;
    while (m < n - 1 && !(Math.abs(e[m]) <= Number.EPSILON * largest)) m++;
    for (let round = 0; m > l; round++) {
      if (round === MOST_ITERATIONS) {
        throw new SolveError(`eigenvalue ${l + 1} of ${n} of a small matrix does not converge`);
      }
      shift += step(Q, d, e, l, m, n);
      if (Math.abs(e[l]) <= Number.EPSILON * largest) break;
    }
    d[l] += shift;
    e[l] = 0;
  }
}

/** One sweep of rotations over l..m; returns what was taken off the diagonal. */
function step(
  Q: Float64Array,
  d: Float64Array,
  e: Float64Array,
  l: number,
  m: number,
  n: number,
): number {
  let g = d[l];
  let p = (d[l + 1] - g) / (2 * e[l]);
  let r = p < 0 ? -Math.sqrt(p * p + 1) : Math.sqrt(p * p + 1); // hypot is many times slower
  d[l] = e[l] / (p + r);
  d[l + 1] = e[l] * (p + r);
  const next = d[l + 1];
  const h = g - d[l];
  for (let i = l + 2; i < n; i++) d[i] -= h;
  p = d[m];
  let c = 1;
  let c2 = 1;
  let c3 = 1;
  const after = e[l + 1];
  let s = 0;
  let s2 = 0;
  for (let i = m - 1; i >= l; i--) {
    c3 = c2;
    c2 = c;
    s2 = s;
    g = c * e[i];
    const k = c * p;
    r = Math.sqrt(p * p + e[i] * e[i]);
    e[i + 1] = s * r;
    s = e[i] / r;
    c = p / r;
    p = c * d[i] - s * g;
    d[i + 1] = k + s * (c * g + s * d[i]);
    rotate(Q, i * n, n, c, s);
  }
  p = (-s * s2 * c3 * after * e[l]) / next;
  e[l] = s * p;
  d[l] = c * p;
  return h;
}

/** Turns two vectors that lie one after the other. */
function rotate(Q: Float64Array, first: number, n: number, c: number, s: number): void {
  for (let a = first, b = first + n; a < first + n; a++, b++) {
    const x = Q[a];
    const y = Q[b];
    Q[b] = s * x + c * y;
    Q[a] = c * x - s * y;
  }
}
