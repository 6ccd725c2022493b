/** Quantiles of samples and their errors, against known distributions. */

import { describe, expect, test } from "vitest";
import { InputError } from "../../src/errors.ts";
import { fixedSeedGenerator } from "../../src/linalg/random.ts";
import { type Band, bandOf, noiseBand } from "../../src/study/bands.ts";
import { normalQuantile } from "../../src/study/normal.ts";

const band = (values: readonly (number | undefined)[] | Float64Array): Band => {
  const b = bandOf(values);
  if (b === undefined) throw new Error("no band");
  return b;
};
const edges = ({ low, median, high }: Band) => [low, median, high];
const values = (b: Band) => edges(b).map((e) => e.value);
const errors = (b: Band) => edges(b).map((e) => e.error);
const { POSITIVE_INFINITY: ENDLESS } = Number;

describe("quantiles", () => {
  test("lie where definition 8 puts them, whatever the order", () => {
    // (n + 1/3) p + 1/3 of the numbers 1 to 39
    const numbers = Array.from({ length: 39 }, (_, i) => ((i * 17) % 39) + 1);
    expect(values(band(numbers)).map((v) => Number(v.toFixed(9)))).toEqual([2.3, 20, 37.7]);
  });

  test("of many normal numbers are those of the normal distribution", () => {
    const b = band(Array.from({ length: 4000 }, (_, i) => normalQuantile((i + 0.5) / 4000)));
    for (const [i, z] of [-1.6448536, 0, 1.6448536].entries()) {
      expect(values(b)[i]).toBeCloseTo(z, 3);
    }
  });

  test("of one value are that value, with nothing known of the edges", () => {
    expect(values(band([3]))).toEqual([3, 3, 3]);
    expect(errors(band([3])).every((e) => e === ENDLESS)).toBe(true);
  });
});

describe("errors", () => {
  test.each([32, 128, 512])("are those that %i random numbers show", (n) => {
    const runs = 300;
    const next = fixedSeedGenerator(12345 + n);
    const bands = Array.from({ length: runs }, () =>
      band(Float64Array.from({ length: n }, () => normalQuantile((next() + 1) / 2 + 1e-12))),
    );
    for (const i of [0, 1, 2]) {
      const found = bands.map((b) => values(b)[i]);
      const mean = found.reduce((sum, v) => sum + v, 0) / runs;
      const scatter = Math.hypot(...found.map((v) => v - mean)) / Math.sqrt(runs);
      const told = bands.reduce((sum, b) => sum + errors(b)[i], 0) / runs;
      expect(told / scatter).toBeGreaterThan(0.85);
      expect(told / scatter).toBeLessThan(1.25);
    }
  });

  test("of edges are not told from fewer than 20 values", () => {
    const of = (n: number) => errors(band(Array.from({ length: n }, (_, i) => i)));
    expect(of(19)).toEqual([ENDLESS, expect.any(Number), ENDLESS]);
    expect(of(20).every((e) => e > 0 && e < 10)).toBe(true);
  });

  test("vanish where all values are alike", () => {
    expect(errors(band(new Array(64).fill(2)))).toEqual([0, 0, 0]);
  });
});

describe("delays no chain attains", () => {
  const mixed = (endless: number) =>
    Array.from({ length: 100 }, (_, i) => (i < endless ? ENDLESS : i / 100));

  test("are the upper edge where more than one in twenty is", () => {
    const b = band(mixed(10));
    expect(b.endless).toBe(0.1);
    expect(b.high).toEqual({ value: ENDLESS, error: 0 });
    expect(b.median.value).toBeLessThan(1);
    expect(b.median.error).toBeLessThan(0.1);
  });

  test("leave an edge near them unknown", () => {
    const b = band(mixed(3));
    expect(b.high.value).toBeLessThan(1);
    expect(b.high.error).toBe(ENDLESS);
  });

  test("are all there is", () => {
    const b = band(mixed(100));
    expect(values(b)).toEqual([ENDLESS, ENDLESS, ENDLESS]);
    expect(errors(b)).toEqual([0, 0, 0]);
    expect(b.endless).toBe(1);
  });
});

test("a mode that was not found in some samples is counted", () => {
  const b = band([100, undefined, 102, undefined, 104]);
  expect([b.found, b.of, b.median.value]).toEqual([3, 5, 102]);
  expect(bandOf([undefined, undefined])).toBeUndefined();
  expect(bandOf([])).toBeUndefined();
});

describe("noise", () => {
  const gyro = Array.from({ length: 101 }, (_, i) => 10 * 10 ** ((i - 50) / 200));

  test("is told in deg/s and as a level about the reference", () => {
    const { perSecond, decibel } = noiseBand(gyro, 10);
    expect(perSecond.median.value).toBeCloseTo(10, 12);
    expect(decibel.median.value).toBeCloseTo(0, 12);
    expect(decibel.high.value).toBeCloseTo(-decibel.low.value, 12);
    expect(decibel.high.value).toBeCloseTo(20 * Math.log10(perSecond.high.value / 10), 3);
    expect(noiseBand(gyro, 5).decibel.median.value).toBeCloseTo(20 * Math.log10(2), 12);
  });

  test.each([
    ["a value of 0", [1, 0], 1],
    ["an endless value", [1, ENDLESS], 1],
    ["a reference below 0", [1, 2], -1],
    ["no values", [], 1],
  ])("with %s is refused", (_, bad, reference) => {
    expect(() => noiseBand(bad, reference)).toThrow(InputError);
  });
});

test.each([Number.NaN, Number.NEGATIVE_INFINITY])("%d is refused", (bad) => {
  expect(() => bandOf([1, bad, 2])).toThrow(InputError);
  expect(() => bandOf([1, bad, 2])).toThrow(`but one is ${bad}`);
});
