/** What follows from the definition of a balance grade, G = e omega at full speed. */

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { residualUnbalance } from "../../../src/excitation/orders.ts";
import { balancedRotor } from "./unbalance.ts";

const rotor = {
  mass: fc.double({ min: 1e-3, max: 5, noNaN: true }),
  grade: fc.double({ min: 0.4, max: 40, noNaN: true }),
  omega: fc.double({ min: 50, max: 5000, noNaN: true }),
  times: fc.double({ min: 0.1, max: 10, noNaN: true }),
};

/** Holds for any rotor that a file could describe. */
function always(law: (mass: number, grade: number, omega: number, times: number) => void) {
  const { mass, grade, omega, times } = rotor;
  fc.assert(fc.property(mass, grade, omega, times, law), { numRuns: 100, seed: 21940 });
}

describe("at a fixed grade", () => {
  test("the unbalance falls as 1/speed and the force at full speed grows as the speed", () => {
    always((mass, grade, omega, times) => {
      const U = residualUnbalance(mass, grade, omega);
      const faster = residualUnbalance(mass, grade, times * omega);
      expect((faster * times) / U).toBeCloseTo(1, 12);
      const force = U * omega ** 2;
      expect((faster * (times * omega) ** 2) / (times * force)).toBeCloseTo(1, 12);
    });
  });

  test("the unbalance is proportional to the mass and to the grade; the eccentricity knows no mass", () => {
    always((mass, grade, omega, times) => {
      const U = residualUnbalance(mass, grade, omega);
      expect(residualUnbalance(times * mass, grade, omega) / (times * U)).toBeCloseTo(1, 12);
      expect(residualUnbalance(mass, times * grade, omega) / (times * U)).toBeCloseTo(1, 12);
    });
  });
});

test("from the file: a faster motor of one grade pulls as its speed, one rotor as its speed squared", () => {
  const [slow, fast] = [12_000, 24_000].map((rpm) => balancedRotor(0.02, 6.3, rpm).excitation);
  if (!slow || !fast) throw new Error("no motor");
  const force = ({ orders, speeds }: typeof slow, speed = speeds.full) =>
    orders[0].coefficient * speed ** 2;
  expect(force(fast) / force(slow)).toBeCloseTo(2, 10);
  expect(force(fast) / force(fast, fast.speeds.full / 2)).toBeCloseTo(4, 10);
});
