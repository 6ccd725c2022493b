/** Shares of samples and their limits, against printed values and counted chances. */

import { describe, expect, test } from "vitest";
import { InputError } from "../../src/errors.ts";
import { chance } from "../../src/study/chance.ts";

describe("limits", () => {
  // R. G. Newcombe, "Two-sided confidence intervals for the single proportion", Statistics in
  // Medicine 17 (1998), table I, score method without continuity correction; from memory.
  test.each([
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
  ])("of %i in %i as printed", (count, of, lower, upper) => {
    const c = chance(count, of);
    expect(c.share).toBe(count / of);
    expect(Math.abs(c.lower - lower)).toBeLessThan(5.1e-5);
    expect(Math.abs(c.upper - upper)).toBeLessThan(5.1e-5);
  });

  test.each([0.5, 0.8, 0.93])("hold a true share of %d about 19 times in 20", (p) => {
    const n = 128;
    let held = 0;
    let mean = 0;
    let logBinomial = 0;
    for (let k = 0; k <= n; k++) {
      const weight = Math.exp(logBinomial + k * Math.log(p) + (n - k) * Math.log(1 - p));
      const { lower, upper, share, error } = chance(k, n);
      if (lower <= p && p <= upper) held += weight;
      mean += weight * error;
      expect(lower <= share && share <= upper && error > 0).toBe(true);
      logBinomial += Math.log((n - k) / (k + 1));
    }
    expect(Math.abs(held - 0.95)).toBeLessThan(0.02);
    expect(mean / Math.sqrt((p * (1 - p)) / n)).toBeCloseTo(1, 1);
  });
});

test("all and none are not known for certain", () => {
  const [none, all] = [chance(0, 32), chance(32, 32)];
  expect([none.share, none.lower, all.share, all.upper]).toEqual([0, 0, 1, 1]);
  expect(all.lower).toBeCloseTo(32 / (32 + 1.959964 ** 2), 6);
  expect(none.error).toBeCloseTo(0.5 / 33, 12);
});

test("a shared lead counts in part", () => {
  expect(chance(10.5, 32).share).toBe(10.5 / 32);
});

test.each([
  [1, 0],
  [0, 2.5],
  [-1, 4],
  [5, 4],
  [Number.NaN, 4],
])("%d of %d is refused", (count, of) => {
  expect(() => chance(count, of)).toThrow(InputError);
  expect(() => chance(count, of)).toThrow(`${count} of ${of}`);
});
