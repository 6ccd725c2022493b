/** The natural coordinates of a stack on its mounts, against its matrices and direct solutions. */

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { factorComplexInPlace, solveFactored } from "../../src/linalg/small-complex.ts";
import type { Vec3 } from "../../src/model/types.ts";
import { mountStiffness, type StackDynamics } from "../../src/response/mount-stiffness.ts";
import { stackCoordinates } from "../../src/response/stack.ts";

const at = (A: Float64Array, i: number, j: number) => A[6 * i + j];
const SIX = [0, 1, 2, 3, 4, 5];

/** Four mounts in no order at all, a box of some mass, and a loss factor. */
const stacks = fc
  .record({
    mounts: fc.array(
      fc.tuple(fc.integer({ min: -30, max: 30 }), fc.integer({ min: -30, max: 30 })),
      {
        minLength: 4,
        maxLength: 6,
      },
    ),
    height: fc.integer({ min: -20, max: 20 }),
    grams: fc.integer({ min: 1, max: 200 }),
    axial: fc.integer({ min: 200, max: 200_000 }),
    lateral: fc.integer({ min: 100, max: 100_000 }),
    loss: fc.integer({ min: 1, max: 100 }),
  })
  .map(({ mounts, height, grams, axial, lateral, loss }): StackDynamics & { K: Float64Array } => {
    const m = grams * 1e-3;
    const M = Float64Array.of(m, m, m, 8e-5 * m, 11e-5 * m, 17e-5 * m);
    const points = mounts.map(([x, y]): Vec3 => [x * 1e-3, y * 1e-3, -height * 1e-3]);
    const K = mountStiffness(points, [0, 0, 0], axial, lateral);
    return { M, K, lossFactor: loss / 100 };
  });

test("W carries mass and stiffness, and back undoes it", () => {
  fc.assert(
    fc.property(stacks, (stack) => {
      const { W, back, kappa } = stackCoordinates(stack);
      const most = Math.max(...kappa);
      for (const i of SIX) {
        for (const j of SIX) {
          const sum = (f: (k: number) => number) => SIX.reduce((s, k) => s + f(k), 0);
          const scale = Math.sqrt(stack.M[i] * stack.M[j]);
          const same = i === j ? 1 : 0;
          // u'M u = |W u|^2 and u'K u = sum of kappa (W u)^2
          expect(sum((k) => at(W, k, i) * at(W, k, j)) / scale).toBeCloseTo(same, 9);
          const stiff = sum((k) => kappa[k] * at(W, k, i) * at(W, k, j)) - at(stack.K, i, j);
          expect(Math.abs(stiff) / (scale * most)).toBeLessThan(1e-9);
          expect(sum((k) => at(W, i, k) * at(back, k, j))).toBeCloseTo(same, 9);
        }
      }
    }),
    { seed: 31, numRuns: 60 },
  );
});

/** s of (K (1 + i eta) - omega^2 M) s = K (1 + i eta) b. */
function moved(
  { M, K, lossFactor }: StackDynamics & { K: Float64Array },
  omega: number,
  b: readonly number[],
) {
  const Ar = K.map((k, i) => (i % 7 === 0 ? k - omega ** 2 * M[i / 7] : k));
  const Ai = K.map((k) => lossFactor * k);
  const re = Float64Array.from(SIX, (i) => SIX.reduce((s, j) => s + at(K, i, j) * b[j], 0));
  const im = re.map((v) => lossFactor * v);
  const order = new Int32Array(6);
  factorComplexInPlace(Ar, Ai, 6, order);
  const B = Float64Array.from({ length: 12 }, (_, c) => (c % 2 === 0 ? re : im)[Math.floor(c / 2)]);
  const X = new Float64Array(12);
  solveFactored(Ar, Ai, 6, order, X, B, 1);
  const part = (first: number) => Float64Array.from(SIX, (i) => X[2 * i + first]);
  return { re: part(0), im: part(1) };
}

test("in these coordinates each motion follows its own part of the seat's alone", () => {
  const share = fc.integer({ min: -100, max: 100 });
  const motion = fc.array(share, { minLength: 6, maxLength: 6 });
  fc.assert(
    fc.property(stacks, motion, fc.integer({ min: 20, max: 5000 }), (stack, b, omega) => {
      fc.pre(b.some((v) => v !== 0));
      const s = moved(stack, omega, b);
      const { W, kappa } = stackCoordinates(stack);
      const own = (u: ArrayLike<number>) =>
        SIX.map((k) => SIX.reduce((sum, j) => sum + at(W, k, j) * u[j], 0));
      const [seat, re, im] = [own(b), own(s.re), own(s.im)];
      const size = Math.hypot(...seat, ...re, ...im);
      for (const k of SIX) {
        // (kappa (1 + i eta) - omega^2) y = kappa (1 + i eta) b, multiplied out
        const [p, q] = [kappa[k] - omega ** 2, stack.lossFactor * kappa[k]];
        const scale = (Math.abs(kappa[k]) + omega ** 2) * size;
        expect(Math.abs(p * re[k] - q * im[k] - kappa[k] * seat[k]) / scale).toBeLessThan(1e-8);
        expect(Math.abs(p * im[k] + q * re[k] - q * seat[k]) / scale).toBeLessThan(1e-8);
      }
    }),
    { seed: 37, numRuns: 60 },
  );
});

describe("the squares kappa", () => {
  const M = Float64Array.of(0.02, 0.02, 0.02, 2e-6, 3e-6, 4e-6);
  const [a, b, k, kl] = [0.015, 0.012, 6e3, 3e3];
  const corners = [1, -1].flatMap((i) => [1, -1].map((j): Vec3 => [i * a, j * b, 0]));

  test("are four springs over the mass, or over the moment of inertia", () => {
    const K = mountStiffness(corners, [0, 0, 0], k, kl);
    const { kappa } = stackCoordinates({ M, K, lossFactor: 0.2 });
    const expected = [
      (4 * kl) / M[0],
      (4 * kl) / M[1],
      (4 * k) / M[2],
      (4 * k * b * b) / M[3],
      (4 * k * a * a) / M[4],
      (4 * kl * (a * a + b * b)) / M[5],
    ].sort((p, q) => p - q);
    expected.forEach((v, i) => {
      expect(kappa[i] / v).toBeCloseTo(1, 11);
    });
  });

  test("are infinite for a stack that is screwed down, and W is the root of its mass", () => {
    const { W, kappa } = stackCoordinates({ M, K: undefined, lossFactor: 0 });
    expect([...kappa]).toEqual(SIX.map(() => Number.POSITIVE_INFINITY));
    for (const i of SIX)
      for (const j of SIX) expect(at(W, i, j)).toBe(i === j ? Math.sqrt(M[i]) : 0);
  });

  test.each([
    ["no mass", 0, 0],
    ["no inertia about z", 5, 0],
    ["a negative inertia", 3, -1e-6],
    ["a mass that is no number", 1, Number.NaN],
    ["a mass without end", 2, Number.POSITIVE_INFINITY],
  ])("do not exist for %s", (_, i, value) => {
    const wrong = M.slice();
    wrong[i] = value;
    expect(() => stackCoordinates({ M: wrong, K: undefined, lossFactor: 0 })).toThrow(
      /mass and inertia above zero/,
    );
  });
});
