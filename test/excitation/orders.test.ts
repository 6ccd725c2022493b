/** What each rotor shakes with, against published and worked values. */

import { describe, expect, test } from "vitest";
import { excite } from "../../src/excitation/excite.ts";
import { orderForces, residualUnbalance, torquePerThrust } from "../../src/excitation/orders.ts";
import { thrustFactor } from "../../src/excitation/speeds.ts";
import type { ExcitationDef } from "../../src/frame/types-flight.ts";
import { buildModel } from "../../src/model/build.ts";
import { crossFrame, PROPULSION } from "../modes/toys.ts";

const perSecond = (rpm: number) => (rpm * 2 * Math.PI) / 60;

/**
 * ISO 21940-11:2016: e_per = G/Omega, U_per = e_per m. The first line is in the style of the standard's
 * annex (its result from memory); the others are worked by hand from the definition.
 * Mass kg, rpm, grade mm/s, eccentricity um, unbalance g mm, force N.
 */
const BALANCE: readonly (readonly [string, number, number, number, number, number, number])[] = [
  ["turbine rotor", 3600, 3000, 2.5, 7.957747155, 28647.889756541, 2827.433388231],
  ["small rotor A", 0.05, 12000, 6.3, 5.013380707, 0.250669035, 0.395840674],
  ["small rotor B", 0.02, 30000, 6.3, 2.005352283, 0.040107046, 0.395840674],
  ["small rotor C", 0.012, 24000, 16, 6.366197724, 0.076394373, 0.482548632],
  ["small rotor D", 0.0075, 36000, 40, 10.610329539, 0.079577472, 1.130973355],
];

describe("residual unbalance", () => {
  test.each(BALANCE)("%s", (_, mass, rpm, grade, microns, gmm, newton) => {
    const omega = perSecond(rpm);
    const U = residualUnbalance(mass, grade, omega);
    expect(U * 1e6).toBeCloseTo(gmm, 8 - Math.ceil(Math.log10(gmm)));
    expect((U / mass) * 1e6).toBeCloseTo(microns, 8);
    // U_per = 9549.3 G m / n
    expect((9549.2966 * grade * mass) / rpm / (U * 1e6)).toBeCloseTo(1, 7);
    expect((U * omega * omega) / newton).toBeCloseTo(1, 8);
  });

  test("the five-inch rotor of 24 g at G 16 and 29570 rpm: 0.124 g mm, 1.2 N at full speed", () => {
    const full = perSecond(29570);
    const U = residualUnbalance(0.024, 16, full);
    expect(U * 1e6).toBeCloseTo(0.124, 3);
    expect(U * full ** 2).toBeCloseTo(1.19, 2);
    expect(U * perSecond(10837) ** 2).toBeCloseTo(0.16, 2);
  });
});

/**
 * k = T/omega^2 in N s^2 of static tests of an open wind-tunnel data set; the coefficients are rounded
 * to three digits there.
 */
const THRUST: readonly (readonly [string, number, number, number])[] = [
  ["5 x 3.75, three blades", 5, 0.148, 1.197e-6],
  ["5 in at 15 degrees, three blades", 5, 0.109, 8.76e-7],
  ["5 x 4, three blades", 5, 0.18, 1.452e-6],
  ["10 x 4.7, two blades", 10, 0.119, 1.53e-5],
];

test.each(THRUST)("thrust over speed squared: %s", (_, inches, CT, k) => {
  expect(thrustFactor(CT, inches * 0.0254) / k).toBeGreaterThan(0.995);
  expect(thrustFactor(CT, inches * 0.0254) / k).toBeLessThan(1.005);
});

/** Thrust = K_THRUST omega^2 of the toy's propeller. */
const K_THRUST = thrustFactor(0.15, 5 * 0.0254);

describe("propeller torque", () => {
  const { propulsion } = crossFrame();
  if (!propulsion) throw new Error("the toy has motors");

  test("is what the induced power of a hovering disc takes, at a figure of merit of 0.6", () => {
    // by hand: 5 in, T = 1 N: A = 0.012668 m^2, v = sqrt(1/(2 1.225 A)) = 5.6763 m/s, P = v/0.6 = 9.461 W
    const omega = Math.sqrt(1 / thrustFactor(0.15, 5 * 0.0254));
    expect(torquePerThrust(K_THRUST, 5 * 0.0254) * omega).toBeCloseTo(9.461, 2);
  });
});

