import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { SolveError } from "../../src/errors.ts";
import { symmetricEigen } from "../../src/linalg/dense.ts";
import { type Factor, factorise, PivotError } from "../../src/linalg/factorise.ts";
import { multiply } from "../../src/linalg/product.ts";
import { solveInPlace } from "../../src/linalg/solve.ts";
import { combine, type SymmetricSparse, toDense } from "../../src/linalg/sparse.ts";
import { analysePattern } from "../../src/linalg/symbolic.ts";
import { compress, triplets, withDominantDiagonal } from "./arbitrary.ts";
import { plateStack } from "./beam-grid.ts";
import { chain, squareGrid } from "./chains.ts";

/** L as a full matrix in permuted order, row by row. */
function unpack({ symbolic, L }: Factor): Float64Array {
  const { first, rowPtr, rowIdx, panelPtr, supernodes, perm } = symbolic;
  const n = perm.length;
  const full = new Float64Array(n * n);
  for (let s = 0; s < supernodes; s++) {
    const w = first[s + 1] - first[s];
    for (let k = 0; k < w; k++) {
      const column = first[s] + k;
      for (let i = k; i < w; i++) full[(first[s] + i) * n + column] = L[panelPtr[s] + i * w + k];
      for (let q = rowPtr[s]; q < rowPtr[s + 1]; q++) {
        full[rowIdx[q] * n + column] = L[panelPtr[s] + (w + q - rowPtr[s]) * w + k];
      }
    }
  }
  return full;
}

/** max |L D L' - P A P'| relative to the largest entry of A. */
function reconstructionError(factor: Factor, A: SymmetricSparse): number {
  const n = A.pattern.n;
  const L = unpack(factor);
  const full = toDense(A);
  const { perm } = factor.symbolic;
  let worst = 0;
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = 0;
      for (let k = 0; k <= j; k++) sum += L[i * n + k] * factor.d[k] * L[j * n + k];
      worst = Math.max(worst, Math.abs(sum - full[perm[i] * n + perm[j]]));
    }
  }
  return worst / full.reduce((a, b) => Math.max(a, Math.abs(b)), 0);
}

function solveResidual(factor: Factor, A: SymmetricSparse, columns: number): number {
  const n = A.pattern.n;
  const b = Float64Array.from({ length: n * columns }, (_, i) => Math.sin(i + 1));
  const x = b.slice();
  solveInPlace(factor, x, columns);
  const size = A.values.reduce((a, v) => Math.max(a, Math.abs(v)), 0);
  let worst = 0;
  const Ax = new Float64Array(n);
  for (let c = 0; c < columns; c++) {
    const xc = x.subarray(c * n, (c + 1) * n);
    multiply(Ax, A, xc);
    const largest = xc.reduce((a, v) => Math.max(a, Math.abs(v)), 0);
    for (let i = 0; i < n; i++) {
      worst = Math.max(worst, Math.abs(Ax[i] - b[c * n + i]) / (1 + size * largest));
    }
  }
  return worst;
}

