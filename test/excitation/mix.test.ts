/** How the flight is shared out over the speeds. */

import { describe, expect, test } from "vitest";
import { excite } from "../../src/excitation/excite.ts";
import { GRID_SPEEDS, mixRows, mixWeights, speedGrid } from "../../src/excitation/mix.ts";
import type { Speeds } from "../../src/excitation/types.ts";
import { buildModel } from "../../src/model/build.ts";
import { crossFrame } from "../modes/toys.ts";

const SPEEDS: Speeds = {
  low: 750,
  hover: 1000,
  full: 3000,
  hoverThrust: 1,
  fullThrust: 9,
  thrustFactor: 1.4e-6,
  thrustToWeight: 9,
  warnings: [],
  notes: [],
};
const total = (w: Float64Array) => w.reduce((a, b) => a + b, 0);
const mean = (w: Float64Array, grid: Float64Array) =>
  w.reduce((s, v, i) => s + v * grid[i], 0) / total(w);
const grid = speedGrid(SPEEDS);

describe("the grid of speeds", () => {
  test("runs evenly from the lowest to full speed, both included", () => {
    expect(grid.length).toBe(GRID_SPEEDS);
    expect([grid[0], grid[GRID_SPEEDS - 1]]).toEqual([750, 3000]);
    const steps = [1, 50, 299].map((i) => grid[i] - grid[i - 1]);
    for (const step of steps) expect(step).toBeCloseTo(2250 / (GRID_SPEEDS - 1), 9);
  });

  test("is finer than the half-power width of a mode with 2 % loss", () => {
    // width = eta f; a step of 7.5 rad/s against 0.02 * 1000
    expect(grid[1] - grid[0]).toBeLessThan(0.5 * 0.02 * SPEEDS.hover);
  });
});

describe.each(["mostly hover", "cruise", "hard flying"] as const)("%s", (name) => {
  const mix = mixRows(name, SPEEDS);

  test("shares and weights sum to 1", () => {
    expect(mix.name).toBe(name);
    expect(mix.rows.reduce((s, r) => s + r.share, 0)).toBeCloseTo(1, 12);
    expect(total(mixWeights(mix.rows, grid))).toBeCloseTo(1, 12);
  });

  test("each row keeps its share, cut off at the ends of the band", () => {
    for (const row of mix.rows) {
      const weights = mixWeights([row], grid);
      expect(total(weights)).toBeCloseTo(row.share, 12);
      expect(Math.min(...weights)).toBeGreaterThanOrEqual(0);
    }
  });

  test("knows hover and full speed", () => {
    const at = mix.rows.map((r) => r.speed);
    expect(at[0]).toBe(1000);
    expect(at[2]).toBe(3000);
    expect(at[1]).toBeGreaterThan(1000);
    expect(at[1]).toBeLessThan(3000);
  });
});

test("harder flying is faster flying", () => {
  const means = (["mostly hover", "cruise", "hard flying"] as const).map((name) =>
    mean(mixWeights(mixRows(name, SPEEDS).rows, grid), grid),
  );
  expect(means[0]).toBeLessThan(means[1]);
  expect(means[1]).toBeLessThan(means[2]);
});

describe("weights", () => {
  const row = { name: "", speed: 1500, spread: 60, share: 0.4 };

  test("are a normal distribution about the row's speed", () => {
    const w = mixWeights([row], grid);
    expect(mean(w, grid)).toBeCloseTo(1500, 6);
    const variance = w.reduce((s, v, i) => s + (v / 0.4) * (grid[i] - 1500) ** 2, 0);
    expect(Math.sqrt(variance)).toBeCloseTo(60, 3);
  });

  test.each([
    ["below", 100, 0],
    ["above", 9000, GRID_SPEEDS - 1],
  ])("a row far %s the band puts its whole share at that end", (_, speed, end) => {
    const w = mixWeights([{ ...row, speed }], grid);
    expect(w[end]).toBeCloseTo(0.4, 12);
    expect(total(w)).toBeCloseTo(0.4, 12);
  });

  test("a row at the very end keeps its share on the half that is inside", () => {
    const w = mixWeights([{ ...row, speed: 3000 }], grid);
    expect(total(w)).toBeCloseTo(0.4, 12);
    expect(w[GRID_SPEEDS - 1]).toBe(Math.max(...w));
  });
});

describe("a table in the file", () => {
  const table = [
    { speed: "12000 rpm", weight: 3 },
    { speed: "18000 rpm", weight: 1 },
  ];
  const file = crossFrame({}, { flightMix: table });
  const e = excite(file, buildModel(file).rotors, 0.4);

  test("brings its weights to 1 and peaks at its speeds", () => {
    expect(e?.mix.map((r) => r.share)).toEqual([0.75, 0.25]);
    expect(e?.mix.map((r) => Math.round((r.speed * 30) / Math.PI))).toEqual([12000, 18000]);
    expect(total(e?.weights ?? new Float64Array(0))).toBeCloseTo(1, 12);
    expect(e?.mixName).toBe("table in the file");
    const middle = mean(e?.weights ?? grid, e?.grid ?? grid);
    expect((middle * 30) / Math.PI).toBeCloseTo(13500, -1.5);
  });

  test("names every row", () => {
    for (const r of e?.mix ?? []) expect(r.name).not.toBe("");
  });
});

test("cruise never goes past full speed", () => {
  const slow = { ...SPEEDS, full: 1100 };
  for (const name of ["mostly hover", "cruise", "hard flying"] as const) {
    for (const r of mixRows(name, slow).rows) expect(r.speed).toBeLessThanOrEqual(1100);
  }
});
