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

/**
 * Rotors of four sizes of craft at G 16 and full speed: g, rpm in hover and full, then g mm and N in hover
 * and full. Derived by hand from e = G/omega and rounded to the digits shown; not measured values.
 */
const CLASSES: readonly (readonly [string, number, number, number, string, string, string])[] = [
  ["three-inch", 9, 16329, 39960, "0.034", "0.10", "0.60"],
  ["five-inch", 24, 10837, 29570, "0.124", "0.16", "1.2"],
  ["seven-inch", 38, 7573, 19447, "0.30", "0.19", "1.2"],
  ["ten-inch", 86, 6747, 13986, "0.94", "0.47", "2.0"],
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

  test.each(CLASSES)("%s at G 16", (_, grams, hover, full, gmm, atHover, atFull) => {
    const U = residualUnbalance(grams * 1e-3, 16, perSecond(full));
    const asPrinted = (value: number, printed: string) =>
      expect(value.toFixed(printed.split(".")[1].length)).toBe(printed);
    asPrinted(U * 1e6, gmm);
    asPrinted(U * perSecond(hover) ** 2, atHover);
    asPrinted(U * perSecond(full) ** 2, atFull);
  });

  test("goes with the grade: G 6.3 is 0.39 of G 16, G 40 is 2.5 times", () => {
    const [low, usual, high] = [6.3, 16, 40].map((G) => residualUnbalance(0.024, G, 3000));
    expect(low / usual).toBeCloseTo(0.39, 2);
    expect(high / usual).toBeCloseTo(2.5, 12);
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
    bladeDifference: 0.01,
    thrustRipple: 0.04,
    torqueRipple: 0.05,
    thrustRippleDouble: 0.015,
    torqueRippleDouble: 0.025,
    orders: [],
    motorSpread: 0.03,
    badPropeller: { grade: 40 },
    lostTip: { massShare: 0.02 },
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

  test("without a word in the file: unbalance and blades once, ripples at blade pass and twice that", () => {
    const Q = k * torquePerThrust(K_THRUST, 5 * 0.0254);
    const expected = [
      [1, "side force", (0.023 * 0.016) / speeds.full],
      [1, "rotating moment", 0.02 * k * 0.7 * 0.0635],
      [3, "thrust", 0.03 * k],
      [3, "torque", 0.03 * Q],
      [6, "thrust", 0.01 * k],
      [6, "torque", 0.01 * Q],
    ] as const;
    expect(e.orders.map(({ order, kind }) => [order, kind])).toEqual(
      expected.map(([order, kind]) => [order, kind]),
    );
    e.orders.forEach(({ coefficient }, i) => {
      expect(coefficient / expected[i][2]).toBeCloseTo(1, 12);
    });
    expect(new Set(e.orders.map((o) => o.name)).size).toBe(6);
  });

  test("blades that lift unevenly: one of three lifts 3 % more than the mean of all, so 1 % of the thrust", () => {
    // each blade's lift at 0.7 R and its own azimuth; the moment about the hub is what they leave
    const [T, r] = [3, 0.7 * 0.0635];
    const lift = [1.03, 1, 1].map((f) => (f * T) / 3);
    const azimuth = [0, 1, 2].map((b) => (2 * Math.PI * b) / 3);
    const moment = Math.hypot(
      lift.reduce((sum, L, b) => sum + r * Math.sin(azimuth[b]) * L, 0),
      lift.reduce((sum, L, b) => sum - r * Math.cos(azimuth[b]) * L, 0),
    );
    const force = forces({ bladeDifference: 0.01 })[1];
    expect(force.coefficient * (T / k)).toBeCloseTo(moment, 12);
    expect(force.source).toContain("1 % of the thrust");
  });

  test("the rotor that is out of balance is bell, propeller and nut", () => {
    expect(model.rotors.map((r) => r.rotatingMass)).toEqual([0.023, 0.023, 0.023, 0.023]);
    const { bellMass: _, ...motor } = PROPULSION.motor;
    const bare = buildModel(crossFrame({}, { propulsion: { ...PROPULSION, motor } }));
    expect(bare.rotors[0].rotatingMass).toBeCloseTo(0.55 * 0.03 + 0.005, 12);
  });

  test("ripples are shares of the thrust and of the torque at the same speed", () => {
    const [, , thrust, torque, thrust2, torque2] = forces({});
    expect([thrust2.order, torque2.order]).toEqual([6, 6]);
    expect(thrust2.coefficient / thrust.coefficient).toBeCloseTo(0.015 / 0.04, 12);
    expect(torque2.coefficient / torque.coefficient).toBeCloseTo(0.025 / 0.05, 12);
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

  test("further orders: of thrust, side force, torque and rotating moment", () => {
    const orders = [
      { order: 2, of: "thrust", fraction: 0.01 },
      { order: 0.5, of: "side force", fraction: 0.02 },
      { order: 36, of: "torque", fraction: 0.5 },
      { order: 1, of: "rotating moment", fraction: 0.03 },
    ] as const;
    const further = forces({ orders }).slice(6);
    const [a, b, c, d] = further;
    expect(further.map((o) => o.order)).toEqual([2, 0.5, 36, 1]);
    expect(further.map((o) => o.kind)).toEqual(orders.map((o) => o.of));
    expect(d.coefficient / (0.03 * k * 0.7 * 0.0635)).toBeCloseTo(1, 12);
    expect(d.source).toContain("0.7 of the radius");
    expect(a.coefficient / (0.01 * k)).toBeCloseTo(1, 12);
    expect(b.coefficient / (0.02 * k)).toBeCloseTo(1, 12);
    expect(c.coefficient / (0.5 * k * torquePerThrust(K_THRUST, 5 * 0.0254))).toBeCloseTo(1, 12);
  });

  test("an order of size zero is left out", () => {
    const kinds = forces({
      balanceGrade: 0,
      bladeDifference: 0,
      torqueRipple: 0,
      thrustRippleDouble: 0,
    });
    expect(kinds.map((o) => [o.kind, o.order])).toEqual([
      ["thrust", 3],
      ["torque", 6],
    ]);
  });

  test("every force names its source, and an assumption says so", () => {
    for (const { source } of forces({})) expect(source).toContain("common practice, no source");
  });

  test("a frame without propulsion is not shaken", () => {
    const { propulsion: __, ...still } = file;
    expect(excite(still, [], 0.4)).toBeUndefined();
  });
});
