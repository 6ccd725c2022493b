/** The sequence of sample points: even in every coordinate, better than random in all of them together. */

import { describe, expect, test } from "vitest";
import { InputError } from "../../src/errors.ts";
import { fixedSeedGenerator } from "../../src/linalg/random.ts";
import { haltonSequence } from "../../src/study/halton.ts";

type Points = readonly Float64Array[];

const SEEDS = [1, 2, 3, 4, 5, 6, 7, 8];
const halton = (n: number, d: number, seed: number): Points => {
  const sequence = haltonSequence(d, seed);
  return Array.from({ length: n }, (_, i) => sequence.point(i));
};
const random = (n: number, d: number, seed: number): Points => {
  const next = fixedSeedGenerator(seed);
  return Array.from({ length: n }, () => Float64Array.from({ length: d }, () => (next() + 1) / 2));
};
const rms = (values: readonly number[]) => Math.hypot(...values) / Math.sqrt(values.length);

/** Squared L2 star discrepancy: T. T. Warnock's formula (1972; from memory). */
function discrepancy(points: Points): number {
  const n = points.length;
  const d = points[0].length;
  let single = 0;
  let double = 0;
  for (const x of points) {
    single += x.reduce((product, u) => product * (1 - u * u), 1);
    for (const y of points) double += x.reduce((p, u, j) => p * (1 - Math.max(u, y[j])), 1);
  }
  return 3 ** -d - (2 ** (1 - d) / n) * single + double / n ** 2;
}

test("the discrepancy of one point in the middle is that of the closed form", () => {
  // integral of (1[u > 1/2] - u)^2 over 0..1
  expect(discrepancy([Float64Array.of(0.5)])).toBeCloseTo(1 / 12, 12);
});

describe("every coordinate", () => {
  const bases = [2, 3, 5, 7, 11, 13, 17, 19, 23, 29];

  test.each(bases.map((base, j) => [base, j]))(
    "of base %i has a point in each interval",
    (b, j) => {
      const sequence = haltonSequence(10, 77);
      for (let cells = b; cells <= 1000; cells *= b) {
        for (const block of [0, 1, 5]) {
          const hit = Array.from({ length: cells }, (_, i) =>
            Math.floor(cells * sequence.point(block * cells + i)[j]),
          ).sort((p, q) => p - q);
          expect(hit).toEqual(Array.from({ length: cells }, (_, i) => i));
        }
      }
    },
  );

  test("of a hundred is from 0 to below 1, and the first 541 fill the intervals of the last", () => {
    const points = halton(541, 100, 3);
    expect(points.every((x) => x.every((u) => u >= 0 && u < 1))).toBe(true);
    expect(new Set(points.map((x) => Math.floor(541 * x[99]))).size).toBe(541);
  });

  test("is uncorrelated with its neighbour where the bases are large and the points few", () => {
    // Without permutations the coordinates of bases 107 and 109 lie on a line: correlation 0.9 and more.
    const correlation = (seed: number) => {
      const points = halton(64, 30, seed);
      const [a, b] = [27, 28].map((j) => points.map((x) => x[j] - 0.5));
      const dot = (p: number[], q: number[]) => p.reduce((sum, v, i) => sum + v * q[i], 0);
      return dot(a, b) / Math.sqrt(dot(a, a) * dot(b, b));
    };
    expect(rms(SEEDS.map(correlation))).toBeLessThan(0.25);
  });
});

describe("against random points", () => {
  test.each([
    [8, 0.9],
    [30, 0.95],
  ])("the discrepancy in %i dimensions is lower", (d, most) => {
    const mean = (make: typeof halton) =>
      rms(SEEDS.map((seed) => Math.sqrt(discrepancy(make(128, d, seed)))));
    expect(mean(halton) / mean(random)).toBeLessThan(most);
  });

  test.each([
    [8, 0.4],
    [30, 0.7],
    [100, 0.95],
  ])("the integral of a smooth product in %i dimensions has a smaller error", (d, most) => {
    const many = Array.from({ length: 40 }, (_, i) => 100 + i);
    const product = (x: Float64Array) =>
      x.reduce((p, u, j) => p * (1 + (1.5 * (u - 0.5)) / Math.sqrt(1 + j)), 1);
    const error = (make: typeof halton) =>
      rms(many.map((s) => make(128, d, s).reduce((sum, x) => sum + product(x), 0) / 128 - 1));
    expect(error(halton) / error(random)).toBeLessThan(most);
  });
});

describe("the same points", () => {
  test("whenever they are asked for, and in whatever order", () => {
    const [a, b] = [haltonSequence(20, 9), haltonSequence(20, 9)];
    const late = b.point(500);
    expect(a.point(0)).toEqual(b.point(0));
    expect(a.point(500)).toEqual(late);
  });

  test("however many dimensions follow", () => {
    const [few, more] = [haltonSequence(5, 9), haltonSequence(40, 9)];
    for (const i of [0, 1, 31, 4095]) expect(more.point(i).slice(0, 5)).toEqual(few.point(i));
  });

  test("but not from another seed", () => {
    const [a, b] = [haltonSequence(30, 1).point(7), haltonSequence(30, 2).point(7)];
    expect(a.filter((u, j) => u === b[j]).length).toBe(0);
  });
});

test.each([
  ["dimensions", () => haltonSequence(401, 1), "401"],
  ["dimensions", () => haltonSequence(-1, 1), "-1"],
  ["seed", () => haltonSequence(3, 1.5), "1.5"],
  ["seed", () => haltonSequence(3, Number.NaN), "NaN"],
  ["index", () => haltonSequence(3, 1).point(-1), "-1"],
])("bad %s are refused with the value", (path, make, value) => {
  expect(make).toThrow(InputError);
  expect(make).toThrow(new RegExp(`^${path}: .*whole number from 0 to \\d+, but is ${value}\\.`));
});

test("no dimensions make empty points", () => {
  expect(haltonSequence(0, 1).point(3)).toEqual(new Float64Array(0));
});
