/** States beside the normal one: a bad propeller and a lost tip. */

import { describe, expect, test } from "vitest";
import { InputError } from "../../src/errors.ts";
import { lostTipUnbalance } from "../../src/excitation/cases.ts";
import { excite } from "../../src/excitation/excite.ts";
import { UNIT_UNBALANCE } from "../../src/excitation/orders.ts";
import type { Excitation } from "../../src/excitation/types.ts";
import { readFrame } from "../../src/frame/read.ts";
import { buildModel } from "../../src/model/build.ts";
import { crossFrame } from "../modes/toys.ts";

const shaken = (excitation: object): Excitation => {
  const file = crossFrame({}, { excitation });
  const e = excite(file, buildModel(file).rotors, 0.4);
  if (!e) throw new Error("the toy has motors");
  return e;
};
const caseOf = (e: Excitation, name: string) => {
  const found = e.cases.find((c) => c.name === name);
  if (!found) throw new Error(`no case "${name}"`);
  return found;
};
const NAMES = ["front left motor", "front right motor", "rear left motor", "rear right motor"];
const names = buildModel(crossFrame()).rotors.map((r) => r.name);

/** Bell, propeller and nut of the toy, kg, and its unbalance at G 16. */
const MASS = 0.023;
const unbalance = (grade: number, { speeds }: Excitation) => (MASS * grade * 1e-3) / speeds.full;

describe("one bad propeller", () => {
  test("is tried on each motor in turn, the others stay as they are", () => {
    const e = shaken({});
    const { variants } = caseOf(e, "one bad propeller");
    expect(variants.map((v) => v.rotor)).toEqual([0, 1, 2, 3]);
    for (const { rotor, unbalance: U } of variants) {
      U.forEach((u, r) => {
        expect(u / unbalance(r === rotor ? 40 : 16, e)).toBeCloseTo(1, 12);
      });
      // the others are those of the normal state
      expect(U[(rotor + 1) % 4]).toBeCloseTo(e.orders[0].coefficient, 20);
    }
  });

  test("of one motor and one grade", () => {
    const e = shaken({ badPropeller: { motor: "rear left motor", grade: 100 } });
    const { variants, text } = caseOf(e, "one bad propeller");
    expect(variants.length).toBe(1);
    expect(names[variants[0].rotor]).toBe("rear left motor");
    expect(variants[0].unbalance[variants[0].rotor] / unbalance(100, e)).toBeCloseTo(1, 12);
    expect(text).toContain("rear left motor");
    expect(text).toContain("G 100");
    expect(text).toContain("common practice, no source");
  });

  test("stands for itself where the others have no unbalance at all", () => {
    for (const none of [{ unbalance: 0 }, { balanceGrade: 0 }]) {
      const e = shaken(none);
      expect(e.orders.map((o) => o.name)).not.toContain("unbalance");
      const [{ rotor, unbalance: U }] = caseOf(e, "one bad propeller").variants;
      expect(U[rotor] / unbalance(40, e)).toBeCloseTo(1, 12);
      expect(Array.from(U).filter((u) => u === 0).length).toBe(3);
    }
  });

  test.each([
    [{ balanceGrade: 63 }, "G 40"],
    [{ badPropeller: { grade: 16 } }, "G 16"],
    [{ unbalance: "5 g mm" }, "5.00 g mm"],
  ])("is left out with a warning where it is no worse than normal: %o", (excitation, said) => {
    const e = shaken(excitation);
    expect(e.cases.map((c) => c.name)).toEqual(["lost balance"]);
    expect(e.warnings.filter((w) => w.includes("no worse")).join()).toContain(said);
    expect(shaken({}).warnings.join()).not.toContain("no worse");
  });
});

