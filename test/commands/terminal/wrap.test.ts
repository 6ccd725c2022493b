import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { columnsOf } from "../../../src/commands/terminal/printable.ts";
import { bullets, HARD_SPACE, wrap } from "../../../src/commands/terminal/wrap.ts";

const RUNS = { seed: 7, numRuns: 200 };

describe("wrap", () => {
  test("breaks between words and indents the rest", () => {
    const text = "word ".repeat(20);
    const lines = wrap(text, "file: ", "  ").split("\n");
    expect(lines[0]).toMatch(/^file: word/);
    expect(lines[1]).toMatch(/^ {2}word/);
    expect(lines.at(-1)).toBe("");
    expect(lines.join(" ").match(/word/g)).toHaveLength(20);
  });

  test("never breaks between a number and its unit", () => {
    const text = wrap(`${"x".repeat(76)} 12${HARD_SPACE}mm`);
    expect(text).toBe(`${"x".repeat(76)}\n12 mm\n`);
  });

  test("cuts words that no line can hold", () => {
    const lines = wrap("x".repeat(200), "  ").trimEnd().split("\n");
    expect(lines.map((line) => line.length)).toEqual([80, 80, 46]);
  });

  test("ends even when the prefix alone fills the page", () => {
    expect(wrap("ab", "p".repeat(100), "p".repeat(90)).split("\n").length).toBeLessThan(6);
  });

  test("gives an empty line for an empty text", () => {
    expect(wrap("")).toBe("\n");
    expect(wrap("", "stillpoint: ")).toBe("stillpoint:\n");
  });

  test("keeps every letter and the width of the page", () => {
    const words = fc.array(fc.string({ unit: fc.constantFrom("a", "b", "前"), maxLength: 100 }));
    fc.assert(
      fc.property(words, (list) => {
        const text = wrap(list.join(" "), "- ", "  ");
        for (const line of text.split("\n")) expect(columnsOf(line)).toBeLessThanOrEqual(80);
        expect(text.replace(/^- ?/, "").replace(/\s/g, "")).toBe(list.join(""));
      }),
      RUNS,
    );
  });
});

test("bullets stand one below the other", () => {
  expect(bullets(["one", "two"])).toBe("  - one\n  - two\n");
});
