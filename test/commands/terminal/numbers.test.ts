import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  commandLine,
  digits,
  millimetres,
  rpm,
  shortest,
  signedPercent,
  signedTenths,
} from "../../../src/commands/terminal/numbers.ts";

const RUNS = { seed: 7, numRuns: 200 };

describe("digits", () => {
  test.each([
    [0, "0"],
    [-0, "0"],
    [10843, "10800"],
    [312.4, "312"],
    [99.96, "100"],
    [9.996, "10.0"],
    [4.5, "4.50"],
    [0.012345, "0.0123"],
    [-3.14159, "-3.14"],
    [2.38e-9, "2.38e-9"],
    [1.5e9, "1.5e9"],
    [Number.NaN, "unknown"],
    [Number.POSITIVE_INFINITY, "infinite"],
  ])("%d", (value, text) => {
    expect(digits(value)).toBe(text);
  });

  test("is within half of the third digit, and never has a fourth", () => {
    const sizes = fc.double({ min: 1e-12, max: 1e12, noNaN: true });
    fc.assert(
      fc.property(sizes, (value) => {
        const text = digits(value);
        expect(Math.abs(Number(text) - value)).toBeLessThanOrEqual(0.00501 * value);
        const figures = text.replace(/e.*/, "").replace(".", "").replace(/^0+/, "");
        expect(figures.replace(/0+$/, "").length).toBeLessThanOrEqual(3);
      }),
      RUNS,
    );
  });
});

test("chosen values lose the zeros that say nothing", () => {
  expect([60, 0.1, 2.5, 207, 100, 0.22].map(shortest)).toEqual([
    "60",
    "0.1",
    "2.5",
    "207",
    "100",
    "0.22",
  ]);
});

test("speeds are in rpm", () => {
  expect(rpm((10843 * Math.PI) / 30).replace("\u00a0", " ")).toBe("10800 rpm");
});

test("what rounds to nothing has no sign", () => {
  expect(millimetres(-1e-9)).toBe("0.0");
  expect(signedTenths(-0.01)).toBe("0.0");
  expect(signedTenths(0.51)).toBe("+0.5");
  expect(signedPercent(-0.001).replace("\u00a0", " ")).toBe("0 %");
  expect(signedPercent(0.08).replace("\u00a0", " ")).toBe("+8 %");
});

test("a coordinate has at most three digits", () => {
  expect([0.0123, -0.1136, 1.25].map(millimetres)).toEqual(["12.3", "-114", "1250"]);
});

test("a command can be copied into a shell", () => {
  const plain = (text: string) => text.replaceAll("\u00a0", " ");
  expect(plain(commandLine("rank", "frames/a.jsonc"))).toBe("stillpoint rank frames/a.jsonc");
  expect(plain(commandLine("rank", "my frame's.jsonc"))).toBe(
    "stillpoint rank 'my frame'\\''s.jsonc'",
  );
});
