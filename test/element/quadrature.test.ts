import { describe, expect, test } from "vitest";
import { GAUSS_4, GAUSS_5, polygonPoints, type Rule } from "../../src/element/quadrature.ts";

/** Sums of at most 300 terms of size 1 and less. */
const ROUNDING = 1e-14;

describe("Gauss-Legendre rules on [0, 1]", () => {
  test.each([
    { name: "GAUSS_4", rule: GAUSS_4, degree: 7 },
    { name: "GAUSS_5", rule: GAUSS_5, degree: 9 },
  ])("$name integrates x^0 to x^$degree exactly, and not x^($degree + 1)", ({ rule, degree }) => {
    const integral = (k: number) => rule.x.reduce((s, x, i) => s + rule.w[i] * x ** k, 0);
    for (let k = 0; k <= degree; k++) expect(integral(k)).toBeCloseTo(1 / (k + 1), 14);
    const beyond = Math.abs(integral(degree + 1) - 1 / (degree + 2));
    expect(beyond).toBeGreaterThan(1e-8);
  });

  test("symmetric about the middle", () => {
    const mirrored = (rule: Rule) => {
      const n = rule.x.length;
      for (let i = 0; i < n; i++) {
        expect(rule.x[i] + rule.x[n - 1 - i]).toBeCloseTo(1, 15);
        expect(rule.w[i]).toBe(rule.w[n - 1 - i]);
      }
    };
    mirrored(GAUSS_4);
    mirrored(GAUSS_5);
  });
});

/** Integral of x^p y^q over the points. */
function integral(points: ReturnType<typeof polygonPoints>, p: number, q: number): number {
  return points.w.reduce((s, w, i) => s + w * points.x[i] ** p * points.y[i] ** q, 0);
}

const factorial = (n: number): number => (n < 2 ? 1 : n * factorial(n - 1));

describe("integration over polygons", () => {
  const powers = Array.from({ length: 9 }, (_, d) =>
    Array.from({ length: d + 1 }, (_, q) => [d - q, q] as const),
  ).flat();

  test("all monomials up to degree 8 on the unit square, from any centre", () => {
    const square = Float64Array.of(0, 0, 1, 0, 1, 1, 0, 1);
    for (const centre of [
      [0.5, 0.5],
      [0, 0],
      [1.7, -0.4],
    ]) {
      const points = polygonPoints([square], centre[0], centre[1]);
      for (const [p, q] of powers) {
        const error = integral(points, p, q) - 1 / ((p + 1) * (q + 1));
        // From a centre outside, triangles of both signs and of size 10 cancel.
        expect(Math.abs(error), `x^${p} y^${q}`).toBeLessThan(1e3 * ROUNDING);
      }
    }
  });

  test("all monomials up to degree 8 on the unit triangle: p! q!/(p + q + 2)!", () => {
    const points = polygonPoints([Float64Array.of(0, 0, 1, 0, 0, 1)], 0.2, 0.3);
    for (const [p, q] of powers) {
      const exact = (factorial(p) * factorial(q)) / factorial(p + q + 2);
      expect(Math.abs(integral(points, p, q) - exact)).toBeLessThan(10 * ROUNDING);
    }
  });

  test("holes, clockwise, are taken away; polygons that are not convex work", () => {
    const square = Float64Array.of(0, 0, 4, 0, 4, 4, 0, 4);
    const hole = Float64Array.of(1, 1, 1, 2, 2, 2, 2, 1);
    const points = polygonPoints([square, hole], 2, 2);
    expect(integral(points, 0, 0)).toBeCloseTo(15, 12);
    expect(integral(points, 1, 0)).toBeCloseTo(32 - 1.5, 12);
    const L = Float64Array.of(0, 0, 3, 0, 3, 1, 1, 1, 1, 3, 0, 3);
    const bent = polygonPoints([L], 2.5, 2.5);
    expect(integral(bent, 0, 0)).toBeCloseTo(5, 12);
    expect(integral(bent, 2, 0)).toBeCloseTo(9 + 2 / 3, 12);
  });

  test("a bridge of no width, as clipping leaves it, adds nothing", () => {
    const two = Float64Array.of(0, 0, 1, 0, 1, 1, 0, 1);
    const bridged = Float64Array.of(0, 0, 1, 0, 3, 0, 4, 0, 4, 1, 3, 1, 3, 0, 1, 0, 1, 1, 0, 1);
    const one = polygonPoints([two], 0.5, 0.5);
    const both = polygonPoints([bridged], 0.5, 0.5);
    expect(integral(both, 0, 0)).toBeCloseTo(2 * integral(one, 0, 0), 13);
    expect(integral(both, 1, 1)).toBeCloseTo(0.25 + 3.5 * 0.5, 13);
  });
});
