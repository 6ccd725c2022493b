import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { MAP_HEADER, mapCsv } from "../../../src/commands/output/map-csv.ts";
import { csvField, spreadsheetField } from "../../../src/runs/csv.ts";
import { readCsv } from "../csv-reader.ts";
import { HOSTILE } from "./fixture.ts";
import { MAP_PLACES } from "./ranking-fixture.ts";

const RUNS = { seed: 11, numRuns: 100 };

const rowsOf = (places = MAP_PLACES): string[][] =>
  readCsv(mapCsv({ pitch: 8e-3, places })).slice(1);

describe("the map as a file", () => {
  test("has units in its header and as many fields in every row", () => {
    const text = mapCsv({ pitch: 8e-3, places: MAP_PLACES });
    expect(text.startsWith(`${MAP_HEADER}\r\n`)).toBe(true);
    expect(text.endsWith("\r\n")).toBe(true);
    const [header, ...rows] = readCsv(text);
    expect(header).toContain("gyro_deg_per_s_rms");
    expect(rows.map((row) => row.length)).toEqual(MAP_PLACES.map(() => header.length));
  });

  test("is in order of the plates in the file, then y, then x", () => {
    expect(rowsOf().map(([plate, side, x, y]) => [plate, side, x, y])).toEqual([
      [HOSTILE, "above", "0", "-8"],
      [HOSTILE, "above", "8", "-8"],
      [HOSTILE, "above", "0", "8"],
      ["top", "below", "0", "0"],
    ]);
  });

  test("has every figure in the unit of its header, with six digits", () => {
    expect(rowsOf()[1].slice(4)).toEqual(
      ["3.14159", "0.5", "2.5", "1.7", "yes", "2", "-1", "no", "", "1"], // pi/90 rad are 2 degrees
    );
    expect(rowsOf()[2].slice(8)).toEqual(["no", "2", "0", "no", "'=plate", "0.4"]);
    expect(rowsOf()[0].slice(-3)).toEqual(["yes", "", "1"]);
  });

  test("has no rounding for a coordinate that is zero", () => {
    const [row] = rowsOf([{ ...MAP_PLACES[0], x: -3.5e-18, y: 0.1 + 0.2 - 0.3 }]);
    expect(row.slice(2, 4)).toEqual(["0", "0"]);
  });

  test("is a header alone where there is no place", () => {
    expect(mapCsv({ pitch: 8e-3, places: [] })).toBe(`${MAP_HEADER}\r\n`);
  });
});

describe("names that a file could hold", () => {
  test.each([
    ["plain", "plain"],
    ['5" deck', '5" deck'],
    ["left, right", "left, right"],
    ["two\r\nlines", "two\r\nlines"],
    ["=1+1", "'=1+1"],
    ["+carbon", "'+carbon"],
    ["-deck", "'-deck"],
    ["@deck", "'@deck"],
    ["\tdeck", "'\tdeck"],
    ["＝1＋1", "'＝1＋1"],
    ['=HYPERLINK("x","y")', `'=HYPERLINK("x","y")`],
  ])("%j arrives as %j and does not compute", (plate, read) => {
    const [row] = rowsOf([{ ...MAP_PLACES[0], plate }]);
    expect(row[0]).toBe(read);
    expect(row).toHaveLength(MAP_HEADER.split(",").length);
  });

  test("come back whole whatever they are", () => {
    const names = fc.string({ unit: "binary", minLength: 1 });
    fc.assert(
      fc.property(names, names, (a, b) => {
        expect(readCsv(`${csvField(a)},${csvField(b)}\r\n`)).toEqual([[a, b]]);
        const [[safe]] = readCsv(`${spreadsheetField(a)},x\r\n`);
        expect(safe === a || safe === `'${a}`).toBe(true);
        expect(safe).not.toMatch(/^[=+\-@\t\r]/);
      }),
      RUNS,
    );
  });
});
