/**
 * Uniform beams with every pair of ends: x^2 = omega sqrt(rho A L^4 / (E I)).
 *
 * W. T. Thomson, Theory of Vibration with Applications, appendix D, prints clamped-clamped and
 * clamped-free to five digits (free-free as clamped-clamped); R. D. Blevins, Formulas for Natural
 * Frequency and Mode Shape, table 8-1, the cantilever to seven (as quoted). The roots below solve the
 * same frequency equations in 30-digit arithmetic and agree with both.
 */

import { describe, expect, test } from "vitest";
import { expectClose } from "./compare.ts";
import { frequencies, onePerPair, solveFrame } from "./frequencies.ts";
import { angular, type End, meshError, unitBeam } from "./unit-beam.ts";

/** Roots x of the frequency equation, first four elastic modes. */
const ROOTS: readonly { ends: readonly [End, End]; equation: string; x: readonly number[] }[] = [
  {
    ends: ["clamped", "free"],
    equation: "cos x cosh x + 1 = 0",
    x: [1.87510406871, 4.69409113297, 7.85475743824, 10.9955407349],
  },
  {
    ends: ["free", "free"],
    equation: "cos x cosh x - 1 = 0",
    x: [4.73004074486, 7.8532046241, 10.995607838, 14.1371654913],
  },
  {
    ends: ["clamped", "clamped"],
    equation: "cos x cosh x - 1 = 0",
    x: [4.73004074486, 7.8532046241, 10.995607838, 14.1371654913],
  },
  {
    ends: ["pinned", "pinned"],
    equation: "sin x = 0",
    x: [Math.PI, 2 * Math.PI, 3 * Math.PI, 4 * Math.PI],
  },
  {
    ends: ["clamped", "pinned"],
    equation: "tan x = tanh x",
    x: [3.92660231205, 7.06858274563, 10.2101761228, 13.3517687778],
  },
  {
    ends: ["pinned", "free"],
    equation: "tan x = tanh x",
    x: [3.92660231205, 7.06858274563, 10.2101761228, 13.3517687778],
  },
  {
    ends: ["clamped", "guided"],
    equation: "tan x = -tanh x",
    x: [2.36502037243, 5.497803919, 8.6393798287, 11.780972451],
  },
  {
    ends: ["pinned", "guided"],
    equation: "cos x = 0",
    x: [Math.PI / 2, (3 * Math.PI) / 2, (5 * Math.PI) / 2, (7 * Math.PI) / 2],
  },
];

const ELEMENTS = 32;

describe("uniform Euler-Bernoulli beams", () => {
  test.each(ROOTS)("$ends.0 and $ends.1: $equation", ({ ends, x }) => {
    const found = angular(frequencies(unitBeam(...ends, ELEMENTS), { modes: 8 }));
    // Each mode twice, once per bending plane: equal to the rounding of 32 elements.
    expectClose(
      onePerPair(found.slice(1)),
      found.filter((_, i) => i % 2 === 0),
      1e-9,
    );
    // Consistent elements come from above (Rayleigh-Ritz) and no further than their known error.
    x.forEach((root, i) => {
      const ratio = found[2 * i] / root ** 2;
      expect(ratio, `mode ${i + 1}`).toBeGreaterThan(1 - 1e-9);
      expect(ratio, `mode ${i + 1}`).toBeLessThan(1 + meshError(root, ELEMENTS) + 1e-9);
    });
  });

  test("the printed values, to their last digit", () => {
    const cantilever = angular(frequencies(unitBeam("clamped", "free", ELEMENTS), { modes: 8 }));
    // Blevins, x to seven digits.
    expectClose(onePerPair(cantilever).map(Math.sqrt), [1.875104, 4.694091, 7.854757], 2e-6);
    // Thomson, x^2 to six digits.
    expectClose(onePerPair(cantilever), [3.516, 22.0345, 61.6972], 1e-5);
    const free = angular(frequencies(unitBeam("free", "free", ELEMENTS), { modes: 6 }));
    expectClose(onePerPair(free), [22.3733, 61.6728, 120.9034], 2e-5);
  });

  test("halving the elements divides the error by sixteen", () => {
    const error = (n: number) => {
      const found = angular(frequencies(unitBeam("clamped", "free", n), { modes: 6 }));
      return found[4] / 61.6972144135 - 1;
    };
    const order = Math.log2(error(8) / error(16));
    expect(order).toBeGreaterThan(3.9);
    expect(order).toBeLessThan(4.1);
  });

  test("the rigid-body motions that the ends leave free are set apart", () => {
    const rigid = (left: End, right: End) =>
      solveFrame(unitBeam(left, right, 4), { modes: 2 }).modes.rigid.length;
    expect(rigid("free", "free")).toBe(6);
    expect(rigid("pinned", "free")).toBe(2); // it swings about the pin in both planes
    expect(rigid("guided", "free")).toBe(2); // it slides across
    expect(rigid("pinned", "guided")).toBe(0);
    expect(rigid("clamped", "free")).toBe(0);
  });
});
