/** Eigenvalues in flat memory against what defines them, and against closed forms. */

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { SolveError } from "../../src/errors.ts";
import { toDense } from "../../src/linalg/sparse.ts";
import { symmetricPairs } from "../../src/linalg/symmetric-eigen.ts";
import { compress, triplets } from "./arbitrary.ts";

describe("symmetricPairs", () => {
  test("A v = theta v, orthonormal, ascending", () => {
    fc.assert(
      fc.property(triplets(12), (given) => {
        const n = given.n;
        const A = toDense(compress(given));
        const before = A.slice();
        const { values, vectors } = symmetricPairs(A, n);
        expect(A).toEqual(before);
        for (let k = 0; k < n; k++) {
          if (k > 0) expect(values[k]).toBeGreaterThanOrEqual(values[k - 1]);
          for (let i = 0; i < n; i++) {
            let Av = 0;
            let product = 0;
            for (let j = 0; j < n; j++) {
              Av += A[i * n + j] * vectors[k * n + j];
              product += vectors[i * n + j] * vectors[k * n + j];
            }
            expect(Av).toBeCloseTo(values[k] * vectors[k * n + i], 11);
            expect(product).toBeCloseTo(i === k ? 1 : 0, 12);
          }
        }
      }),
      { seed: 5, numRuns: 100 },
    );
  });

  test("a chain of 60 equal springs and masses: 2 - 2 cos(k pi/61)", () => {
    const n = 60;
    const A = new Float64Array(n * n);
    for (let i = 0; i < n; i++) {
      A[i * n + i] = 2;
      if (i > 0) A[i * n + i - 1] = A[(i - 1) * n + i] = -1;
    }
    symmetricPairs(A, n).values.forEach((v, k) => {
      expect(v).toBeCloseTo(2 - 2 * Math.cos(((k + 1) * Math.PI) / (n + 1)), 13);
    });
  });

  test("one eigenvalue many times: v v' + 3", () => {
    const n = 25;
    const v = Float64Array.from({ length: n }, (_, i) => Math.sin(i + 1));
    const square = v.reduce((sum, x) => sum + x * x, 0);
    const A = Float64Array.from(
      { length: n * n },
      (_, k) => v[k % n] * v[Math.floor(k / n)] + (k % (n + 1) === 0 ? 3 : 0),
    );
    const { values } = symmetricPairs(A, n);
    for (const theta of values.subarray(0, n - 1)) expect(theta).toBeCloseTo(3, 13);
    expect(values[n - 1]).toBeCloseTo(3 + square, 12);
  });

  test("of nothing is nothing", () => {
    expect(symmetricPairs(new Float64Array(0), 0).values.length).toBe(0);
  });

  test("what is not a number is refused", () => {
    const A = Float64Array.of(1, Number.NaN, Number.NaN, 2);
    expect(() => symmetricPairs(A, 2)).toThrow(SolveError);
  });
});