describe("a lost tip", () => {
  test("adds m r, by hand: 2 % of a third of 4 g at 0.9 of 63.5 mm", () => {
    expect(
      lostTipUnbalance(
        {
          mass: 4e-3,
          blades: 3,
          diameter: 0.127,
          nutMass: 0,
          planeHeight: 0,
          thrustCoefficient: 1,
        },
        0.02,
      ) * 1e6,
    ).toBeCloseTo(1.524, 12);
  });

  test("adds to what was there as powers do, one rotor at a time", () => {
    const e = shaken({ unbalance: "0.4 g mm" });
    const { variants, text } = caseOf(e, "lost balance");
    expect(variants.map((v) => v.rotor)).toEqual([0, 1, 2, 3]);
    for (const { rotor, unbalance: U } of variants) {
      U.forEach((u, r) => {
        expect(u * 1e6).toBeCloseTo(r === rotor ? Math.sqrt(0.4 ** 2 + 1.524 ** 2) : 0.4, 12);
      });
    }
    expect(text).toContain("2 % of a blade's mass at 0.9 of the radius");
    expect(text).toContain("1.52 g mm");
  });

  test("the mean over all angles of a vector sum is the sum of squares", () => {
    const [a, b] = [0.4, 1.524];
    const mean = Array.from({ length: 360 }, (_, k) => (k * Math.PI) / 180)
      .map((x) => (a + b * Math.cos(x)) ** 2 + (b * Math.sin(x)) ** 2)
      .reduce((s, v) => s + v / 360, 0);
    const [{ rotor, unbalance: U }] = caseOf(
      shaken({ unbalance: "0.4 g mm" }),
      "lost balance",
    ).variants;
    expect((U[rotor] * 1e6) ** 2).toBeCloseTo(mean, 10);
  });

  test("goes with the share, on the motor that is named", () => {
    const e = shaken({ unbalance: 0, lostTip: { motor: "front left motor", massShare: "5 %" } });
    const { variants } = caseOf(e, "lost balance");
    expect(variants.map((v) => names[v.rotor])).toEqual(["front left motor"]);
    expect(variants[0].unbalance[variants[0].rotor] * 1e6).toBeCloseTo(2.5 * 1.524, 10);
  });
});

describe("a motor that does not exist", () => {
  test.each(["badPropeller", "lostTip"])("is named with the motors there are: %s", (field) => {
    expect(names).toEqual(expect.arrayContaining(NAMES));
    const wrong = (motor: string) => {
      try {
        shaken({ [field]: { motor } });
      } catch (error) {
        if (error instanceof InputError) return error.findings[0];
      }
      throw new Error("no InputError");
    };
    const { path, message } = wrong("front lefft motor");
    expect(path).toBe(`excitation.${field}.motor`);
    expect(message).toContain('There is no motor called "front lefft motor"');
    expect(message).toContain('Did you mean "front left motor"?');
    for (const name of NAMES) expect(message).toContain(`"${name}"`);
    expect(wrong("7").message).not.toContain("Did you mean");
  });
});

test("the unit for the response is 1 kg m turning with the rotor, once per turn", () => {
  expect(UNIT_UNBALANCE).toMatchObject({ order: 1, kind: "side force", coefficient: 1 });
  const e = shaken({});
  expect(e.orders[0]).toMatchObject({ name: UNIT_UNBALANCE.name, order: 1, kind: "side force" });
});

test("every sample frame has both states, louder than normal, without warnings", () => {
  for (const name of ["three-inch", "five-inch", "seven-inch", "ten-inch"]) {
    const file = readFrame(`frames/${name}.jsonc`);
    const e = excite(file, buildModel(file).rotors, 0.15);
    expect(e?.cases.map((c) => c.variants.length)).toEqual([4, 4]);
    for (const { variants } of e?.cases ?? []) {
      for (const { rotor, unbalance: U } of variants) {
        expect(U[rotor]).toBeGreaterThan(2 * (e?.orders[0].coefficient ?? 1));
      }
    }
    expect(e?.warnings).toEqual([]);
  }
});
