/** Small complex systems by their residuals, and against the real system of twice the size. */

import fc from "fast-check";
import { Matrix, solve } from "ml-matrix";
import { describe, expect, test } from "vitest";
import { factorComplexInPlace, solveFactored } from "../../src/linalg/small-complex.ts";

interface System {
  readonly n: number;
  readonly half: number;
  readonly Ar: Float64Array;
  readonly Ai: Float64Array;
  /** n x 2 half: real parts, then imaginary ones */
  readonly B: Float64Array;
}

const numbers = (length: number) =>
  fc
    .array(fc.integer({ min: -9, max: 9 }), { minLength: length, maxLength: length })
    .map((list) => Float64Array.from(list));

const systems: fc.Arbitrary<System> = fc
  .record({ n: fc.integer({ min: 1, max: 7 }), half: fc.integer({ min: 1, max: 9 }) })
  .chain(({ n, half }) =>
    fc.record({
      n: fc.constant(n),
      half: fc.constant(half),
      Ar: numbers(n * n),
      Ai: numbers(n * n),
      B: numbers(2 * n * half),
    }),
  );

/** X of A X = B; undefined where A is singular. */
function solved({ n, half, Ar, Ai, B }: System): Float64Array | undefined {
  const [fr, fi, order] = [Ar.slice(), Ai.slice(), new Int32Array(n)];
  if (!factorComplexInPlace(fr, fi, n, order)) return undefined;
  const X = new Float64Array(B.length);
  solveFactored(fr, fi, n, order, X, B, half);
  return X;
}

/** [Ar, -Ai; Ai, Ar] */
function embedded({ n, Ar, Ai }: System): Matrix {
  const A = Matrix.zeros(2 * n, 2 * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      const [re, im] = [Ar[n * i + j], Ai[n * i + j]];
      A.set(i, j, re);
      A.set(n + i, n + j, re);
      A.set(n + i, j, im);
      A.set(i, n + j, -im);
    }
  }
  return A;
}

/** Real parts over imaginary ones, 2 n x half. */
function stacked(X: Float64Array, n: number, half: number): Matrix {
  const out = Matrix.zeros(2 * n, half);
  for (let i = 0; i < n; i++) {
    for (let c = 0; c < half; c++) {
      out.set(i, c, X[2 * half * i + c]);
      out.set(n + i, c, X[2 * half * i + half + c]);
    }
  }
  return out;
}

describe("small complex systems", () => {
  test("A X = B to rounding, whatever the pivots", () => {
    let regular = 0;
    fc.assert(
      fc.property(systems, (s) => {
        const X = solved(s);
        if (!X) return;
        regular++;
        const [A, x] = [embedded(s), stacked(X, s.n, s.half)];
        const residual = Matrix.sub(A.mmul(x), stacked(s.B, s.n, s.half));
        const size = 18 * s.n * Math.max(1, x.max(), -x.min());
        expect(Math.max(residual.max(), -residual.min()) / size).toBeLessThan(1e-14);
      }),
      { seed: 5, numRuns: 200 },
    );
    expect(regular).toBeGreaterThan(150);
  });

  test("the same as ml-matrix gives for the real system of twice the size", () => {
    const n = 6;
    const s = {
      n,
      half: 8,
      Ar: Float64Array.from({ length: 36 }, (_, k) => Math.sin(k * k)),
      Ai: Float64Array.from({ length: 36 }, (_, k) => Math.cos(3 * k)),
      B: Float64Array.from({ length: 96 }, (_, k) => Math.sin(5 * k)),
    };
    const X = solved(s);
    expect(X).toBeDefined();
    const x = stacked(X as Float64Array, n, 8);
    const difference = Matrix.sub(x, solve(embedded(s), stacked(s.B, n, 8)));
    expect(Math.max(difference.max(), -difference.min())).toBeLessThan(1e-12);
  });

  test("zeros on the diagonal are pivoted away", () => {
    // [0 i; 2 0] x = [1; 1]: x = [1/2; -i]
    const s = {
      n: 2,
      half: 1,
      Ar: Float64Array.of(0, 0, 2, 0),
      Ai: Float64Array.of(0, 1, 0, 0),
      B: Float64Array.of(1, 0, 1, 0),
    };
    const X = solved(s);
    [0.5, 0, 0, -1].forEach((v, k) => {
      expect(X?.[k]).toBeCloseTo(v, 15);
    });
  });

  test.each([
    ["a row of zeros", [1, 2, 0, 0], [3, 4, 0, 0]],
    ["a row i times the other", [1, 2, -1, 0], [1, 0, 1, 2]],
    ["something that is not a number", [Number.NaN, 1, 1, 1], [0, 0, 0, 0]],
  ])("a matrix with %s is refused", (_, re, im) => {
    const [Ar, Ai] = [Float64Array.from(re), Float64Array.from(im)];
    expect(factorComplexInPlace(Ar, Ai, 2, new Int32Array(2))).toBe(false);
  });
});
