/** The tables themselves: what is rounded, what counts as the same, what counts as the worst. */

import { describe, expect, test } from "vitest";
import {
  below,
  type Case,
  type Check,
  errorOf,
  justAbove,
  lastDigit,
  modes,
  passes,
  type Tolerance,
  unitOfLastDigit,
  within,
  withinAbsolute,
} from "./case.ts";
import { cellsOf, relativeErrorOf, sameCell, toleranceCell } from "./cells.ts";
import { longTable, readLongTable, shortTable } from "./table.ts";

const check = (reference: string, tolerance: Tolerance, unit = "Hz"): Check => ({
  quantity: "bending 1",
  unit,
  reference,
  tolerance,
});

describe("a check", () => {
  test("the last digit written", () => {
    expect(unitOfLastDigit("1.723")).toBeCloseTo(1e-3, 12);
    expect(unitOfLastDigit("1.739e6")).toBeCloseTo(1e3, 9);
    expect(unitOfLastDigit("-0.50")).toBeCloseTo(0.01, 12);
    expect(unitOfLastDigit("120")).toBe(1);
  });

  test("passes inside its tolerance only, on the right side, and never for NaN", () => {
    expect(passes(check("100", within(0.01)), 100.9)).toBe(true);
    expect(passes(check("100", within(0.01)), 98.9)).toBe(false);
    expect(passes(check("100", justAbove(0.01)), 99.9)).toBe(false);
    expect(passes(check("100", justAbove(0.01)), 100.9)).toBe(true);
    expect(passes(check("100", below(0.01)), 100.1)).toBe(false);
    expect(passes(check("100", below(0.01)), 99.1)).toBe(true);
    expect(passes(check("1.65", lastDigit("1.65")), 1.6554)).toBe(true);
    expect(passes(check("1.65", lastDigit("1.65")), 1.6601)).toBe(false);
    expect(passes(check("100", within(1)), Number.NaN)).toBe(false);
    expect(passes(check("100", within(1)), Number.POSITIVE_INFINITY)).toBe(false);
  });

  test("a relative error has the sign of ours minus the reference, of negative ones too", () => {
    expect(errorOf(check("-2", within(1)), -1.9)).toBeCloseTo(0.05, 12);
    expect(errorOf(check("0", withinAbsolute(1)), -0.25)).toBe(-0.25);
  });

  test("lists of modes are numbered", () => {
    const [first, second] = modes(["1.10", 2], "Hz", within(0.1), "bending");
    expect([first.quantity, first.reference]).toEqual(["bending 1", "1.10"]);
    expect([second.quantity, second.reference]).toEqual(["bending 2", "2"]);
  });
});

describe("cells", () => {
  test.each([
    ["1.723", withinAbsolute(1e-3), 1.72312, "1.7231", "+1.2e-4 Hz", "±0.001 Hz"],
    ["64.038474033", justAbove(1.5e-6), 64.0385456, "64.038546", "+1.1e-6", "-1e-9 to +1.5e-6"],
    ["13.4682", within(0.01), 13.423, "13.42", "-0.34 %", "±1 %"],
    ["35.02", below(0.02), 34.6, "34.60", "-1.2 %", "-2 % to 0"],
    ["1.739241e9", within(1e-6), 1.739241e9, "1.7392410e9", "< 1e-8", "±1e-6"],
    ["0", withinAbsolute(1e-9), -2e-13, "0.0000000000", "< 1e-11 Hz", "±1e-9 Hz"],
  ] as const)("%s", (reference, tolerance, ours, shown, error, allowed) => {
    const of = check(reference, tolerance);
    expect(cellsOf(of, ours)).toEqual({ ours: shown, error });
    expect(toleranceCell(of)).toBe(allowed);
  });

  test("numbers too large or small for a column of digits take an exponent", () => {
    expect(cellsOf(check("1e-9", within(1e-3), ""), 1.0002e-9).ours).toMatch(/^1\.000\d*e-9$/);
    expect(cellsOf(check("12345678", within(1e-3), ""), 12345678).ours).toMatch(/^1\.2346e7$/);
  });

  test("the same but for one unit of the last digit shown", () => {
    expect(sameCell("1.7231", "1.7232")).toBe(true);
    expect(sameCell("1.7231", "1.7233")).toBe(false);
    expect(sameCell("+1.1e-6", "+1.2e-6")).toBe(true);
    expect(sameCell("+1.1e-6", "+1.4e-6")).toBe(false);
    expect(sameCell("-0.34 %", "-0.35 %")).toBe(true);
    expect(sameCell("-0.34 %", "+0.34 %")).toBe(false);
    expect(sameCell("< 1e-8", "+1.2e-8")).toBe(false);
    expect(sameCell("< 1e-8", "+1.05e-8")).toBe(true);
    expect(sameCell("< 1e-8", "< 1e-8")).toBe(true);
    expect(sameCell("?", "1.72")).toBe(false);
  });

  test("errors of all kinds compare as shares of the reference", () => {
    const cells = (error: string) => ({ ours: "", error });
    expect(relativeErrorOf(check("50", within(1)), cells("-2 %"))).toBeCloseTo(-0.02, 12);
    expect(relativeErrorOf(check("50", withinAbsolute(1)), cells("+0.5 Hz"))).toBeCloseTo(0.01, 12);
    expect(relativeErrorOf(check("0", withinAbsolute(1)), cells("+0.5 Hz"))).toBe(0);
    expect(relativeErrorOf(check("50", within(1)), cells("< 1e-8"))).toBe(0);
  });

  test("an absolute error without a unit says that it is one", () => {
    const of = check("121.0", withinAbsolute(0.1), "");
    expect(cellsOf(of, 120.903).error).toBe("-0.097 (abs)");
    expect(toleranceCell(of)).toBe("±0.1 (abs)");
  });
});

describe("tables", () => {
  const of: Case = {
    name: "toy, published",
    source: "invented for this test",
    model: "two numbers",
    why: "they are invented",
    checks: modes(["1.0", "2.0"], "Hz", within(0.1)),
    solve: () => [1.01, 2.15],
  };
  const areas = [{ title: "Toys", families: [{ title: "Toy", source: "invented", cases: [of] }] }];
  const cells = (_: Case, c: Check) => cellsOf(c, of.solve()[of.checks.indexOf(c)]);

  test("the long one reads back as it was written", () => {
    const text = longTable(areas, cells);
    expect(text).toContain("| mode 2 | 2.0 Hz | 2.15 | +7.5 % | ±10 % |");
    expect(longTable(areas, readLongTable(text))).toBe(text);
  });

  test("the short one shows the value farthest from its reference, of headline cases if there are", () => {
    const last = shortTable(areas, cells).split("\n").at(-1);
    expect(last).toBe(
      "| Toy | invented | 2 | toy, published: mode 2 | 2.0 Hz | 2.15 | +7.5 % | ±10 % |",
    );
  });

  test("a headline case stands for its family", () => {
    const computed = { ...of, name: "toy, computed" };
    const family = {
      title: "Toy",
      source: "invented",
      cases: [computed, { ...of, headline: true }],
    };
    const last = shortTable([{ title: "Toys", families: [family] }], cells);
    expect(last).toContain("| Toy | invented | 4 | toy, published: mode 2 |");
  });

  test("a row that is not there shows as unknown", () => {
    expect(longTable(areas, readLongTable(""))).toContain("| mode 1 | 1.0 Hz | ? | ? | ±10 % |");
  });
});
