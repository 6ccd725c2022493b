/** The very filters, run on the sum of all motors' sines: what comes out is what was promised. */

import { describe, expect, test } from "vitest";
import { burdenTable } from "../../src/filter/burden-table.ts";
import type { BurdenSetup } from "../../src/filter/burden-types.ts";
import { filterBurden } from "../../src/filter/filter-burden.ts";
import { lowPassSections } from "../../src/filter/low-pass.ts";
import { motorNotches, motorSpeeds } from "./brute-force.ts";
import { lineOf, PLAIN } from "./burden-setups.ts";
import { runFilters } from "./run-filters.ts";

const fs = 2000;
/** Motors at 0.985, 0.995, 1.005 and 1.015 of 200 and 400 rev/s: whole numbers of Hz. */
const SETUP: BurdenSetup = {
  ...PLAIN,
  fs,
  speeds: Float64Array.of(200, 400),
  weights: Float64Array.of(0.7, 0.3),
  rotors: 4,
  motorSpread: Math.sqrt(5) * 0.005,
  notch: { quality: 4, trackingError: 0.01 },
};
/** The third folds at 400 rev/s: 1200 Hz shows at 800 Hz, where no notch is. */
const LINES = [1, 2, 3].map((order) => lineOf(SETUP, order));
const POWERS = [Float64Array.of(4, 9), Float64Array.of(1, 0.5), Float64Array.of(0.5, 2)];

/** Filters have settled after two seconds; a window of one second holds whole periods. */
const [SETTLED, WINDOW] = [2 * fs, fs];

describe.each([
  // target, what is asked for with notches
  [0.06, [1, 2, 3]],
  [0.6, [1, 2]],
  [0.8, [1]],
  [2.2, []],
] as const)("with a target of %f deg/s", (target, notches) => {
  const setup = { ...SETUP, target };
  const burden = filterBurden(burdenTable(setup, LINES), POWERS);

  test(`notches on ${notches.length} multiples`, () => {
    expect(burden.with.notches).toEqual(notches);
  });

  test.each(["without", "with"] as const)("%s notches", (kind) => {
    const { lowPass, notches, residual, residualOfLines } = burden[kind];
    const lowPasses = lowPass ? lowPassSections(lowPass, fs) : [];
    const left = LINES.map(({ order }, l) => {
      let mean = 0;
      for (const [i, speed] of SETUP.speeds.entries()) {
        const input = sines(order, speed, POWERS[l][i]);
        for (const miss of [0.01, -0.01]) {
          const filters = [...motorNotches(setup, notches, speed, miss), ...lowPasses];
          mean += (SETUP.weights[i] / 2) * meanSquare(runFilters(filters, input));
        }
      }
      return mean;
    });
    left.forEach((square, l) => {
      expect(Math.abs(residualOfLines[l] ** 2 / square - 1)).toBeLessThan(2e-3);
    });
    const total = left.reduce((sum, square) => sum + square, 0);
    expect(Math.abs(residual ** 2 / total - 1)).toBeLessThan(2e-3);
  });
});

test("raw is the rms of the input", () => {
  let mean = 0;
  for (const [i, speed] of SETUP.speeds.entries()) {
    LINES.forEach(({ order }, l) => {
      mean += SETUP.weights[i] * meanSquare(sines(order, speed, POWERS[l][i]));
    });
  }
  const { raw } = filterBurden(burdenTable(SETUP, LINES), POWERS);
  expect(raw).toBeCloseTo(Math.sqrt(mean), 9);
});

/** All motors' sines of one multiple, sampled as they come: what lies above fs/2 folds by itself. */
function sines(order: number, speed: number, power: number): Float64Array {
  const motors = motorSpeeds(SETUP, speed);
  const amplitude = Math.sqrt((2 * power) / motors.length);
  return Float64Array.from({ length: SETTLED + WINDOW }, (_, n) =>
    motors.reduce((x, of, r) => {
      return x + amplitude * Math.cos((2 * Math.PI * order * of * n) / fs + r);
    }, 0),
  );
}

function meanSquare(y: Float64Array): number {
  return y.subarray(SETTLED).reduce((sum, x) => sum + x * x, 0) / WINDOW;
}
