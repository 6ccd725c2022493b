import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type CellCover, cellStiffness, meanStrainRows } from "../../src/element/plate-cell.ts";
import { asymmetry, eigenvalues, form, largest, rigidMotions, times } from "./dense.ts";

/** A laminate as its 6 x 6 matrix G = [A B; B D], row-major. */
type SixBySix = readonly number[];

const FULL = (a: number, b: number): CellCover => {
  const half = (a * b) / 2;
  return { bottom: half, top: half, left: half, right: half };
};

const block = (G: SixBySix, r: number, c: number) =>
  [0, 1, 2].flatMap((i) => [0, 1, 2].map((j) => G[6 * (r + i) + c + j]));

function stiffness(G: SixBySix, a: number, b: number, cover: CellCover): Float64Array {
  const plate = { A: block(G, 0, 0), B: block(G, 0, 3), D: block(G, 3, 3) };
  return cellStiffness(plate, a, b, cover);
}

const corners = (a: number, b: number) => [
  [0, 0, 0],
  [a, 0, 0],
  [a, b, 0],
  [0, b, 0],
];

/**
 * Corner unknowns of the field with constant strains and curvatures (ex, ey, gxy, kx, ky, kxy):
 * u = ex x + gxy y/2, v = ey y + gxy x/2, w = -(kx x^2 + ky y^2 + kxy x y)/2, rx = w,y, ry = -w,x.
 */
function constantState(e: readonly number[], a: number, b: number): number[] {
  const [ex, ey, gxy, kx, ky, kxy] = e;
  return corners(a, b).flatMap(([x, y]) => [
    ex * x + (gxy * y) / 2,
    ey * y + (gxy * x) / 2,
    -(kx * x * x + ky * y * y + kxy * x * y) / 2,
    -ky * y - (kxy * x) / 2,
    kx * x + (kxy * y) / 2,
    0,
  ]);
}

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const side = number(0.3, 3);
/** R R' + 0.01 for a random R: positive definite, with every coupling, B symmetric. */
const laminate: fc.Arbitrary<SixBySix> = fc
  .array(number(-1, 1), { minLength: 36, maxLength: 36 })
  .map((R) => {
    const G = Array.from({ length: 36 }, (_, q) => {
      const [i, j] = [Math.floor(q / 6), q % 6];
      let sum = i === j ? 0.01 : 0;
      for (let k = 0; k < 6; k++) sum += R[6 * i + k] * R[6 * j + k];
      return sum;
    });
    for (let i = 0; i < 3; i++) {
      for (let j = 0; j < i; j++) {
        const mean = (G[6 * i + 3 + j] + G[6 * j + 3 + i]) / 2;
        for (const [r, c] of [
          [i, 3 + j],
          [j, 3 + i],
          [3 + j, i],
          [3 + i, j],
        ]) {
          G[6 * r + c] = mean;
        }
      }
    }
    return G;
  })
  .filter((G) => eigenvalues(G, 6)[0] > 1e-3);
/** Covered share, and how it leans towards the top and the right. */
const lean = fc.record({
  share: number(0.01, 1),
  up: number(0.01, 0.99),
  right: number(0.01, 0.99),
});
const coverOf = (a: number, b: number, l: { share: number; up: number; right: number }) => {
  const S = l.share * a * b;
  return { bottom: S * (1 - l.up), top: S * l.up, left: S * (1 - l.right), right: S * l.right };
};

const runs = { seed: 20, numRuns: 100 };
/** Sums of some hundred products of order 1. */
const ROUNDING = 1e-12;