describe("orders", () => {
  const base: ExcitationDef = {
    balanceGrade: 16,
    thrustRipple: 0.04,
    torqueRipple: 0.05,
    orders: [],
  };
  const file = crossFrame();
  const model = buildModel(file);
  const e = excite(file, model.rotors, 0.4);
  if (!file.propulsion || !e) throw new Error("the toy has motors");
  const { propulsion } = file;
  const { speeds } = e;
  const forces = (change: Partial<ExcitationDef>) =>
    orderForces(propulsion, { ...base, ...change }, speeds, 0.023);
  const k = thrustFactor(0.15, 0.127);

  test("without a word in the file: unbalance once, thrust and torque at blade pass", () => {
    const shape = e.orders.map(({ order, kind }) => [order, kind]);
    expect(shape).toEqual([
      [1, "side force"],
      [3, "thrust"],
      [3, "torque"],
    ]);
    expect(e.orders[0].coefficient).toBeCloseTo((0.023 * 0.016) / speeds.full, 15);
    expect(e.orders[1].coefficient / (0.03 * k)).toBeCloseTo(1, 12);
    expect(
      e.orders[2].coefficient / (0.03 * k * torquePerThrust(K_THRUST, 5 * 0.0254)),
    ).toBeCloseTo(1, 12);
  });

  test("the rotor that is out of balance is bell, propeller and nut", () => {
    expect(model.rotors.map((r) => r.rotatingMass)).toEqual([0.023, 0.023, 0.023, 0.023]);
    const { bellMass: _, ...motor } = PROPULSION.motor;
    const bare = buildModel(crossFrame({}, { propulsion: { ...PROPULSION, motor } }));
    expect(bare.rotors[0].rotatingMass).toBeCloseTo(0.55 * 0.03 + 0.005, 12);
  });

  test("ripples are shares of the thrust and of the torque at the same speed", () => {
    const [, thrust, torque] = forces({});
    expect(thrust.coefficient * speeds.hover ** 2).toBeCloseTo(0.04 * speeds.hoverThrust, 12);
    expect(torque.coefficient / thrust.coefficient).toBeCloseTo(
      (0.05 / 0.04) * torquePerThrust(K_THRUST, 5 * 0.0254),
      12,
    );
  });

  test("an unbalance given in the file takes the place of the grade", () => {
    const [given] = forces({ unbalance: 2e-7 });
    expect(given.coefficient).toBe(2e-7);
    expect(given.source).toContain("0.200 g mm");
    expect(given.source).toContain("given in the file");
    expect(forces({})[0].source).toContain("ISO 21940-11");
    expect(forces({})[0].source).toContain("G 16");
  });

  test("further orders: of thrust, side force and torque", () => {
    const orders = [
      { order: 2, of: "thrust", fraction: 0.01 },
      { order: 0.5, of: "side force", fraction: 0.02 },
      { order: 36, of: "torque", fraction: 0.5 },
    ] as const;
    const [, , , a, b, c] = forces({ orders });
    expect([a.order, b.order, c.order]).toEqual([2, 0.5, 36]);
    expect([a.kind, b.kind, c.kind]).toEqual(["thrust", "side force", "torque"]);
    expect(a.coefficient / (0.01 * k)).toBeCloseTo(1, 12);
    expect(b.coefficient / (0.02 * k)).toBeCloseTo(1, 12);
    expect(c.coefficient / (0.5 * k * torquePerThrust(K_THRUST, 5 * 0.0254))).toBeCloseTo(1, 12);
  });

  test("an order of size zero is left out", () => {
    const kinds = forces({ balanceGrade: 0, torqueRipple: 0 }).map((o) => o.kind);
    expect(kinds).toEqual(["thrust"]);
  });

  test("every force names its source, and an assumption says so", () => {
    for (const { source } of forces({})) expect(source).toContain("common practice, no source");
  });

  test("a frame without propulsion is not shaken", () => {
    const { propulsion: __, ...still } = file;
    expect(excite(still, [], 0.4)).toBeUndefined();
  });
});
