/**
 * One propeller worse than the others. Rotors do not share a phase, so powers grow with the squares of the
 * unbalances: sums over the rotors are known from frames whose rotors all have another unbalance.
 */

import { describe, expect, test } from "vitest";
import { casesOf } from "../../src/ranking/cases.ts";
import type { CaseReading } from "../../src/ranking/types.ts";
import { shakeBare } from "../../src/response/bare-frame.ts";
import { readingPoint } from "../../src/response/place.ts";
import { readPlace } from "../../src/response/reading.ts";
import { crossSections, frameOf } from "../modes/toys.ts";
import { bareOf, joined, shaken, smallCross } from "../response/joined.ts";
import { assessed, type Judged, judged, withInstruments } from "./judged.ts";

type Sections = Record<string, object>;

/** All other forces as by default. */
const lopsided = bareOf(smallCross({}), 30, 4);
const MOTORS = lopsided.model.rotors.map((r) => r.name);
/** kg m per rotor at a balance grade (mm/s): bell, propeller and nut of 23 g at full speed. */
const unbalanceAt = (grade: number) => (0.023 * grade * 1e-3) / lopsided.excitation.speeds.full;

/** The same frame shaken by other forces. */
function under(excitation: object): Judged {
  const other = bareOf(smallCross({}, {}, { excitation }), 1, 4);
  return withInstruments(shaken(lopsided, other.excitation));
}

/** Mean-square gyro reading of each place. */
const powers = (frame: Judged) => assessed(frame).map((p) => p.sensed.gyro ** 2);

function casesUnder(excitation: object): CaseReading[][] {
  const frame = under(excitation);
  return casesOf(frame.bare, frame.instruments, assessed(frame));
}

const power = (cases: readonly CaseReading[], name: CaseReading["name"]) =>
  (cases.find((c) => c.name === name)?.gyro ?? Number.NaN) ** 2;

/** Per place: what all else causes, and the sum over rotors of the power per squared unbalance. */
const [one, two] = [16, 48].map((grade) => powers(under({ balanceGrade: grade })));
const places = one.map((p, i) => {
  const [a, b] = [unbalanceAt(16) ** 2, unbalanceAt(48) ** 2];
  const perUnit = (two[i] - p) / (b - a);
  return { rest: p - a * perUnit, perUnit };
});

describe.each([
  { normal: "grade 16", excitation: {}, before: unbalanceAt(16) },
  { normal: "none at all", excitation: { balanceGrade: 0 }, before: 0 },
  { normal: "given in the file", excitation: { unbalance: "0.1 g mm" }, before: 1e-7 },
])("normal unbalance: $normal", ({ excitation, before }) => {
  const worst = casesUnder(excitation);
  const eachMotor = MOTORS.map((motor) =>
    casesUnder({ ...excitation, badPropeller: { motor }, lostTip: { motor } }),
  );

  test.each([
    ["one bad propeller", unbalanceAt(40)],
    // 2 % of a third of 4 g at 0.9 of 2.5 inch, at any angle to what was there
    ["lost balance", Math.hypot(before, ((0.02 * 4e-3) / 3) * 0.9 * 0.0635)],
  ] as const)(
    "%s: the four motors in turn add up to what all four together are known for",
    (name, bad) => {
      places.forEach(({ rest, perUnit }, p) => {
        const sum = eachMotor.reduce((s, cases) => s + power(cases[p], name), 0);
        const expected = 4 * rest + (3 * before ** 2 + bad ** 2) * perUnit;
        expect(sum / expected).toBeCloseTo(1, 9);
      });
    },
  );

  test("the motor that is told is the worst, and the others are better", () => {
    for (const name of ["one bad propeller", "lost balance"] as const) {
      const told = worst.map((cases) => cases.find((c) => c.name === name));
      told.forEach((c, p) => {
        const each = eachMotor.map((cases) => Math.sqrt(power(cases[p], name)));
        expect((c?.gyro ?? 0) / Math.max(...each)).toBeCloseTo(1, 12);
        expect(c?.motor).toBe(MOTORS[each.indexOf(Math.max(...each))]);
        expect(Math.max(...each)).toBeGreaterThan(1.02 * Math.min(...each));
      });
    }
  });

  test("a motor that is named is told by its name, worst or not", () => {
    eachMotor.forEach((cases, m) => {
      for (const c of cases.flat()) expect(c.motor).toBe(MOTORS[m]);
    });
  });
});

test("each motor has the share that it has in the frame solved with the stack in its mesh", () => {
  // chips that add nothing and take nothing away; no unbalance but that of the bad propeller
  const ideal = { gyro: { accelerationSensitivity: 0, bandwidth: "1 MHz" } };
  const excitation = { balanceGrade: 0, badPropeller: { grade: 40 } };
  const file = smallCross(
    {},
    {},
    { sensors: ideal, excitation: { ...excitation, balanceGrade: 40 } },
  );
  const alike = judged(file, 30);
  const [place] = assessed(alike);
  const { mesh, system, solved, chip, model } = joined(alike, place.candidate, 30);
  const whole = shakeBare(mesh, system, solved, model.rotors, alike.excitation);
  const reading = readPlace(whole, readingPoint(whole.h, chip));
  const order = alike.excitation.orders.findIndex((o) => o.name === "unbalance");
  const all = reading.gyroPower.map((p) =>
    p.reduce((s, v, i) => s + v * alike.excitation.weights[i], 0),
  );
  const rest = all.reduce((a, b) => a + b, 0) - all[order];
  MOTORS.forEach((motor, r) => {
    const one = { ...excitation, badPropeller: { grade: 40, motor } };
    const frame = judged(smallCross({}, {}, { sensors: ideal, excitation: one }), 30);
    const [[bad]] = casesOf(frame.bare, frame.instruments, [assessed(frame)[0]]);
    const share = reading.gyroShares[order * MOTORS.length + r];
    expect(bad.gyro ** 2 / (rest + share)).toBeCloseTo(1, 2);
  });
  const shares = MOTORS.map((_, r) => reading.gyroShares[order * MOTORS.length + r]);
  expect(Math.max(...shares)).toBeGreaterThan(1.2 * Math.min(...shares));
});

test("in the middle of a frame that looks the same from all motors one bad propeller costs what it must", () => {
  const s = crossSections({ armElements: 1 }) as Sections;
  const file = (excitation: object) =>
    frameOf({
      ...s,
      meshSize: 40,
      excitation: { bladeDifference: 0, ...excitation },
      stack: { ...s.stack, chip: [0, 0, 0] },
      candidates: { middle: { plate: "hub", at: [0, 0] } },
    });
  const [normal, triple] = [16, 48].map(
    (grade) => powers(judged(file({ balanceGrade: grade })))[0],
  );
  const frame = judged(file({}));
  const [[bad]] = casesOf(frame.bare, frame.instruments, assessed(frame));
  // power = rest + share (U/U16)^2 for all four together; then three at 16 and one at 40
  const share = (triple - normal) / 8;
  const expected = normal - share + share * (3 / 4 + (40 / 16) ** 2 / 4);
  expect(bad.gyro ** 2 / expected).toBeCloseTo(1, 6);
});

test("a bad propeller no worse than the rest is no case", () => {
  const names = casesUnder({ balanceGrade: 40 }).map((cases) => cases.map((c) => c.name));
  for (const n of names) expect(n).toEqual(["lost balance"]);
});