describe("plate cell", () => {
  test("symmetric, and no force for rigid-body motions, for any laminate, shape and cover", () => {
    fc.assert(
      fc.property(laminate, side, side, lean, (G, a, b, l) => {
        const K = stiffness(G, a, b, coverOf(a, b, l));
        const scale = largest(K);
        expect(asymmetry(K, 24)).toBeLessThan(ROUNDING * scale);
        for (const r of rigidMotions(corners(a, b))) {
          expect(largest(times(K, r))).toBeLessThan(ROUNDING * scale);
        }
      }),
      runs,
    );
  });

  test.each(["ex", "ey", "gxy", "kx", "ky", "kxy"])(
    "a constant %s is its own mean, and no other strain appears",
    (name) => {
      const [a, b] = [1.3, 0.7];
      const which = ["ex", "ey", "gxy", "kx", "ky", "kxy"].indexOf(name);
      const e = [0, 1, 2, 3, 4, 5].map((i) => +(i === which));
      const u = constantState(e, a, b);
      const rows = meanStrainRows(a, b, coverOf(a, b, { share: 0.6, up: 0.2, right: 0.7 }));
      rows.forEach((row, i) => {
        const mean = row.reduce((sum, c, d) => sum + c * u[d], 0);
        expect(mean).toBeCloseTo(e[i], 14);
      });
    },
  );

  test("constant strains and curvatures together: energy S e'[A B; B D]e/2, B included", () => {
    const state = fc.array(number(-1, 1), { minLength: 6, maxLength: 6 });
    fc.assert(
      fc.property(laminate, state, side, side, lean, (G, e, a, b, l) => {
        const S = l.share * a * b;
        const K = stiffness(G, a, b, coverOf(a, b, l));
        const exact = (S * form(G, e)) / 2;
        const found = form(K, constantState(e, a, b)) / 2;
        const scale = S * largest(G) * (1 + largest(e) ** 2) * 36;
        expect(Math.abs(found - exact) / scale).toBeLessThan(ROUNDING);
      }),
      runs,
    );
  });

  test("twice the cover, twice the stiffness", () => {
    const G = [0, 1, 2, 3, 4, 5].flatMap((i) => [0, 1, 2, 3, 4, 5].map((j) => (i === j ? 5 : 1)));
    const [a, b] = [1.1, 0.8];
    const covered = (share: number) =>
      stiffness(G, a, b, coverOf(a, b, { share, up: 0.3, right: 0.6 }));
    const [once, twice] = [covered(0.4), covered(0.8)];
    twice.forEach((v, i) => {
      expect(Math.abs(v - 2 * once[i])).toBeLessThan(ROUNDING * largest(twice));
    });
  });

  test("positive semi-definite, six zeros only, for any laminate on a whole cell", () => {
    fc.assert(
      fc.property(laminate, side, side, (G, a, b) => {
        const k = eigenvalues(stiffness(G, a, b, FULL(a, b)), 24);
        expect(k[0]).toBeGreaterThan(-ROUNDING * k[23]);
        expect(k[6]).toBeGreaterThan(1e-8 * k[23]);
      }),
      runs,
    );
  });

  test("positive semi-definite for any laminate and any cover", () => {
    fc.assert(
      fc.property(laminate, side, side, lean, (G, a, b, l) => {
        const k = eigenvalues(stiffness(G, a, b, coverOf(a, b, l)), 24);
        expect(k[0]).toBeGreaterThan(-ROUNDING * k[23]);
      }),
      runs,
    );
  });

  test("a cloth at 22.5 degrees on a cell of which a corner is left stays positive", () => {
    // 0/90 cloth, 60 GPa and 4.5 GPa in shear, turned: A16 = -A26 is three quarters of A66.
    const [c, s] = [Math.cos(Math.PI / 8), Math.sin(Math.PI / 8)];
    const [Q11, Q12, Q66] = [60.2, 3, 4.5];
    const X = Q11 - Q12 - 2 * Q66;
    const A11 = Q11 - 2 * X * c * c * s * s;
    const A12 = Q12 + 2 * X * c * c * s * s;
    const A66 = Q66 + 2 * X * c * c * s * s;
    const A16 = X * c * s * (c * c - s * s);
    const Q = [
      [A11, A12, A16],
      [A12, A11, -A16],
      [A16, -A16, A66],
    ];
    const G = [0, 1, 2, 3, 4, 5].flatMap((i) =>
      [0, 1, 2, 3, 4, 5].map((j) => (i < 3 === j < 3 ? Q[i % 3][j % 3] : 0)),
    );
    expect(eigenvalues(G, 6)[0]).toBeGreaterThan(0);
    const k = eigenvalues(
      stiffness(G, 1, 1, coverOf(1, 1, { share: 0.02, up: 0.02, right: 0.02 })),
      24,
    );
    expect(k[0]).toBeGreaterThan(-ROUNDING * k[23]);
  });
});
