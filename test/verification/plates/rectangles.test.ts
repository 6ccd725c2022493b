/** What the rectangles show beyond numbers against a reference. */

import { describe, expect, test } from "vitest";
import { expectClose, worstError } from "../compare.ts";
import { frequencies } from "../frequencies.ts";
import { type Sheet, STEEL, sheetFrame } from "../sheet.ts";
import { closedForm, crossPly, crossPlyFrequencies, TABULATED } from "./cross-ply.ts";
import { CLAMPED_AT_ONE_EDGE, FREE } from "./rectangle-values.ts";
import { RITZ, ritzParameters } from "./ritz-values.ts";
import { thinParameters } from "./thin-plate.ts";

describe("a grid of beams that carries a plate", () => {
  test.each([8, 16])(
    "with %i cells modes 2 and 3 stay apart where Poisson's ratio parts them",
    (cells) => {
      // A bare grid lets them fall together: 20.84, 20.84 or 22.24, 22.24 for 19.60, 24.27.
      const found = thinParameters(1, 0.3, {}, cells, 3);
      expect(found[2] / found[1]).toBeGreaterThan(1.23);
      expect(found[2] / found[1]).toBeLessThan(1.245);
    },
  );

  test("without Poisson's ratio they bend like beams, a pair", () => {
    // x^2 of cos x cosh x = 1: the free beam's first and second frequency, twice each
    const [first, second] = [22.3732854481, 61.6728228679];
    const found = thinParameters(1, 0, {}, 16, 7);
    expectClose([found[1], found[2]], [first, first], 5e-6);
    expectClose([found[5], found[6]], [second, second], 2e-5);
  });

  test("without Poisson's ratio the cantilever bends like a beam in modes 1 and 3", () => {
    const held = ritzParameters(1, 0, true);
    expectClose([held[0], held[2]], [3.5160152685, 22.0344915647], 1e-6);
  });

  test("twist comes from both directions: half the torsion constant of strips", () => {
    // Strips with b t^3/3 instead of b t^3/6 each way give 18.24 for the twisting mode.
    expect(thinParameters(1, 0.3, {}, 16, 1)[0]).toBeLessThan(13.6);
  });

  test("a strip as coarse as the narrow plates of a frame: bending and twisting within 1 %", () => {
    const found = thinParameters(2.5, 0.3, {}, 10, 3);
    expectClose(found, FREE[4].lambda.slice(0, 3), 0.01);
  });

  test("turned by a quarter, a plate keeps its frequencies", () => {
    const lying: Sheet = { a: 10, b: 4, thickness: "50 mm", material: STEEL };
    const upright: Sheet = { ...lying, a: 4, b: 10 };
    const one = frequencies(sheetFrame(lying, 10, {}), { modes: 10 });
    const other = frequencies(sheetFrame(upright, 4, {}), { modes: 10 });
    expectClose(one, other, 1e-9);
  });

  test("a/b and b/a are the same free plate, but for rotary inertia", () => {
    const broad = thinParameters(2 / 3, 0.3, {}, 24, 8).map((l) => l * 1.5 ** 2);
    const narrow = thinParameters(1.5, 0.3, {}, 24, 8);
    expectClose(broad, narrow, 5e-6);
  });
});

describe("references", () => {
  const computed = (clamped: boolean) => RITZ.rectangles.filter((r) => r.clamped === clamped);

  test("Legendre products and C1 splines agree on every rectangle", () => {
    for (const { ratio, nu, lambda } of FREE) {
      expectClose(ritzParameters(ratio, nu, false), lambda, 1e-6);
    }
    for (const { ratio, nu, lambda } of CLAMPED_AT_ONE_EDGE) {
      const splines = ritzParameters(ratio, nu, true);
      expectClose(splines, lambda, 1e-4);
      // both are upper bounds, and splines crowded towards the clamped corners the lower ones
      lambda.forEach((value, i) => {
        expect(splines[i]).toBeLessThan(value * (1 + 2e-5));
      });
    }
    expect(computed(false).length).toBe(FREE.length);
    expect(computed(true).length).toBe(CLAMPED_AT_ONE_EDGE.length);
  });

  test("the plates of other outlines are converged to a tenth of what is asked of the mesh", () => {
    for (const { change } of Object.values(RITZ.plates)) expect(change).toBeLessThan(5e-5);
  });
});

describe("simply supported cross-ply plate", () => {
  const square = crossPly(0.2, 0.2);

  test("the closed form is the tabulated one but for rotary inertia", () => {
    const tabulated = TABULATED.map(Number);
    const without = closedForm(square, 6, false).map((w) => w.frequency);
    expectClose(without, tabulated, 1e-8);
    const withRotary = closedForm(square, 6, true).map((w) => w.frequency);
    expectClose(withRotary, tabulated, 6e-4);
    expect(withRotary.every((f, i) => f < tabulated[i])).toBe(true);
  });

  test("halving the cells takes off more than half of the worst error", () => {
    const exact = closedForm(square, 6, true).map((w) => w.frequency);
    const [coarse, fine] = [12, 24].map((cells) => crossPlyFrequencies(square, cells, 6));
    expect(worstError(fine, exact)).toBeLessThan(worstError(coarse, exact) / 2);
  });
});
