/** The committed tables hold the rows of the cases as they are now; the numbers are checked area by area. */

import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { AREAS } from "./areas.ts";
import { README, TABLE, takeShortTable } from "./documents.ts";
import { casesOf, longTable, readLongTable, shortTable } from "./table.ts";

const CURE =
  "the committed table is not that of the cases; write it with: npm run verify -- --write";

describe("the committed verification tables", () => {
  const long = readFileSync(TABLE, "utf8");
  const cells = readLongTable(long);
  const cases = casesOf(AREAS);

  test("the long one has the words and rows of all cases, and no others", () => {
    expect(long, CURE).toBe(longTable(AREAS, cells));
  });

  test("README has the worst row of each family", () => {
    expect(takeShortTable(readFileSync(README, "utf8")), CURE).toBe(shortTable(AREAS, cells));
  });

  test("names are unique, and every case has a number, a source and a reason", () => {
    expect(new Set(cases.map(({ name }) => name)).size).toBe(cases.length);
    for (const { name, checks, source, model, why } of cases) {
      expect(checks.length, name).toBeGreaterThan(0);
      expect(new Set(checks.map(({ quantity }) => quantity)).size, name).toBe(checks.length);
      for (const text of [source, model, why]) expect(text.length, name).toBeGreaterThan(10);
      for (const { reference } of checks) expect(Number(reference), name).not.toBeNaN();
      expect(`${name}${source}${model}${why}`, name).not.toMatch(/[|\n]/);
    }
  });
});
