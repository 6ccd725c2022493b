/** What the published plates have beyond their frequencies: rigid-body motions, orders, bounds. */

import { describe, expect, test } from "vitest";
import { expectClose } from "../compare.ts";
import { frequencies, solveFrame } from "../frequencies.ts";
import {
  outOfPlaneOnly,
  plateParameter,
  type Sheet,
  STEEL,
  sheetFrame,
  simplySupported,
} from "../sheet.ts";
import { plateFrame } from "./rectangle.ts";
import { FREE, type Held, parameters } from "./thin-square.ts";

const SQUARE: Sheet = { a: 10, b: 10, thickness: "50 mm", material: STEEL };
const free = FREE.map(Number);
const hinged = [2, 5, 5, 8, 10, 10, 13, 13].map((s) => Math.PI ** 2 * s);

/** log2 of the ratio of the errors of each mode with 16 and 32 cells a side. */
function orders(held: Held, exact: readonly number[]): number[] {
  const [coarse, fine] = [16, 32].map((cells) => parameters(held, 5, cells));
  return exact.map((e, i) => Math.log2(Math.abs((coarse[i] - e) / (fine[i] - e))));
}

describe("free square plate", () => {
  test("three rigid-body motions when held in its plane, six in space", () => {
    const held = solveFrame(sheetFrame(SQUARE, 8, outOfPlaneOnly(SQUARE)), { modes: 6 });
    expect(held.modes.rigid.length).toBe(3);
    const plate = { ratio: 1, thickness: 10, clampedRoot: false };
    expect(solveFrame(plateFrame(plate, 8), { modes: 6 }).modes.rigid.length).toBe(6);
  });

  test("the same bending either way: a symmetric sheet does not stretch with it", () => {
    const held = frequencies(sheetFrame(SQUARE, 16, outOfPlaneOnly(SQUARE)), { modes: 8 });
    const inSpace = frequencies(sheetFrame(SQUARE, 16, {}), { modes: 8 });
    expectClose(inSpace, held, 1e-8);
  });

  test("modes 2 and 3 stay apart; a bare grid of beams lets them fall together", () => {
    const found = parameters("free", 5, 16);
    expect(found[2] / found[1]).toBeGreaterThan(1.2);
  });

  test("second-order convergence in modes 1 to 7", () => {
    for (const order of orders("free", free.slice(0, 7))) {
      expect(order).toBeGreaterThan(1.85);
      expect(order).toBeLessThan(2.1);
    }
  });
});

describe("simply supported square plate", () => {
  test("second-order convergence in every mode", () => {
    for (const order of orders("hinged", hinged)) {
      expect(order).toBeGreaterThan(1.9);
      expect(order).toBeLessThan(2.1);
    }
  });

  test("edges held in z alone come to the same plate", () => {
    const soft = { ...outOfPlaneOnly(SQUARE), ...simplySupported(SQUARE, false) };
    const [coarse, fine] = [16, 32].map((cells) =>
      frequencies(sheetFrame(SQUARE, cells, soft), { modes: 6 }).map((f) =>
        plateParameter(f, SQUARE.a),
      ),
    );
    expectClose(fine, hinged.slice(0, 6), 2.5e-3);
    const error = (found: readonly number[], i: number) => Math.abs(found[i] / hinged[i] - 1);
    fine.forEach((_, i) => {
      expect(error(coarse, i) / error(fine, i)).toBeGreaterThan(3);
    });
  });
});
