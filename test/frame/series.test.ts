import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readQuantity } from "../../src/frame/quantity.ts";
import { KINDS } from "../../src/frame/quantity-kinds.ts";
import { readSeries } from "../../src/frame/series.ts";

describe("a series that can be read", () => {
  test.each<[string, unknown[]]>([
    ["4 mm, 5 mm, 6 mm", ["4 mm", "5 mm", "6 mm"]],
    ["4, 5, 6 mm", ["4 mm", "5 mm", "6 mm"]],
    ["4,5,6mm", ["4 mm", "5 mm", "6 mm"]],
    ["4, 5, 6", [4, 5, 6]],
    ["5 mm", ["5 mm"]],
    ["3 mm..5 mm step 0.5 mm", ["3 mm", "3.5 mm", "4 mm", "4.5 mm", "5 mm"]],
    ["3..5 mm step 0.5", ["3 mm", "3.5 mm", "4 mm", "4.5 mm", "5 mm"]],
    ["3..5 step 0.5 mm", ["3 mm", "3.5 mm", "4 mm", "4.5 mm", "5 mm"]],
    ["3 .. 5 step 1", [3, 4, 5]],
    ["5..3 step -1", [5, 4, 3]],
    ["0.1..0.5 step 0.1", [0.1, 0.2, 0.3, 0.4, 0.5]],
    ["-0.2..0.2 step 0.2", [-0.2, 0, 0.2]],
    ["3..4.9 step 1", [3, 4]],
    ["3..3 step 1", [3]],
    ["3 mm..8 mm in 3", ["3 mm", "5.5 mm", "8 mm"]],
    ["0..1 in 4", [0, 0.333333333333, 0.666666666667, 1]],
    ["5 in..7 in in 2", ["5 in", "7 in"]],
    ["5..7 in step 1", ["5 in", "6 in", "7 in"]],
    ["9 mm..1 cm step 500 um", ["9 mm", "9.5 mm", "10 mm"]],
    ["1 mm, 3..5 mm step 1, 1 cm", ["1 mm", "3 mm", "4 mm", "5 mm", "1 cm"]],
    ["1, 3..5 step 1, 8 mm", ["1 mm", "3 mm", "4 mm", "5 mm", "8 mm"]],
    ["1e3 Hz, 2 kHz", ["1000 Hz", "2 kHz"]],
    ["1 N m/rad, 2 N m/rad", ["1 N m/rad", "2 N m/rad"]],
    ["silicone grommets, none", ["silicone grommets", "none"]],
    ['none, {"axial": "8 kN/m", "lateral": 3}', ["none", { axial: "8 kN/m", lateral: 3 }]],
    [
      "[26, 17], [22, 17]",
      [
        [26, 17],
        [22, 17],
      ],
    ],
    [
      '[[26, 17], ["2 mm", 17]]',
      [
        [
          [26, 17],
          ["2 mm", 17],
        ],
      ],
    ],
    ["[0/45]7s, [0/90]7s", ["[0/45]7s", "[0/90]7s"]],
    ['"a, b", c', ["a, b", "c"]],
    ["4 furlongs, 5 furlongs", ["4 furlongs", "5 furlongs"]], // the field says what is wrong
  ])("%s", (text, values) => {
    expect(readSeries(text)).toEqual(values);
  });

  test("steps are clean, ends are met, and every value reads as the sum it is", () => {
    const whole = fc.integer({ min: -500, max: 500 });
    const step = fc.integer({ min: 1, max: 99 });
    fc.assert(
      fc.property(
        whole,
        step,
        fc.integer({ min: 0, max: 60 }),
        fc.nat({ max: 3 }),
        (a, s, n, d) => {
          // in whole units of 10^-d the sums are exact
          const at = (k: number) => (k / 10 ** d).toFixed(d);
          const text = `${at(a)}..${at(a + n * s)} mm step ${at(s)}`;
          const values = readSeries(text) as string[];
          expect(values).toEqual(
            Array.from({ length: n + 1 }, (_, i) => `${Number(at(a + i * s)) + 0} mm`),
          );
          for (const value of values)
            expect(readQuantity(value, KINDS.length)).toHaveProperty("value");
        },
      ),
      { seed: 7, numRuns: 300 },
    );
  });

  test("as many as are asked for, evenly", () => {
    const values = readSeries("3 mm..8 mm in 11") as string[];
    expect(values).toEqual(readSeries("3 mm..8 mm step 0.5 mm"));
    expect(readSeries("0..1 in 10000")).toHaveLength(10_000);
  });
});

describe("a series that cannot be read", () => {
  test.each([
    ["", "there is nothing in it"],
    ["4,,5", "there is nothing between two commas, or at one end"],
    ["4, 5,", "there is nothing between two commas, or at one end"],
    ["3..5 step 0", "the step must not be zero"],
    ["3..5 step -1", "with steps of -1 one never gets from 3 to 5: turn the step's sign"],
    ["5..3 step 1", "with steps of 1 one never gets from 5 to 3: turn the step's sign"],
    ["3 mm..5 mm", 'this is no complete range. Write a range as "3 mm..8 mm step 0.5 mm"'],
    ["3..5 mm by 1", "this is no complete range"],
    ["3..5 in 1", 'a range has at least its two ends, so "in 2" is the least'],
    ["0..1 in 10001", "it has 10001 values, and 10000 is the most"],
    ["0..1 step 1e-5", "it has 100001 values, and 10000 is the most"],
    ["0..1e300 step 1e-300", "it has Infinity values, and 10000 is the most"],
    ["0..1 in 6000, 2..3 in 6000", "it has 12000 values, and 10000 is the most"],
    ["4 mm, 5 g", 'the units "mm" and "g" do not go together'],
    ["3 mm..5 g step 1", 'the units "g" and "mm" do not go together'],
    ["3 mm..5 yonks step 1", 'the unit "yonks" is not known'],
    ["4 mm, 5, 6", '"5" has no unit where others have "mm"'],
    ["4, 5 mm, 6 in", '"4" has no unit where others have "mm", "in"'],
    ["[26, 17", '"]" is missing at the end'],
    ["26, 17]", '"]" (character 7) was never opened'],
    ['"a', '""" (character 1) is never closed'],
  ])("%s", (text, why) => {
    expect(() => readSeries(text)).toThrow(`cannot be read: ${why}`);
  });
});
