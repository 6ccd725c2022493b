import { stripVTControlCharacters } from "node:util";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  beginning,
  columnsOf,
  isolated,
  printable,
  shorten,
} from "../../../src/commands/terminal/printable.ts";

const RUNS = { seed: 7, numRuns: 200 };

describe("printable", () => {
  test("shows what acts on a terminal as an escape", () => {
    expect(printable("a\u001b[31mred\u0007")).toBe("a\\u001b[31mred\\u0007");
    expect(printable("\u202etxt.exe")).toBe("\\u202etxt.exe");
    expect(printable("\u{e0041}")).toBe("\\ue0041");
  });

  test("keeps ordinary letters of every script", () => {
    for (const text of ["Arm, vorn", "Überhöhe", "前腕", "זרוע", "πλάκα", "a\u00a0b"]) {
      expect(printable(text)).toBe(text.normalize("NFC"));
    }
  });

  test("makes one line of several", () => {
    expect(printable("a\r\n\tb")).toBe("a b");
  });

  test("takes down piles of marks", () => {
    expect(columnsOf(printable(`z${"\u0323".repeat(200)}`))).toBe(1);
    expect(printable(`z${"\u0323".repeat(200)}`).length).toBeLessThan(6);
  });

  test("leaves nothing behind that a terminal would obey", () => {
    const anything = fc.string({ unit: "binary" });
    fc.assert(
      fc.property(anything, (text) => {
        const safe = printable(text);
        expect(safe).not.toMatch(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/u);
        expect(stripVTControlCharacters(safe)).toBe(safe);
      }),
      RUNS,
    );
  });
});

describe("columnsOf", () => {
  test.each([
    ["plate", 5],
    ["前腕", 4],
    ["e\u0301", 1],
    ["\u{1f681}", 2],
    ["☂\ufe0f", 2],
    ["ｗｉｄｅ", 8],
    ["", 0],
  ])("%s", (text, columns) => {
    expect(columnsOf(text)).toBe(columns);
  });
});

describe("shorten", () => {
  test("cuts only what does not fit", () => {
    expect(shorten("rear deck", 9)).toBe("rear deck");
    expect(shorten("rear deck", 8)).toBe("rear de…");
    expect(shorten("rear deck", 6)).toBe("rear…");
  });

  test("never prints wider than asked, wide letters and marks included", () => {
    const letters = fc.string({ unit: fc.constantFrom("a", "前", "\u0301", "\u{1f681}", " ") });
    fc.assert(
      fc.property(letters, fc.integer({ min: 1, max: 30 }), (text, columns) => {
        expect(columnsOf(shorten(text, columns))).toBeLessThanOrEqual(columns);
      }),
      RUNS,
    );
  });

  test("does not cut a wide letter in half", () => {
    expect(beginning("前腕", 3)).toBe("前");
  });
});

test("names written from right to left cannot turn the numbers beside them", () => {
  expect(isolated("זרוע")).toBe("\u2068זרוע\u2069");
  expect(isolated("ذراع 2")).toBe("\u2068ذراع 2\u2069");
  expect(isolated("arm 前")).toBe("arm 前");
});
