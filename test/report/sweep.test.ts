/** The page's arithmetic of levels against speed and frequency, beside that of the analysis. */

import { describe, expect, test } from "vitest";
import { spreadPower } from "../../src/excitation/spread.ts";
import {
  labelPlaces,
  powersFrom,
  spreadLevels,
  sweepDensity,
} from "../../src/report/client/sweep.ts";
import { unitsOf } from "../../src/report/spectra.ts";
import { packUnit, unpackUnit } from "../../src/report/unit-codec.ts";

/** 8 000 to 30 000 rpm, with a resonance of 2 % loss met at 20 000 rpm times `at`. */
const RPM = [8000, 30_000] as const;
const COUNT = 300;
const GRID = Float64Array.from(
  { length: COUNT },
  (_, i) => RPM[0] + ((RPM[1] - RPM[0]) * i) / (COUNT - 1),
);
const resonance = (at: number) =>
  GRID.map((w) => {
    const r = w / (20_000 * at);
    return w ** 4 / 1e16 / ((1 - r * r) ** 2 + 0.02 ** 2);
  });

describe("packed powers", () => {
  test("come back within 0.15 % in amplitude, over ten decades of power", () => {
    const power = Float64Array.from({ length: 400 }, (_, i) => 37 * 10 ** (-i / 40));
    const back = powersFrom(unpackUnit(packUnit(unitsOf(power, 37))), 37);
    for (const [i, p] of power.entries()) {
      expect(Math.abs(Math.sqrt(back[i] / p) - 1)).toBeLessThan(0.0015);
    }
  });

  test("that are nothing stay nothing", () => {
    const back = powersFrom(unpackUnit(packUnit(unitsOf(Float64Array.of(0, 1), 1))), 1);
    expect(Array.from(back)).toEqual([0, 1]);
  });
});

describe("levels with the motors' spread", () => {
  // A resonance of 2 % lies between few of the nodes when these are 0.4 % of the speed apart.
  test.each([
    [0.01, 1e-3],
    [0.03, 1e-3],
    [0.08, 4e-3],
  ])("of %d are those of the analysis", (spread, off) => {
    const power = resonance(1);
    const expected = spreadPower(GRID, power, spread);
    const levels = spreadLevels(RPM, power, spread);
    for (const [i, p] of expected.entries()) {
      expect(Math.abs(Math.sqrt(levels[i] / p) - 1)).toBeLessThan(off);
    }
  });

  test("of none are the powers themselves", () => {
    const levels = spreadLevels(RPM, resonance(1), 0);
    for (const [i, p] of resonance(1).entries()) expect(levels[i] / p).toBeCloseTo(1, 9);
  });
});

describe("the map of a sweep", () => {
  const orders = {
    rpm: RPM,
    multiples: [1, 3],
    powers: [resonance(1), resonance(0.8)],
    spread: 0.03,
  };

  test("has at every speed the orders' powers as its integral over frequency", () => {
    const speeds = [9000, 15_700, 20_000, 26_000];
    const step = 0.05;
    const frequencies = Float64Array.from({ length: 36_000 }, (_, i) => 100 + i * step);
    const rows = sweepDensity(orders, speeds, frequencies);
    const levels = orders.powers.map((p) => spreadPower(GRID, p, orders.spread));
    for (const [c, speed] of speeds.entries()) {
      const integral = rows.reduce((sum, row) => sum + row[c] * step, 0);
      const at = ((speed - RPM[0]) / (RPM[1] - RPM[0])) * (COUNT - 1);
      const between = (p: Float64Array) => {
        const i = Math.floor(at);
        return p[i] + (at - i) * (p[i + 1] - p[i]);
      };
      const sum = between(levels[0]) + between(levels[1]);
      expect(Math.abs(integral / sum - 1)).toBeLessThan(3e-3);
    }
  });

  test("is the normal density about each order where the power is the same at all speeds", () => {
    const flat = { ...orders, multiples: [2], powers: [new Float64Array(COUNT).fill(5)] };
    // 600 Hz in the middle, 18 Hz wide
    const [middle, aside, out] = sweepDensity(flat, [18_000], [600, 618, 655]);
    expect(middle[0]).toBeCloseTo(5 / (18 * Math.sqrt(2 * Math.PI)), 3);
    expect(aside[0] / middle[0]).toBeCloseTo(Math.exp(-0.5), 9);
    expect(out[0]).toBe(0);
  });

  test("lights up at the mode's frequency, whatever the speed meant", () => {
    const one = { ...orders, multiples: [1], powers: [resonance(1)] };
    const frequencies = Float64Array.from({ length: 601 }, (_, i) => 300 + i / 6);
    // met at 20 000 rpm: 333 Hz; the motors are meant to turn 2 % slower
    const rows = sweepDensity(one, [19_600], frequencies);
    const top = rows.reduce((best, row, i) => (row[0] > rows[best][0] ? i : best), 0);
    expect(frequencies[top]).toBeGreaterThan(331);
    expect(frequencies[top]).toBeLessThan(334);
  });

  test("draws motors that turn alike as lines of half a per cent", () => {
    const alike = {
      ...orders,
      multiples: [1],
      powers: [new Float64Array(COUNT).fill(1)],
      spread: 0,
    };
    const [on, off] = sweepDensity(alike, [18_000], [300, 300 * 1.016]);
    expect(on[0]).toBeGreaterThan(0.2);
    expect(off[0]).toBe(0);
  });
});

describe("labels at the ends of lines", () => {
  test("stay where there is room", () => {
    expect(labelPlaces([3, 1, 2], 0.5, 0, 4)).toEqual([3, 1, 2]);
  });

  test("move apart in their order and stay inside", () => {
    const places = labelPlaces([3.9, 4, 0, 3.95], 0.5, 0, 4);
    expect(places).toEqual([3, 4, 0, 3.5]);
  });
});
