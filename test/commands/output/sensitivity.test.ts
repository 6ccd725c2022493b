/** What `sensitivity` prints of a table made by hand. */

import { describe, expect, test } from "vitest";
import { sensitivityText } from "../../../src/commands/output/sensitivity-text.ts";
import { NO_INK } from "../../../src/commands/terminal/ink.ts";
import type { Input } from "../../../src/frame/inputs.ts";
import { reachOf } from "../../../src/study/reach.ts";
import type { SensitivityRow, SensitivityTable } from "../../../src/study/sensitivity-types.ts";
import type { Suggestion } from "../../../src/study/suggest-types.ts";

const input = (name: string, more: Partial<Input>): Input => ({
  name,
  path: name.split("."),
  kind: "mass",
  value: 0.1,
  perSI: 1e3,
  unit: "g",
  ...more,
});

const row = (of: Input, more: Partial<SensitivityRow>): SensitivityRow => ({
  input: of,
  reach: reachOf(of),
  ...more,
});

const noise = (from: number, to: number) =>
  ({ from: Float64Array.of(from), to: Float64Array.of(to), method: "reduced" }) as const;

const table: SensitivityTable = {
  modes: [
    { number: 1, frequency: 100, name: "arms flap" },
    { number: 2, frequency: 100.3, name: "arms twist" },
  ],
  clusters: [[1, 2]],
  spots: [{ name: "the bay", plate: "hub", gyro: 4.2 }],
  best: 0,
  rows: [
    row(input("bodies.pack.mass", {}), {
      slopes: Float64Array.of(-200, 0),
      noise: noise(-0.25, 0.25),
    }),
    row(input("arms.arm.thickness", { kind: "thickness", value: 5e-3, unit: "mm" }), {
      slopes: Float64Array.of(20e3, 8e3),
      noise: noise(0.5, -0.75),
    }),
    row(input("arms.arm.tip#1", { kind: "position", value: 0, unit: "mm" }), {
      notSmooth: "the mesh has other nodes",
      impossible: "the arm misses the plate",
    }),
    row(input("dampingFactor", { kind: "damping", value: 1, perSI: 1, unit: "" }), {
      slopes: Float64Array.of(0, 0),
      noise: noise(0.001, -0.001),
    }),
  ],
};

const suggestion: Suggestion = {
  kind: "width",
  part: "arms.arm",
  words: "Arms 1 mm wider",
  changes: [
    { path: ["arms", "arm", "width", 0], written: 18 },
    { path: ["stack", "isolators"], written: "rubber rings" },
  ],
  mass: 2e-3,
  gyro: -0.6,
  accel: 0,
  score: -0.4,
  moved: [],
  text: "Arms 1 mm wider: 2 g more, and so on (solved anew).",
};

const frame = { path: "my frame.jsonc", hash: "", file: { name: "Toy" } };
const print = (more: object, look: object = {}) =>
  sensitivityText({ table, frame, ...more }, { top: 5, ...look }, NO_INK);
const lineOf = (text: string, start: string) =>
  text.split("\n").find((line) => line.trimStart().startsWith(start)) ?? "";

describe("the text", () => {
  const suggested = { spot: "the bay", found: [suggestion], tried: 4 };
  const text = print({ spot: 0, suggested });

  test("begins with the frame and what would help, and how to see whether it is real", () => {
    expect(text).toMatch(/^Toy\n\nWhat would help\n {2}- Arms 1 mm wider: 2 g more, and so on/);
    expect(text.replace(/\s+/g, " ")).toContain(
      "stillpoint compare 'my frame.jsonc' --set 'arms.arm.width#1=18' --set 'stack.isolators=rubber rings'",
    );
  });

  test("lists what moves the spot, most first, with the ends of its reach", () => {
    expect(text).toContain('\nWhat moves the noise at "the bay" most (4.20 deg/s rms)\n');
    expect(lineOf(text, "arms.arm.thickness").trim().split(/\s+/)).toEqual([
      ...["arms.arm.thickness", "4.75", "5.25", "mm"],
      ...["+0.500", "-0.750", "-2.50", "-0.125"],
    ]);
    const order = ["arms.arm.thickness", "bodies.pack.mass"].map((name) => text.indexOf(name));
    expect(order).toEqual([...order].sort((a, b) => a - b));
    // what moves it by less than is shown is left out
    expect(text).not.toContain("dampingFactor");
  });

  test("has a line for each mode, or all of one", () => {
    expect(lineOf(text, "2 ").trim().split(/ {2,}/)).toEqual([
      ...["2", "100", "arms twist", "arms.arm.thickness", "-2.00", "+2.00"],
    ]);
    const one = print({ spot: 0 }, { mode: 1, top: 1 });
    expect(one).not.toContain("What moves each mode most");
    expect(one).toContain("\nWhat moves mode 1 most (100 Hz, arms flap)\n");
    // 20 Hz per mm and 5 mm of 100 Hz: 1 % per %
    const cells = one.slice(one.indexOf("mode 1 most"));
    expect(lineOf(cells, "arms.arm.thickness").trim().split(/\s+/)).toEqual([
      ...["arms.arm.thickness", "4.75", "5.25", "mm", "-5.00", "+5.00", "+20.0", "+1.00"],
    ]);
    expect(one).toContain("  1 more input moves it less.");
  });

  test("says what is close, what jumps and what cannot be", () => {
    const flat = text.replace(/\s+/g, " ");
    expect(flat).toContain("Modes 1 and 2 lie so close");
    expect(flat).toContain("arms.arm.tip#1 changes the mesh by jumps");
    expect(flat).toContain("arms.arm.tip#1: the frame cannot be computed at both ends.");
  });

  test("shortens long names in the middle, where they are alike", () => {
    const long = (end: string) =>
      row(input(`modulusFactors.carbon-plate-of-some-long-name-${end}`, {}), {
        slopes: Float64Array.of(5000, 0),
      });
    const both = { ...table, rows: [long("quasi-isotropic"), long("along")] };
    const one = print({ table: both }, { mode: 1 });
    expect(one).toMatch(/ modulus.*….*quasi-isotropic /);
    expect(one).toMatch(/ modulus.*….*name-along /);
    for (const line of one.split("\n")) expect(line.length).toBeLessThanOrEqual(80);
  });

  test("fits 80 columns", () => {
    for (const line of text.split("\n")) expect(line.length).toBeLessThanOrEqual(80);
  });

  test("says so where nothing would help", () => {
    const none = "None of 4 changes helps.";
    expect(print({ spot: 0, suggested: { found: [], tried: 4, none } })).toContain(
      `What would help\n  ${none}\n`,
    );
  });
});
