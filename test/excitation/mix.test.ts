/** How the flight is shared out over the speeds. */

import { describe, expect, test } from "vitest";
import { excite } from "../../src/excitation/excite.ts";
import { GRID_SPEEDS, mixRows, mixWeights, speedGrid } from "../../src/excitation/mix.ts";
import type { Speeds } from "../../src/excitation/types.ts";
import { frameJsonSchema } from "../../src/frame/json-schema.ts";
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

describe("a table with spreads and names", () => {
  const mixOf = (flightMix: unknown) => {
    const file = crossFrame({}, { flightMix, excitation: { motorSpread: 0 } });
    const e = excite(file, buildModel(file).rotors, 0.4);
    if (!e) throw new Error("the toy has motors");
    return e;
  };
  const row = (speed: string, more: object = {}) => ({ speed, weight: 1, ...more });

  test("a row's spread is a share of its own speed, 3 % where it says nothing", () => {
    const { mix, grid, weights } = mixOf([
      row("12000 rpm", { spread: "5 %", name: "searching" }),
      row("15000 rpm"),
    ]);
    expect(mix.map((r) => r.name)).toEqual(["searching", "row 2 of the table"]);
    expect(mix.map((r) => r.spread / r.speed)).toEqual([
      expect.closeTo(0.05, 12),
      expect.closeTo(0.03, 12),
    ]);
    expect(total(weights)).toBeCloseTo(1, 12);
    const only = mixOf([row("12000 rpm", { spread: "5 %" })]);
    const middle = mean(only.weights, grid);
    const variance = only.weights.reduce((s, v, i) => s + v * (grid[i] - middle) ** 2, 0);
    expect(Math.sqrt(variance) / (0.05 * 400 * Math.PI)).toBeCloseTo(1, 3);
  });

  test.each([0, 1e-9, 1e-4])(
    "a spread of %d keeps its share and speed, wherever it falls",
    (spread) => {
      // 12 speeds between two steps of the grid
      for (let k = 0; k < 12; k++) {
        const e = mixOf([row(`${13000 + 3.7 * k} rpm`, { spread })]);
        expect(total(e.weights)).toBeCloseTo(1, 12);
        const step = e.grid[1] - e.grid[0];
        expect(Math.abs(mean(e.weights, e.grid) - e.mix[0].speed)).toBeLessThan(1e-3 * step);
        expect(e.weights.filter((w) => w > 1e-3).length).toBeLessThan(8);
      }
    },
  );

  test("the order of rows does not matter, and rows of one speed add up", () => {
    const rows = [row("15000 rpm", { weight: 3 }), row("12000 rpm")];
    const [a, b] = [rows, [...rows].reverse()].map((r) => mixOf(r).weights);
    const halves = [
      ...rows.slice(1),
      row("15000 rpm", { weight: 1 }),
      row("15000 rpm", { weight: 2 }),
    ];
    const c = mixOf(halves).weights;
    for (const i of a.keys()) {
      expect(b[i]).toBeCloseTo(a[i], 14);
      expect(c[i]).toBeCloseTo(a[i], 14);
    }
  });

  test("weights on any scale mean the same", () => {
    const [small, large] = [1e-6, 1e6].map((s) =>
      mixOf([row("12000 rpm", { weight: 0.5 * s }), row("15000 rpm", { weight: s })]),
    );
    for (const i of small.weights.keys())
      expect(small.weights[i]).toBeCloseTo(large.weights[i], 14);
  });

  test("a row outside the band is told by its name and counts at the nearer end", () => {
    const { warnings, weights } = mixOf([row("90000 rpm", { name: "dive" })]);
    expect(warnings.join()).toContain("90000 rpm (dive)");
    expect(weights[GRID_SPEEDS - 1]).toBeCloseTo(1, 12);
  });
});

test("the help of the frame file says what the named mixes are", () => {
  const { flightMix } = frameJsonSchema().properties as Record<string, { description: string }>;
  for (const name of ["mostly hover", "cruise", "hard flying"] as const) {
    const said = flightMix.description.split(`${name}: `)[1]?.split(". ")[0] ?? "";
    for (const { speed, share } of mixRows(name, SPEEDS).rows) {
      const multiple = speed / SPEEDS.hover;
      const where =
        speed === SPEEDS.full
          ? "full throttle"
          : multiple === 1
            ? "around hover"
            : `around ${multiple} times hover`;
      expect(said).toContain(`${Math.round(100 * share)} % ${where}`);
    }
  }
});
