/** Values within their spread, against tables of the normal distribution. */

import { describe, expect, test } from "vitest";
import { InputError } from "../../src/errors.ts";
import { normalQuantile } from "../../src/study/normal.ts";
import {
  checkSpread,
  type SpreadInput,
  type SpreadRange,
  spreadValue,
  varies,
} from "../../src/study/spread-value.ts";

/** The normal distribution function: G. Marsaglia's series (J. Stat. Software 11, 2004; from memory). */
function normalShare(z: number): number {
  let term = z;
  let sum = z;
  for (let k = 3; Math.abs(term) > 1e-18 * Math.abs(sum); k += 2) {
    term *= (z * z) / k;
    sum += term;
  }
  return 0.5 + (sum * Math.exp((-z * z) / 2)) / Math.sqrt(2 * Math.PI);
}

describe("the normal quantile", () => {
  // Percentage points as in any table of the normal distribution, to the digits of a double.
  test.each([
    [0.4, -0.2533471031357997],
    [0.25, -0.6744897501960817],
    [0.1, -1.2815515655446004],
    [0.05, -1.6448536269514722],
    [0.025, -1.959963984540054],
    [0.005, -2.5758293035489004],
    [0.001, -3.090232306167813],
    [1e-6, -4.753424308822899],
    [1e-10, -6.361340902404056],
  ])("of %d is %d", (p, z) => {
    expect(Math.abs(normalQuantile(p) / z - 1)).toBeLessThan(2e-15);
    if (p > 1e-3) expect(Math.abs(normalQuantile(1 - p) / z + 1)).toBeLessThan(1e-13);
  });

  test("is undone by the distribution function", () => {
    for (let p = 0.002; p < 1; p += 0.0037) {
      expect(Math.abs(normalShare(normalQuantile(p)) - p)).toBeLessThan(2e-15);
    }
  });

  test("at the ends and outside", () => {
    expect([0, 0.5, 1].map(normalQuantile)).toEqual([-Infinity, 0, Infinity]);
    expect([-0.1, 1.1, Number.NaN].map(normalQuantile)).toEqual([NaN, NaN, NaN]);
  });
});

const input = (value: number, spread?: SpreadRange, kind = "mass"): SpreadInput => ({
  name: "arms.arm.thickness",
  kind,
  value,
  ...(spread ? { spread } : {}),
});
const even = (value: number, from: number, to: number, kind?: string) =>
  input(value, { from, to, scale: "even" }, kind);
const log = (value: number, from: number, to: number) => input(value, { from, to, scale: "log" });
/** Share of frames below `x`, by bisection. */
function shareBelow(of: SpreadInput, x: number): number {
  let [a, b] = [0, 1];
  for (let k = 0; k < 60; k++) {
    const u = (a + b) / 2;
    if (spreadValue(of, u) < x) a = u;
    else b = u;
  }
  return (a + b) / 2;
}
/** What is left of the normal distribution within three standard deviations. */
const whole = normalShare(3) - normalShare(-3);

describe.each([
  ["even", even(4e-3, 3.8e-3, 4.2e-3)],
  ["even, lopsided", even(4e-3, 3.7e-3, 4.1e-3)],
  ["log", log(0.02, 0.01, 0.04)],
  ["log, lopsided: a bolted joint", log(12.8, 5.3, 28)],
])("a spread %s", (_, of) => {
  const { from, to, scale } = of.spread as SpreadRange;

  test("has the nominal value as its median", () => {
    expect(spreadValue(of, 0.5)).toBe(of.value);
  });

  test("leaves as much beyond either end as the cut normal distribution", () => {
    const beyond = (normalShare(-1.959963984540054) - normalShare(-3)) / whole;
    expect(shareBelow(of, from)).toBeCloseTo(beyond, 12);
    expect(shareBelow(of, to)).toBeCloseTo(1 - beyond, 12);
    expect(1 - 2 * beyond).toBeCloseTo(0.9526, 4);
  });

  test("has its standard deviation on either side", () => {
    const on = (x: number) => (scale === "even" ? x : Math.log(x));
    const below = (normalShare(-1) - normalShare(-3)) / whole;
    const sigmas = [from, to].map((end) => (on(end) - on(of.value)) / 1.959963984540054);
    expect(on(spreadValue(of, below))).toBeCloseTo(on(of.value) + sigmas[0], 12);
    expect(on(spreadValue(of, 1 - below))).toBeCloseTo(on(of.value) + sigmas[1], 12);
    expect(on(spreadValue(of, 0))).toBeCloseTo(on(of.value) + 3 * sigmas[0], 12);
    expect(on(spreadValue(of, 1))).toBeCloseTo(on(of.value) + 3 * sigmas[1], 12);
  });

  test("grows with the share", () => {
    const values = Array.from({ length: 201 }, (_, i) => spreadValue(of, i / 200));
    expect(values.every((v, i) => i === 0 || v > values[i - 1])).toBe(true);
  });
});

describe("what does not vary", () => {
  test("keeps its value", () => {
    for (const of of [input(2), even(2, 2, 2), log(2, 2, 2)]) {
      expect([0, 0.3, 1].map((u) => spreadValue(of, u))).toEqual([2, 2, 2]);
      expect(varies(of)).toBe(false);
    }
  });

  test("on one side keeps to the other", () => {
    const of = even(2, 2, 3);
    expect(varies(of)).toBe(true);
    expect([0, 0.3, 0.5].map((u) => spreadValue(of, u))).toEqual([2, 2, 2]);
    expect(spreadValue(of, 0.9)).toBeGreaterThan(2.5);
  });
});

describe("refused", () => {
  test.each([
    ["a value outside", even(5, 1, 4), /1 to 4 about 5/],
    ["ends the wrong way round", even(2, 3, 1), /3 to 1 about 2/],
    ["an end that is no number", even(2, Number.NaN, 3), /NaN to 3/],
    ["an endless end", log(2, 1, Number.POSITIVE_INFINITY), /finite/],
    ["a logarithm of zero", log(1, 0, 3), /lower end above 0/],
    ["a mass that could be negative", even(1, 0.2, 1.8), /as low as -0\.225, below 0.*narrower/],
  ])("%s", (_, of, says) => {
    expect(() => checkSpread(of)).toThrow(InputError);
    expect(() => spreadValue(of, 0.5)).toThrow(/^arms\.arm\.thickness: /);
    expect(() => checkSpread(of)).toThrow(says);
  });

  test("in the units of the file, where they are known", () => {
    const of = { ...even(6e-3, 4.8e-3, 5.1e-3), perSI: 1e3, unit: "mm" };
    expect(() => checkSpread(of)).toThrow(/is 4\.8 mm to 5\.1 mm about 6 mm\. .*a share such as/);
  });

  test.each([-0.01, 1.01, Number.NaN])("a share of %d", (u) => {
    expect(() => spreadValue(even(2, 1.9, 2.1), u)).toThrow(/from 0 to 1, but is/);
  });

  test("not a position on both sides of zero", () => {
    expect(spreadValue(even(0, -1e-3, 1e-3, "position"), 0.02)).toBeLessThan(-1e-3);
  });
});
