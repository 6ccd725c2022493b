/** Hover and full speed. */

import { describe, expect, test } from "vitest";
import { prepare } from "../../src/analyse.ts";
import { motorSpeeds } from "../../src/excitation/speeds.ts";
import { readFrame } from "../../src/frame/read.ts";
import { crossFrame, PROPULSION } from "../modes/toys.ts";

const rpm = (omega: number) => (omega * 60) / (2 * Math.PI);
const near = (value: number, expected: number, error: number) =>
  expect(Math.abs(value / expected - 1)).toBeLessThan(error);

/** The sample frames as they were weighed by hand: kg, hover N per rotor, hover and full rpm, thrust to weight. */
const SAMPLES: readonly (readonly [string, number, number, number, number, number])[] = [
  ["three-inch", 0.1872, 0.459, 16329, 39960, 5.99],
  ["five-inch", 0.7344, 1.8, 10837, 29570, 7.45],
  ["seven-inch", 1.1533, 2.828, 7573, 19447, 6.6],
  ["ten-inch", 3.5507, 8.705, 6747, 13986, 4.3],
];

test.each(SAMPLES)("%s: thrust equals weight", (name, mass, thrust, hover, full, ratio) => {
  const { mass: report, excitation } = prepare(readFrame(`frames/${name}.jsonc`));
  if (!excitation) throw new Error("a sample without motors");
  const { speeds } = excitation;
  const heavier = report.mass / mass;
  expect(Math.abs(heavier - 1)).toBeLessThan(0.01);
  // speed goes with the square root of the mass; masses by hand have four digits, the rest three to five
  near(rpm(speeds.hover) / Math.sqrt(heavier), hover, 3e-4);
  near(speeds.hoverThrust / heavier, thrust, 2e-3);
  near(rpm(speeds.full), full, 1e-4);
  near(speeds.thrustToWeight * heavier, ratio, 3e-3);
  expect(speeds.low).toBeCloseTo(0.75 * speeds.hover, 9);
  expect(speeds.notes.join()).not.toContain("no room");
});

describe("speeds in the file", () => {
  const speedsOf = (speeds: object, mass = 0.4, more: object = {}) => {
    const { propulsion } = crossFrame({}, { propulsion: { ...PROPULSION, ...more, speeds } });
    if (!propulsion) throw new Error("the toy has motors");
    return motorSpeeds(propulsion, mass, 4);
  };

  test("take the place of the estimates, and the notes say so", () => {
    const given = speedsOf({ idle: "3000 rpm", hover: "9000 rpm", full: "24000 rpm" });
    expect(rpm(given.low)).toBeCloseTo(3000, 9);
    expect(rpm(given.hover)).toBeCloseTo(9000, 9);
    expect(rpm(given.full)).toBeCloseTo(24000, 9);
    expect(given.notes.filter((n) => n.includes("in the file")).length).toBe(3);
    const none = speedsOf({});
    expect(none.notes.filter((n) => n.includes("in the file")).length).toBe(0);
    // 0.75 x 1800 rpm/V x 4 x 3.7 V
    expect(rpm(none.full)).toBeCloseTo(19980, 6);
  });

  test("the lowest speed follows a hover speed that is given, and an idle speed goes before it", () => {
    expect(rpm(speedsOf({ hover: "9000 rpm" }).low)).toBeCloseTo(0.75 * 9000, 9);
    expect(rpm(speedsOf({ idle: "2500 rpm" }).low)).toBeCloseTo(2500, 9);
  });

  test("hover goes with the square root of the mass and against the diameter squared", () => {
    const [light, heavy] = [speedsOf({}, 0.3), speedsOf({}, 0.6)];
    expect(heavy.hover / light.hover).toBeCloseTo(Math.SQRT2, 10);
    const big = speedsOf({}, 0.3, {
      propeller: { ...PROPULSION.propeller, diameter: "10 in" },
    });
    expect(light.hover / big.hover).toBeCloseTo(4, 10);
    expect(heavy.full).toBe(light.full);
    expect(light.thrustToWeight / heavy.thrustToWeight).toBeCloseTo(2, 10);
  });

  test("weight is shared by the motors", () => {
    const { propulsion } = crossFrame();
    if (!propulsion) throw new Error("the toy has motors");
    const [four, six] = [4, 6].map((n) => motorSpeeds(propulsion, 0.6, n));
    expect(four.hoverThrust).toBeCloseTo((0.6 * 9.80665) / 4, 12);
    expect(four.hover / six.hover).toBeCloseTo(Math.sqrt(1.5), 10);
  });

  test("a craft that cannot fly is refused, with both speeds", () => {
    expect(() => speedsOf({}, 6)).toThrow(/cannot fly: 6000 g need \d+ rpm to hover, .* 19980 rpm/);
    expect(() => speedsOf({ hover: "25000 rpm" })).toThrow(/cannot fly/);
  });

  test("little thrust, and an idle speed above hover, are told", () => {
    const heavy = speedsOf({}, 1.6);
    expect(heavy.thrustToWeight).toBeLessThan(1.5);
    expect(heavy.warnings.join()).toContain("times the weight");
    const idle = speedsOf({ idle: "18000 rpm" });
    expect(idle.low / idle.hover).toBeCloseTo(0.75, 12);
    expect(idle.warnings.join()).toContain("18000 rpm");
    expect(idle.notes.join()).not.toContain("the idle speed in the file");
  });
});
