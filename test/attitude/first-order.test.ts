import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { follow, pairWeights } from "../../src/attitude/first-order.ts";
import { between, RUNS } from "../filter/filter-orders.ts";

const samples = (m: (t: number) => number, end: number, pairs: number) =>
  Float64Array.from({ length: 2 * pairs + 1 }, (_, i) => m((end * i) / (2 * pairs)));

const last = (values: ArrayLike<number>) => values[values.length - 1];

describe("a first-order lag", () => {
  test("is exact for parabolas, however long the steps", () => {
    // e = m - tau m' + tau^2 m'' solves e' = (m - e)/tau; the rest dies away as exp(-t/tau)
    fc.assert(
      fc.property(
        fc.tuple(between(-1, 1), between(-1, 1), between(-1, 1), between(-1, 1)),
        between(-4, 4),
        fc.integer({ min: 1, max: 5 }),
        ([a, b, c, start], power, pairs) => {
          const tau = 10 ** power;
          const h = 1 / pairs;
          const m = (t: number) => a + b * t + c * t * t;
          const particular = (t: number) => m(t) - tau * (b + 2 * c * t) + 2 * tau * tau * c;
          const ours = last(follow(pairWeights(h / tau), samples(m, 1, pairs), start));
          const exact = particular(1) + (start - particular(0)) * Math.exp(-1 / tau);
          // the closed form itself cancels for long tau
          expect(Math.abs(ours - exact)).toBeLessThan(1e-14 + 1e-15 * tau * tau);
        },
      ),
      RUNS,
    );
  });

  test.each([1e-6, 1e-3, 0.1, 0.999, 1.001, 3, 50, 1e5])(
    "weights and decay add up to one: x = %d",
    (x) => {
      const { decay, w } = pairWeights(x);
      expect(decay + w[0] + w[1] + w[2]).toBeCloseTo(1, 14);
    },
  );

  test("tends to Simpson's rule for short steps", () => {
    const { w } = pairWeights(1e-5);
    const simpson = [1 / 6, 4 / 6, 1 / 6];
    w.forEach((value, i) => {
      expect(value / 1e-5).toBeCloseTo(simpson[i], 4);
    });
  });

  test("errs with the fourth power of the step for what is smooth", () => {
    // m = cos(w t): e = (cos(w t) + w tau sin(w t) - exp(-t/tau))/(1 + (w tau)^2) from zero
    const [w, tau, end] = [7, 0.4, 1.3];
    const u = w * tau;
    const exact = (Math.cos(w * end) + u * Math.sin(w * end) - Math.exp(-end / tau)) / (1 + u * u);
    const error = (pairs: number) => {
      const m = samples((t) => Math.cos(w * t), end, pairs);
      return Math.abs(last(follow(pairWeights(end / pairs / tau), m, 0)) - exact);
    };
    expect(error(90)).toBeLessThan(1e-7);
    expect(error(90) / error(180)).toBeGreaterThan(15);
    expect(error(90) / error(180)).toBeLessThan(17);
  });
});
