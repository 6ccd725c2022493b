/** B' A^-1 B from half a solution, against whole solutions and against closed forms. */

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { factorise } from "../../src/linalg/factorise.ts";
import { type FewRows, inverseGrams } from "../../src/linalg/grams.ts";
import { solveInPlace } from "../../src/linalg/solve.ts";
import { combine, type SymmetricSparse } from "../../src/linalg/sparse.ts";
import { analysePattern } from "../../src/linalg/symbolic.ts";
import { compress, triplets, withDominantDiagonal } from "./arbitrary.ts";
import { chain, chainEigenvalue, squareGrid } from "./chains.ts";

/** B - Z C as full columns (n x columns, column-major). */
function full(
  n: number,
  { rows, values }: FewRows,
  columns: number,
  Z: Float64Array,
  width: number,
  C: Float64Array,
): Float64Array {
  const out = new Float64Array(n * columns);
  for (let c = 0; c < columns; c++) {
    rows.forEach((row, q) => {
      out[c * n + row] += values[c * rows.length + q];
    });
    for (let i = 0; i < n; i++) {
      for (let z = 0; z < width; z++) out[c * n + i] -= Z[z * n + i] * C[z * columns + c];
    }
  }
  return out;
}

/** Largest difference from X' A^-1 X with whole solutions, relative to the largest entry. */
function worstError(
  A: SymmetricSparse,
  B: readonly FewRows[],
  columns: number,
  Z: Float64Array,
  width: number,
  C: readonly Float64Array[],
): number {
  const n = A.pattern.n;
  const factor = factorise(analysePattern(A.pattern), A);
  const grams = inverseGrams(factor, B, columns, { Z, width, C });
  expect(grams.length).toBe(B.length);
  let [error, size] = [0, 0];
  B.forEach((b, k) => {
    const X = full(n, b, columns, Z, width, C[k]);
    const Y = X.slice();
    solveInPlace(factor, Y, columns);
    for (let i = 0; i < columns; i++) {
      for (let j = 0; j < columns; j++) {
        let sum = 0;
        for (let p = 0; p < n; p++) sum += X[i * n + p] * Y[j * n + p];
        error = Math.max(error, Math.abs(grams[k][i * columns + j] - sum));
        size = Math.max(size, Math.abs(sum));
      }
    }
  });
  return size === 0 ? error : error / size;
}

const wave = (length: number, step: number) =>
  Float64Array.from({ length }, (_, k) => Math.sin(step * (k + 1)));

/** So many B on a few rows each, some of them twice. */
const scattered = (n: number, count: number, columns: number, rows: number): FewRows[] =>
  Array.from({ length: count }, (_, k) => ({
    rows: Int32Array.from({ length: rows }, (_, q) => (7 * k + 3 * q * q) % n),
    values: wave(columns * rows, 1 + k),
  }));

describe("inverseGrams", () => {
  test("any pattern, any number of B, columns and rows, something taken away or nothing", () => {
    fc.assert(
      fc.property(
        triplets(40),
        fc.integer({ min: 0, max: 5 }),
        fc.integer({ min: 1, max: 7 }),
        fc.integer({ min: 0, max: 6 }),
        (given, count, columns, width) => {
          const A = withDominantDiagonal(compress(given), (i) => i % 5 === 3);
          const n = A.pattern.n;
          const C = Array.from({ length: count }, (_, k) => wave(width * columns, 0.3 + k));
          const B = scattered(n, count, columns, 4);
          expect(worstError(A, B, columns, wave(n * width, 0.7), width, C)).toBeLessThan(1e-13);
        },
      ),
      { seed: 8, numRuns: 80 },
    );
  });

  test("on a grid whose factor has many supernodes, most of them untouched", () => {
    const { K, M } = squareGrid(20);
    const A = combine(1, K, 0.1, M);
    const n = A.pattern.n;
    const B = Array.from({ length: 5 }, (_, k) => ({
      rows: Int32Array.of(61 * k, 61 * k + 1, 61 * k + 20),
      values: wave(18, 2 + k),
    }));
    const C = B.map((_, k) => wave(18, 0.2 + k));
    expect(worstError(A, B, 6, wave(3 * n, 0.4), 3, C)).toBeLessThan(1e-13);
  });

  test("a free chain, all but singular: with its rigid motion taken away every digit stays", () => {
    const [n, sigma] = [60, -1e-9];
    const { K, M } = chain(n, "free-free");
    const factor = factorise(analysePattern(K.pattern), combine(1, K, -sigma, M));
    const rigid = new Float64Array(n).fill(1 / Math.sqrt(n));
    const ends = { rows: Int32Array.of(4, 41), values: Float64Array.of(1, 0, 0, 1) };
    const C = [Float64Array.of(rigid[4], rigid[41])];
    const [gram] = inverseGrams(factor, [ends], 2, { Z: rigid, width: 1, C });
    // sum over the elastic modes of phi phi'/(lambda - sigma), phi_k(j) = sqrt(2/n) cos(k pi (j + 1/2)/n)
    const expected = (i: number, j: number) => {
      let sum = 0;
      for (let k = 1; k < n; k++) {
        const phi = (at: number) => Math.cos((k * Math.PI * (at + 0.5)) / n);
        sum += (2 * phi(i) * phi(j)) / n / (chainEigenvalue(n, "free-free", k + 1) - sigma);
      }
      return sum;
    };
    [expected(4, 4), expected(4, 41), expected(41, 4), expected(41, 41)].forEach((v, k) => {
      // measured: 5e-13 of 16; the rigid motion's own share would be 1/(n 1e-9) = 1.7e7
      expect(Math.abs(gram[k] - v)).toBeLessThan(1e-11);
    });
  });
});
