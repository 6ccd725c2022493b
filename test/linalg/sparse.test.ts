import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { multiply, multiplyBlock } from "../../src/linalg/product.ts";
import {
  combine,
  compressTriplets,
  diagonal,
  toDense,
  withoutZeros,
} from "../../src/linalg/sparse.ts";
import { compress, triplets } from "./arbitrary.ts";

describe("compressTriplets", () => {
  test("folds both triangles, sums duplicates and fills in the diagonal", () => {
    const { pattern, values } = compressTriplets(
      3,
      5,
      Int32Array.of(2, 0, 1, 0, 2),
      Int32Array.of(0, 2, 1, 1, 1),
      [Float64Array.of(1, 2, 3, 4, 0), Float64Array.of(10, 20, 30, 40, 50)],
    );
    expect(Array.from(pattern.colPtr)).toEqual([0, 3, 5, 6]);
    expect(Array.from(pattern.rowIdx)).toEqual([0, 1, 2, 1, 2, 2]);
    expect(Array.from(values[0])).toEqual([0, 4, 3, 3, 0, 0]);
    expect(Array.from(values[1])).toEqual([0, 40, 30, 30, 50, 0]);
  });

  test("reads no further than count", () => {
    const { values } = compressTriplets(1, 1, Int32Array.of(0, 9), Int32Array.of(0, 9), [
      Float64Array.of(5, 6),
    ]);
    expect(Array.from(values[0])).toEqual([5]);
  });

  test("names a triplet that is out of range", () => {
    expect(() =>
      compressTriplets(2, 1, Int32Array.of(2), Int32Array.of(0), [Float64Array.of(1)]),
    ).toThrow("triplet 0 is at (2, 0), outside a matrix of order 2");
  });

  test("gives sorted columns that start with the diagonal", () => {
    fc.assert(
      fc.property(triplets(20), (given) => {
        const { pattern } = compress(given);
        for (let j = 0; j < pattern.n; j++) {
          expect(pattern.rowIdx[pattern.colPtr[j]]).toBe(j);
          for (let p = pattern.colPtr[j] + 1; p < pattern.colPtr[j + 1]; p++) {
            expect(pattern.rowIdx[p]).toBeGreaterThan(pattern.rowIdx[p - 1]);
          }
        }
      }),
    );
  });
});

describe("products", () => {
  test("multiply and multiplyBlock agree with the full matrix", () => {
    fc.assert(
      fc.property(triplets(16), fc.integer({ min: 1, max: 9 }), (given, columns) => {
        const A = compress(given);
        const { n } = A.pattern;
        const full = toDense(A);
        const x = Float64Array.from({ length: n * columns }, (_, i) => ((7 * i) % 11) - 5);
        const block = new Float64Array(n * columns);
        multiplyBlock(block, A, x, columns);
        for (let c = 0; c < columns; c++) {
          const single = new Float64Array(n);
          multiply(single, A, x.subarray(c * n, (c + 1) * n));
          for (let i = 0; i < n; i++) {
            let sum = 0;
            for (let j = 0; j < n; j++) sum += full[i * n + j] * x[c * n + j];
            // Small integers: every order of summation gives the same.
            expect(single[i]).toBe(sum);
            expect(block[c * n + i]).toBe(sum);
          }
        }
      }),
    );
  });
});

describe("entry by entry", () => {
  const A = compress({ n: 2, entries: [{ i: 1, j: 0, value: 3 }] });
  const B = { pattern: A.pattern, values: Float64Array.of(1, 2, 4) };

  test("combine adds on the common pattern", () => {
    expect(Array.from(combine(2, A, -1, B).values)).toEqual([-1, 4, -4]);
  });

  test("combine refuses two patterns, however alike", () => {
    const other = compress({ n: 2, entries: [{ i: 1, j: 0, value: 3 }] });
    expect(() => combine(1, A, 1, other)).toThrow("must share one pattern");
  });

  test("diagonal and toDense", () => {
    expect(Array.from(diagonal(B))).toEqual([1, 4]);
    expect(Array.from(toDense(B))).toEqual([1, 2, 2, 4]);
  });

  test("withoutZeros keeps the matrix and the diagonal places", () => {
    fc.assert(
      fc.property(triplets(12), (given) => {
        const full = compress(given);
        const slim = withoutZeros(full);
        expect(toDense(slim)).toEqual(toDense(full));
        expect(slim.values.slice().filter((v) => v === 0).length).toBeLessThanOrEqual(
          full.pattern.n,
        );
      }),
    );
  });
});
