import { describe, expect, test } from "vitest";
import { KINDS, nameOfDimension } from "../../src/frame/quantity-kinds.ts";
import { EVERYDAY_UNITS, lookUpUnit, toSI, unitFromMathjs } from "../../src/frame/units.ts";

describe("the table of everyday units", () => {
  test.each(EVERYDAY_UNITS.filter((text) => text !== "%"))("%s is what mathjs says", (text) => {
    const known = lookUpUnit(text)!;
    const mathjs = unitFromMathjs(text)!;
    expect(known.dimension).toBe(mathjs.dimension);
    expect(Math.abs(known.toSI / mathjs.toSI - 1)).toBeLessThan(1e-14);
    expect(known.perSI).toBe(mathjs.perSI);
  });

  test.each(Object.entries(KINDS))("%s has a bare unit of its own dimension", (_name, kind) => {
    const unit = kind.bareUnit === "" ? lookUpUnit("%") : lookUpUnit(kind.bareUnit);
    expect(unit?.dimension).toBe(kind.dimension);
    for (const usual of kind.usualUnits) expect(lookUpUnit(usual)?.dimension).toBe(kind.dimension);
  });
});

describe("lookUpUnit", () => {
  // by definition of the international inch, avoirdupois pound and standard gravity; mathjs has psi to
  // 11 digits
  test.each([
    ["ft", 0.3048],
    ["mil", 2.54e-5],
    ["lb", 0.45359237],
    ["oz", 0.45359237 / 16],
    ["lbf", 0.45359237 * 9.80665],
    ["lbf/in", (0.45359237 * 9.80665) / 0.0254],
    ["psi", (0.45359237 * 9.80665) / 0.0254 ** 2],
    ["kg/m^3", 1],
    ["g / cm^3", 1000],
    ["oz in^2", (0.45359237 / 16) * 0.0254 ** 2],
    ["rpm", (2 * Math.PI) / 60],
    ["cycle/s", 2 * Math.PI],
    ["N m/deg", 180 / Math.PI],
  ])("one %s is %d in SI", (text, si) => {
    expect(Math.abs(lookUpUnit(text)!.toSI / si - 1)).toBeLessThan(1e-10);
  });

  test.each([
    ["furlongs"],
    [""],
    ["(mm)"],
    ["mm)"],
    ["mm; 1"],
    ["constructor"],
    ["__proto__"],
    ["toString"],
    ["2 mm"],
    ["mm^99999999"],
    ["cos(0) mm"],
    ["m".repeat(41)],
    ["mm²"],
  ])("%s is not a unit", (text) => {
    expect(lookUpUnit(text)).toBeUndefined();
  });

  test("keeps temperatures apart from plain numbers", () => {
    expect(nameOfDimension(lookUpUnit("K")!.dimension)).toBeUndefined();
    expect(nameOfDimension(lookUpUnit("m/m")!.dimension)).toBe("a fraction");
  });

  test("decimal fractions come out as the nearest number", () => {
    expect(toSI(1.1, lookUpUnit("mm")!)).toBe(0.0011);
    expect(toSI(1.55, lookUpUnit("g/cm^3")!)).toBe(1550);
    expect(toSI(0.124, lookUpUnit("g mm")!)).toBe(1.24e-7);
    expect(toSI(33, lookUpUnit("g")!)).toBe(0.033);
  });
});
