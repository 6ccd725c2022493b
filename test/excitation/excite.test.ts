/** What the stage hands on as a whole. */

import { describe, expect, test } from "vitest";
import { excite, highestFrequency, reachWanted } from "../../src/excitation/excite.ts";
import { spreadPower } from "../../src/excitation/spread.ts";
import type { Excitation } from "../../src/excitation/types.ts";
import { buildModel } from "../../src/model/build.ts";
import { crossFrame, PROPULSION } from "../modes/toys.ts";

function shaken(excitation: object, more: object = {}): Excitation {
  const file = crossFrame({}, { excitation, ...more });
  const e = excite(file, buildModel(file).rotors, 0.4);
  if (!e) throw new Error("the toy has motors");
  return e;
}
const sum = (a: Float64Array) => a.reduce((s, v) => s + v, 0);
const dot = (a: Float64Array, b: Float64Array) => a.reduce((s, v, i) => s + v * b[i], 0);

describe("weights", () => {
  test("with the motors' spread give the mean of a smeared power at the flight mix", () => {
    const e = shaken({ motorSpread: "6 %" }, { flightMix: "hard flying" });
    const power = e.grid.map((w) => 1 / ((1 - (w / 1500) ** 2) ** 2 + 0.02 ** 2));
    const mean = dot(e.nominalWeights, spreadPower(e.grid, power, 0.06));
    expect(dot(e.weights, power) / mean).toBeCloseTo(1, 12);
    expect(e.motorSpread).toBe(0.06);
    for (const w of [e.weights, e.nominalWeights]) expect(sum(w)).toBeCloseTo(1, 12);
  });

  test("without spread are those of the mix; the mix itself does not hang on the spread", () => {
    const [none, some] = [0, 0.1].map((motorSpread) => shaken({ motorSpread }));
    expect(none.weights).toEqual(none.nominalWeights);
    expect(some.nominalWeights).toEqual(none.nominalWeights);
    const widest = Math.max(...some.weights.map((w, i) => Math.abs(w - none.weights[i])));
    expect(widest).toBeGreaterThan(1e-3);
  });

  test("motors differ by 3 % unless the file says otherwise", () => {
    expect(shaken({}).motorSpread).toBe(0.03);
  });
});

describe("how far modes should reach", () => {
  // the toy: three blades, full speed 0.75 x 1800 rpm/V x 4 x 3.7 V = 19980 rpm = 333 turns/s
  test("is blade pass at full speed, and its double does not count", () => {
    const e = shaken({});
    expect(e.bladePass).toBe(3);
    expect(reachWanted(e)).toBeCloseTo(999, 9);
    expect(highestFrequency(e)).toBeCloseTo(1998, 9);
  });

  test("nor do orders of the file beyond blade pass, while those below do", () => {
    const orders = [
      { order: 36, of: "torque", fraction: 0.01 },
      { order: 2, of: "side force", fraction: 0.01 },
    ];
    const none = { thrustRipple: 0, torqueRipple: 0 };
    expect(reachWanted(shaken({ orders }))).toBeCloseTo(999, 9);
    expect(reachWanted(shaken({ orders, ...none }))).toBeCloseTo(666, 9);
    expect(highestFrequency(shaken({ orders }))).toBeCloseTo(36 * 333, 9);
  });

  test("is the lowest order where all lie beyond blade pass", () => {
    const orders = [12, 5].map((order) => ({ order, of: "thrust", fraction: 0.01 }));
    const zero = { balanceGrade: 0, bladeDifference: 0, thrustRipple: 0, torqueRipple: 0 };
    const e = shaken({ orders, ...zero, thrustRippleDouble: 0, torqueRippleDouble: 0 });
    expect(reachWanted(e)).toBeCloseTo(5 * 333, 9);
  });

  test("ends at 2 kHz", () => {
    const propeller = { ...PROPULSION.propeller, blades: 8 };
    const e = shaken({}, { propulsion: { ...PROPULSION, propeller } });
    expect(reachWanted(e)).toBe(2000);
    expect(highestFrequency(e)).toBeCloseTo(16 * 333, 9);
  });
});

describe("warnings", () => {
  test("a ripple of half the thrust is asked about, by its field", () => {
    const fields = [
      "bladeDifference",
      "thrustRipple",
      "torqueRipple",
      "thrustRippleDouble",
      "torqueRippleDouble",
    ];
    for (const field of fields) {
      const { warnings } = shaken({ [field]: 0.5 });
      expect(warnings.length).toBe(1);
      expect(warnings[0]).toContain(`"${field}"`);
      expect(warnings[0]).toContain("50 %");
    }
    expect(shaken({ thrustRipple: 0.1 }).warnings).toEqual([]);
  });

  test("without one there are none", () => {
    expect(shaken({}).warnings).toEqual([]);
  });
});
