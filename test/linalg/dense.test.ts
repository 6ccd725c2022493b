import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { SolveError } from "../../src/errors.ts";
import {
  backwardInPlace,
  choleskyInPlace,
  forwardInPlace,
  symmetricEigen,
} from "../../src/linalg/dense.ts";
import { denseModes } from "../../src/linalg/dense-modes.ts";
import { multiply } from "../../src/linalg/product.ts";
import { toDense } from "../../src/linalg/sparse.ts";
import { compress, triplets, withDominantDiagonal } from "./arbitrary.ts";
import { chain, chainEigenvalue, type Ends, springSystem } from "./chains.ts";

describe("symmetricEigen", () => {
  test("A v = theta v, orthonormal, ascending", () => {
    fc.assert(
      fc.property(triplets(12), (given) => {
        const n = given.n;
        const A = toDense(compress(given));
        const { values, vectors } = symmetricEigen(A, n);
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
    );
  });

  test("of nothing is nothing", () => {
    expect(symmetricEigen(new Float64Array(0), 0).values.length).toBe(0);
  });
});

describe("Cholesky", () => {
  test("L L'^-1 solves", () => {
    fc.assert(
      fc.property(triplets(12), (given) => {
        const A = withDominantDiagonal(compress(given), () => false);
        const n = given.n;
        const L = toDense(A);
        choleskyInPlace(L, n);
        const x = Float64Array.from({ length: n }, (_, i) => i + 1);
        const b = new Float64Array(n);
        multiply(b, A, x);
        forwardInPlace(L, n, b, 1);
        backwardInPlace(L, n, b, 1);
        for (let i = 0; i < n; i++) expect(b[i]).toBeCloseTo(x[i], 11);
      }),
    );
  });

  test("says where a matrix is not positive definite", () => {
    expect(() => choleskyInPlace(Float64Array.of(1, 2, 2, 1), 2)).toThrow(SolveError);
    expect(() => choleskyInPlace(Float64Array.of(1, 2, 2, 1), 2)).toThrow("pivot 1 is -3");
  });
});

describe("denseModes", () => {
  test.each<[Ends, number]>([
    ["fixed-free", 1],
    ["fixed-free", 25],
    ["fixed-fixed", 1],
    ["fixed-fixed", 24],
    ["free-free", 2],
    ["free-free", 23],
  ])("%s chain of %i masses: closed form", (ends, n) => {
    const { K, M } = chain(n, ends);
    const { lambda } = denseModes(K, M, n);
    expect(lambda.length).toBe(n);
    for (let i = 1; i <= n; i++) {
      expect(Math.abs(lambda[i - 1] - chainEigenvalue(n, ends, i))).toBeLessThan(1e-12);
    }
  });

  test("massless unknowns have no modes of their own", () => {
    // 1 - massless - 1: the two springs act as one of half the stiffness.
    const { K, M } = springSystem(
      [1, 0, 1],
      [
        [0, -1, 1],
        [1, 0, 1],
        [2, 1, 1],
      ],
    );
    const { lambda, phi } = denseModes(K, M, 3);
    expect(lambda.length).toBe(2);
    // |1.5 - l, -0.5; -0.5, 0.5 - l| = 0
    expect(lambda[0]).toBeCloseTo(1 - Math.SQRT1_2, 12);
    expect(lambda[1]).toBeCloseTo(1 + Math.SQRT1_2, 12);
    for (let k = 0; k < 2; k++) {
      expect(phi[3 * k + 1]).toBeCloseTo((phi[3 * k] + phi[3 * k + 2]) / 2, 12);
      expect(phi[3 * k] ** 2 + phi[3 * k + 2] ** 2).toBeCloseTo(1, 12);
    }
  });
});
