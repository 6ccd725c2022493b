import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { columnsOf } from "../../../src/commands/terminal/printable.ts";
import { type Column, fittedList, renderTable } from "../../../src/commands/terminal/table.ts";

const COLUMNS: readonly Column[] = [
  { title: "Name", least: 8 },
  { title: "Mass", unit: "g", align: "right" },
];

const RUNS = { seed: 7, numRuns: 200 };

describe("renderTable", () => {
  test("lines up names and numbers under title and unit", () => {
    expect(
      renderTable(COLUMNS, [
        ["arm", "15.0"],
        ["battery", "220"],
      ]),
    ).toBe(
      ["  Name     Mass", "              g", "  arm      15.0", "  battery   220", ""].join("\n"),
    );
  });

  test("shortens names and leaves numbers whole", () => {
    const text = renderTable(COLUMNS, [["n".repeat(500), "123.456"]]);
    const row = text.split("\n")[2];
    expect(columnsOf(row)).toBe(80);
    expect(row).toMatch(/n… {2}123\.456$/);
  });

  test("prints hostile names on one line of at most 80 columns", () => {
    const hostile = fc.string({
      unit: fc.constantFrom("a", "前", "\u001b[2J", "\n", "\u202e", "זרוע", "\u0301", "\u{1f681}"),
      maxLength: 100,
    });
    fc.assert(
      fc.property(hostile, fc.double({ noNaN: true }), (name, number) => {
        const text = renderTable(COLUMNS, [
          [name, String(number)],
          ["arm", "1"],
        ]);
        const lines = text.split("\n");
        expect(lines).toHaveLength(5);
        // isolates (u2068, u2069) are the only signs without a width that a table may print
        expect(text.replace(/[\n\u2068\u2069]/g, "")).not.toMatch(/[\p{Cc}\p{Cf}]/u);
        for (const line of lines) expect(columnsOf(line)).toBeLessThanOrEqual(80);
        expect(lines[2].endsWith(String(number))).toBe(true);
      }),
      RUNS,
    );
  });

  test("colours whole rows after they were laid out", () => {
    const look = { ink: (row: number, text: string) => (row === 1 ? `<${text}>` : text) };
    const rows = [
      ["arm", "15"],
      ["top", "9"],
    ];
    const plain = renderTable(COLUMNS, rows).split("\n");
    const coloured = renderTable(COLUMNS, rows, look).split("\n");
    expect(coloured).toEqual(plain.map((line, i) => (i === 3 ? `<${line}>` : line)));
  });

  test("puts remarks under their row", () => {
    const under = (row: number) => (row === 0 ? "   remark\n" : "");
    const text = renderTable(
      COLUMNS,
      [
        ["arm", "15"],
        ["top", "9"],
      ],
      { under },
    );
    expect(text.split("\n")[3]).toBe("   remark");
  });
});

describe("fittedList", () => {
  const list = fittedList([
    { name: "front left arm", number: "61 %" },
    { name: "top", number: "12 %" },
  ]);

  test("prints as many entries as fit", () => {
    expect(list.fit(40)).toBe("front left arm 61 %, top 12 %");
    expect(list.fit(28)).toBe("front left arm 61 %");
  });

  test("shortens the name, never the number", () => {
    expect(list.fit(12)).toBe("front… 61 %");
  });

  test("of nothing is nothing", () => {
    expect(fittedList([]).fit(10)).toBe("");
  });
});
