/** How errors of plates fall with the cell. */

import { describe, expect, test } from "vitest";
import { worstError } from "../compare.ts";
import {
  CANTILEVER,
  CLAMPED,
  errors,
  FREE_SQUARE,
  HINGED,
  HINGED_IN_Z,
  measuredOrders,
} from "./orders.ts";
import { FREE } from "./rectangle-values.ts";
import { ritzFrequencies } from "./ritz-values.ts";
import { shapeFrequencies } from "./shape-frame.ts";
import { turnedParameters } from "./turned-plates.ts";

describe("squares that fit the grid", () => {
  test.each([FREE_SQUARE, CLAMPED, HINGED, HINGED_IN_Z])(
    "$name: every mode gains from 8 to 16 cells with an order above 1.3",
    (square) => {
      expect(Math.min(...measuredOrders(square, 8))).toBeGreaterThan(1.3);
    },
  );

  test.each([
    { square: FREE_SQUARE, at32: 4e-4 },
    { square: CANTILEVER, at32: 4e-4 },
    { square: HINGED, at32: 3e-3 },
    { square: HINGED_IN_Z, at32: 3e-3 },
    { square: CLAMPED, at32: 4e-3 },
  ])("$square.name: within $at32 at 32 cells a side", ({ square, at32 }) => {
    for (const error of errors(square, 32)) expect(Math.abs(error)).toBeLessThan(at32);
  });

  test("held in z alone, hinged edges are hardly softer than with their slope held", () => {
    const [soft, stiff] = [errors(HINGED_IN_Z, 16), errors(HINGED, 16)];
    soft.forEach((error, i) => {
      expect(error).toBeLessThanOrEqual(stiff[i] + 1e-9);
      expect(error).toBeGreaterThan(stiff[i] - 3e-5);
    });
  });

  test("the first mode of the cantilever: order 1.5 for the ends of the clamped edge", () => {
    const [first] = measuredOrders(CANTILEVER, 16);
    expect(first).toBeGreaterThan(1.3);
    expect(first).toBeLessThan(1.8);
  });
});

describe("plates that do not fit the grid", () => {
  test("edges that cut cells at an angle: first order, from below", () => {
    const [coarse, fine] = [24, 48].map((cells) =>
      turnedParameters(0.3, 30, cells).map((value, i) => value / FREE[0].lambda[i] - 1),
    );
    fine.forEach((error, i) => {
      expect(coarse[i]).toBeLessThan(0);
      expect(Math.log2(coarse[i] / error)).toBeGreaterThan(0.8);
    });
    expect(Math.log2(coarse[0] / fine[0])).toBeLessThan(1.2);
  });

  test.each(["L", "held L", "six round holes", "window", "four windows", "deck"])(
    "%s: the worst error falls by half and more from 24 to 48 cells",
    (name) => {
      const [coarse, fine] = [24, 48].map((cells) =>
        worstError(shapeFrequencies(name, { cells }), ritzFrequencies(name)),
      );
      expect(fine).toBeLessThan(coarse / 2);
    },
  );
});
