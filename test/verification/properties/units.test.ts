/** The same frame in other units, and quantities written and read back. */

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { quantity } from "../../../src/commands/terminal/numbers.ts";
import { readQuantity } from "../../../src/frame/quantity.ts";
import { KINDS, type QuantityKind } from "../../../src/frame/quantity-kinds.ts";
import { parseFrame } from "../../../src/frame/read.ts";
import { lookUpUnit } from "../../../src/frame/units.ts";
import { memberFrame } from "./member-frames.ts";
import { fileOf, multirotor } from "./multirotors.ts";
import { BARE, type Kind } from "./quantities.ts";
import { forAll } from "./runs.ts";
import { ALL, eigenvalues, expectSame } from "./spectra.ts";
import { inOtherUnits, UNITS } from "./units.ts";

const choices = fc.array(fc.nat({ max: 99 }), { minLength: 11, maxLength: 11 });

/** psi is known to the reader with 11 digits (mathjs); everything else by definition. */
const DEFINITION = 1e-10;

describe("a frame written in other units, a different one for every number", () => {
  test("of members: the same eigenvalues", () => {
    forAll(fc.tuple(memberFrame(), choices), 20, ([frame, by]) => {
      expectSame(eigenvalues(inOtherUnits(frame, by), ALL), eigenvalues(frame, ALL));
    });
  });

  test("a multirotor: the same eigenvalues", () => {
    forAll(fc.tuple(multirotor(), choices), 4, ([craft, by]) => {
      const frame = fileOf(craft);
      expectSame(eigenvalues(inOtherUnits(frame, by), 14), eigenvalues(frame, 14));
    });
  });

  test("the same numbers after reading, field by field", () => {
    const read = (sections: object) =>
      parseFrame(JSON.stringify({ version: 1, name: "units", ...sections }), "units.jsonc");
    forAll(
      fc.tuple(fc.oneof(memberFrame(), multirotor().map(fileOf)), choices),
      30,
      ([frame, by]) => {
        const numbers = (value: unknown): number[] => {
          if (typeof value === "number") return [value];
          return typeof value === "object" && value !== null
            ? Object.values(value).flatMap(numbers)
            : [];
        };
        const [bare, written] = [frame, inOtherUnits(frame, by)].map((f) => numbers(read(f)));
        expect(written.length).toBe(bare.length);
        bare.forEach((value, i) => {
          expect(Math.abs(written[i] - value)).toBeLessThanOrEqual(DEFINITION * Math.abs(value));
        });
      },
    );
  });
});

describe("units", () => {
  test.each(Object.entries(UNITS))("%s: every unit is of its definition's size", (kind, units) => {
    for (const [unit, si] of units) {
      const known = lookUpUnit(unit);
      expect(Math.abs(known!.toSI / si - 1), unit).toBeLessThan(DEFINITION);
      expect(known!.dimension, unit).toBe(KINDS[kind as Kind].dimension);
    }
    expect(units[0][0]).toBe(BARE[kind as Kind]);
    expect(KINDS[kind as Kind].bareUnit).toBe(BARE[kind as Kind]);
  });
});

describe("a quantity written and read back", () => {
  const kinds = fc.constantFrom<QuantityKind>(...Object.values(KINDS));
  const named = kinds.filter(({ bareUnit }) => bareUnit !== "");
  const amount = fc.double({ min: 1e-4, max: 0.99, noNaN: true });
  const siOf = (written: number | string, kind: QuantityKind) => {
    const reading = readQuantity(written, kind);
    if ("problem" in reading) throw new Error(reading.problem);
    return reading.value;
  };
  const unitOf = (kind: QuantityKind, number: number) =>
    kind.usualUnits[number % kind.usualUnits.length];

  test("in any of its usual units: the same to the last digits", () => {
    // Amounts small against the largest that is allowed, of both signs.
    forAll(
      fc.tuple(kinds, fc.nat({ max: 9 }), amount, fc.boolean()),
      300,
      ([kind, n, part, minus]) => {
        const unit = unitOf(kind, n);
        const si = (minus ? -1 : 1) * part * Math.min(1, kind.most);
        const text = `${si / lookUpUnit(unit)!.toSI} ${unit}`;
        expect(Math.abs(siOf(text, kind) / si - 1)).toBeLessThan(1e-15);
      },
    );
  });

  test("bare, and with the unit of bare numbers: exactly the same", () => {
    forAll(fc.tuple(named, amount), 200, ([kind, value]) => {
      expect(siOf(value, kind)).toBe(siOf(`${value} ${kind.bareUnit}`, kind));
    });
  });

  test("with other spaces, signs and powers of ten: exactly the same", () => {
    forAll(fc.tuple(named, amount), 100, ([kind, value]) => {
      const unit = kind.bareUnit;
      const si = siOf(value, kind);
      for (const text of [
        `${value}${unit}`,
        `  +${value}  ${unit} `,
        `${value.toExponential()} ${unit}`,
      ]) {
        expect(siOf(text, kind)).toBe(si);
      }
    });
  });

  test("as the program prints it: within half of the third digit", () => {
    forAll(fc.tuple(named, fc.nat({ max: 9 }), amount), 200, ([kind, n, part]) => {
      const unit = unitOf(kind, n);
      const si = part * Math.min(1, kind.most);
      const printed = quantity(si / lookUpUnit(unit)!.toSI, unit);
      expect(Math.abs(siOf(printed, kind) / si - 1)).toBeLessThan(0.00501);
    });
  });
});