describe("factorise", () => {
  test("L D L' = P A P' and the inertia is that of the signs, for any pattern", () => {
    fc.assert(
      fc.property(triplets(40), fc.integer(), (given, seed) => {
        const negative = (i: number) => ((seed >> (i % 31)) & 1) === 1;
        const A = withDominantDiagonal(compress(given), negative);
        const factor = factorise(analysePattern(A.pattern), A);
        expect(reconstructionError(factor, A)).toBeLessThan(1e-13);
        const signs = Array.from({ length: given.n }, (_, i) => negative(i));
        expect(factor.negativePivots).toBe(signs.filter(Boolean).length);
      }),
    );
  });

  test("wide panels, tiles and remainders: a full matrix of any order", () => {
    for (const n of [1, 2, 3, 5, 6, 7, 12, 13, 14, 37]) {
      const entries = Array.from({ length: n * n }, (_, q) => ({
        i: Math.floor(q / n),
        j: q % n,
        value: Math.cos(q),
      })).filter(({ i, j }) => j < i);
      const A = withDominantDiagonal(compress({ n, entries }), (i) => i % 3 === 0);
      const factor = factorise(analysePattern(A.pattern), A);
      expect(reconstructionError(factor, A)).toBeLessThan(1e-13);
      expect(factor.negativePivots).toBe(Math.ceil(n / 3));
    }
  });

  test("a frame: L D L' = P A P', and the count of negative pivots is that of dense algebra", () => {
    const { K, M, n } = plateStack({
      nx: 4,
      ny: 3,
      length: 0.2,
      width: 0.1,
      thickness: 0.003,
      plates: 2,
      struts: 3,
      patch: 2,
    });
    const symbolic = analysePattern(K.pattern);
    const size = K.values.reduce((a, v) => Math.max(a, v), 0);
    const heavy = M.values.reduce((a, v) => Math.max(a, v), 0);
    for (const share of [1e-6, 1e-4, 1e-2]) {
      const A = combine(1, K, (-share * size) / heavy, M);
      const factor = factorise(symbolic, A);
      // Eigenvalues of A that are near zero could be counted either way: there are none here.
      const { values } = symmetricEigen(toDense(A), n);
      const nearest = values.reduce((a, v) => Math.min(a, Math.abs(v)), size);
      expect(nearest).toBeGreaterThan(1e-12 * size);
      expect(factor.negativePivots).toBe(values.filter((v) => v < 0).length);
      expect(reconstructionError(factor, A)).toBeLessThan(1e-15 * Math.max(10, factor.growth));
    }
  });

  test("a definite matrix has growth 1; an indefinite one more", () => {
    const { K, M } = squareGrid(12);
    const symbolic = analysePattern(K.pattern);
    expect(factorise(symbolic, K).growth).toBeCloseTo(1, 12);
    const indefinite = factorise(symbolic, combine(1, K, -1, M));
    expect(indefinite.growth).toBeGreaterThan(1);
    expect(indefinite.minPivotRatio).toBeLessThan(1);
  });

  test("a singular matrix is refused with the unknown at fault", () => {
    const { K } = chain(5, "free-free");
    const loose = compress({
      n: 3,
      entries: [
        { i: 0, j: 0, value: 1 },
        { i: 2, j: 2, value: 1 },
      ],
    });
    expect(() => factorise(analysePattern(K.pattern), K)).toThrow(PivotError);
    try {
      factorise(analysePattern(loose.pattern), loose);
      expect.unreachable();
    } catch (error) {
      expect(error).toBeInstanceOf(SolveError);
      expect((error as PivotError).index).toBe(1);
      expect((error as PivotError).message).toContain("pivot of unknown 1 is 0.00");
    }
  });

  test("NaN does not pass for a pivot", () => {
    const A = compress({ n: 2, entries: [{ i: 0, j: 0, value: Number.NaN }] });
    expect(() => factorise(analysePattern(A.pattern), A)).toThrow(PivotError);
  });
});

describe("solveInPlace", () => {
  test("has residuals at rounding level for any number of right-hand sides", () => {
    fc.assert(
      fc.property(triplets(30), fc.integer({ min: 1, max: 9 }), (given, columns) => {
        const A = withDominantDiagonal(compress(given), (i) => i % 2 === 0);
        const factor = factorise(analysePattern(A.pattern), A);
        expect(solveResidual(factor, A, columns)).toBeLessThan(1e-13);
      }),
    );
  });

  test("several at once are the same as one by one", () => {
    const { K } = squareGrid(15);
    const factor = factorise(analysePattern(K.pattern), K);
    const n = K.pattern.n;
    const many = Float64Array.from({ length: 6 * n }, (_, i) => Math.cos(i));
    const single = many.slice();
    solveInPlace(factor, many, 6);
    for (let c = 0; c < 6; c++) solveInPlace(factor, single.subarray(c * n, (c + 1) * n), 1);
    for (let i = 0; i < many.length; i++) expect(many[i]).toBeCloseTo(single[i], 12);
  });
});
