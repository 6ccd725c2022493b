/** Reaches of inputs, and the order of what they do. */

import { describe, expect, test } from "vitest";
import type { Input } from "../../src/frame/inputs.ts";
import { modeMovers, spotMovers } from "../../src/study/movers.ts";
import { reachOf, wayTo } from "../../src/study/reach.ts";
import type { SensitivityRow, SensitivityTable } from "../../src/study/sensitivity-types.ts";

const PRACTICE = "common practice, no source";

function input(name: string, more: Partial<Input>): Input {
  return { name, path: [name], kind: "mass", value: 1, perSI: 1, unit: "", ...more };
}

const sheet = input("sheet", {
  kind: "thickness",
  value: 5e-3,
  perSI: 1e3,
  unit: "mm",
  spread: { from: 4.9e-3, to: 5.1e-3, scale: "even", source: PRACTICE },
});
const clamp = input("clamp", {
  kind: "joint",
  value: 12,
  spread: { from: 6, to: 24, scale: "log", source: PRACTICE },
});
const place = input("place", { kind: "position", value: 0, perSI: 1e3, unit: "mm" });
const load = input("load", { value: 0.2, perSI: 1e3, unit: "g" });

describe("reach", () => {
  test("is the spread, else 5 % or 1 mm to either side", () => {
    expect(reachOf(sheet)).toEqual({ from: 4.9e-3, to: 5.1e-3, scale: "even", why: "spread" });
    expect(reachOf(clamp)).toEqual({ from: 6, to: 24, scale: "log", why: "spread" });
    expect(reachOf(place)).toEqual({ from: -1e-3, to: 1e-3, scale: "even", why: "1 mm" });
    const { from, to, why } = reachOf(load);
    expect([from, to, why]).toEqual([0.19, expect.closeTo(0.21, 12) as number, "5 %"]);
    const exact = { ...sheet, spread: { from: 5e-3, to: 5e-3, scale: "even", source: "file" } };
    expect(reachOf(exact as Input).why).toBe("5 %");
  });

  test("runs straight, or straight in the logarithm", () => {
    expect(wayTo(12, reachOf(clamp), 24)).toBeCloseTo(12 * Math.LN2, 12);
    expect(wayTo(12, reachOf(clamp), 6)).toBeCloseTo(-12 * Math.LN2, 12);
    expect(wayTo(0.2, reachOf(load), 0.21)).toBeCloseTo(0.01, 12);
  });
});

const row = (of: Input, slope: number | undefined, from: number, to: number): SensitivityRow => ({
  input: of,
  reach: reachOf(of),
  ...(slope === undefined ? { notSmooth: "jumps" } : { slopes: Float64Array.of(slope) }),
  noise: { from: Float64Array.of(from), to: Float64Array.of(to), method: "exact" },
});

const table: SensitivityTable = {
  modes: [{ number: 1, frequency: 100, name: "bends" }],
  clusters: [],
  spots: [{ name: "middle", plate: "hub", gyro: 1 }],
  rows: [
    row(sheet, 20e3, -0.1, 0.2), // 2 Hz at either end
    row(clamp, 0.5, 3, -1), // 4.16 Hz
    row(place, 3e3, 0.01, Number.NaN), // 3 Hz
    row(load, undefined, -0.5, 0.4),
  ],
};

test("modes are moved by what slopes and reaches make together, most first", () => {
  const found = modeMovers(table, 0);
  expect(found.map((m) => m.input.name)).toEqual(["clamp", "place", "sheet"]);
  const [of, at, thick] = found;
  expect(of.to).toBeCloseTo(0.5 * 12 * Math.LN2, 9);
  expect(of.from).toBeCloseTo(-of.to, 9);
  expect(of.perPercent).toBeCloseTo((0.5 * 12) / 100, 12);
  expect(at.perUnit).toBeCloseTo(3, 12); // Hz per mm
  expect(at.perPercent).toBeUndefined();
  expect([thick.from, thick.to]).toEqual([
    expect.closeTo(-2, 9) as number,
    expect.closeTo(2, 9) as number,
  ]);
  expect(thick.perUnit).toBeCloseTo(20, 9);
  expect(thick.perPercent).toBeCloseTo(1, 9); // 20 Hz per mm x 5 mm of 100 Hz
});

test("noise is told as computed at either end, where the spot is there", () => {
  const found = spotMovers(table, 0);
  expect(found.map((m) => m.input.name)).toEqual(["clamp", "load", "sheet"]);
  expect([found[0].from, found[0].to]).toEqual([3, -1]);
  // 4 dB less over two octaves
  expect(found[0].perPercent).toBeCloseTo((-4 * 0.01) / Math.log(4), 12);
  expect(found[2].perUnit).toBeCloseTo(0.3 / 0.2, 9);
});
