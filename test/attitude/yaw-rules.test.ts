import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { falseTiltAt, falseTilts } from "../../src/attitude/false-tilt.ts";
import { degrees, millimetres, perSecond, twoDigits } from "../../src/attitude/shown.ts";
import { specificForce } from "../../src/attitude/specific-force.ts";
import { apparentTilt, gravityInBody, steadyYawTilt } from "../../src/attitude/tilt.ts";
import {
  radiusWithin,
  radiusWords,
  settledYawTilt,
  turnShare,
} from "../../src/attitude/yaw-rules.ts";
import { InputError } from "../../src/errors.ts";
import { between, RUNS } from "../filter/filter-orders.ts";
import { DEGREE, G } from "./body-path.ts";
import { turn } from "./body-turns.ts";

const rate = between(-15, 15);
const size = between(-0.1, 0.1);

describe("false tilt of a place", () => {
  test("is the tilt of what the accelerometer reads there", () => {
    fc.assert(
      fc.property(rate, size, size, size, (w, x, y, z) => {
        const motion = { acceleration: [0, 0, 0], omega: [0, 0, w], alpha: [0, 0, 0] } as const;
        const f = specificForce(motion, [x, y, z], gravityInBody({ roll: 0, pitch: 0 }));
        expect(falseTiltAt(x, y, w)).toBeCloseTo(apparentTilt(f), 12);
      }),
      RUNS,
    );
  });

  test("of a map is that of its places", () => {
    const places = Float64Array.of(0, 0, -0.03, 0, 0.02, -0.01);
    const tilts = falseTilts(places, 400 * DEGREE);
    expect([...tilts]).toEqual([
      0,
      falseTiltAt(-0.03, 0, 400 * DEGREE),
      falseTiltAt(0.02, -0.01, 400 * DEGREE),
    ]);
    expect(tilts[1] / DEGREE).toBeCloseTo(8.48028232, 7);
    expect(falseTilts(new Float64Array(0), 1).length).toBe(0);
  });
});

describe("the radius within which an error is not passed", () => {
  test("is 14.05 mm for 1 degree at 200 deg/s: g tan(1 degree)/(3.4907 rad/s)^2", () => {
    expect(radiusWithin(DEGREE, 200 * DEGREE) * 1e3).toBeCloseTo(14.048417897, 8);
    expect(radiusWithin(DEGREE, -200 * DEGREE)).toBe(radiusWithin(DEGREE, 200 * DEGREE));
  });

  test("is where the static tilt is the error", () => {
    fc.assert(
      fc.property(between(0.001, 1.5), between(0.1, 20), (error, w) => {
        expect(steadyYawTilt(w, radiusWithin(error, w))).toBeCloseTo(error, 12);
      }),
      RUNS,
    );
  });

  test("in words, down to the digit shown", () => {
    expect(radiusWords(DEGREE, 200 * DEGREE)).toBe(
      "within 14 mm of the centre of gravity (in the plan) the error stays below 1 degree at 200 deg/s of steady yaw",
    );
    expect(radiusWords(2 * DEGREE, 400 * DEGREE)).toMatch(/^within 7 mm .* below 2 degrees at 400/);
    expect(radiusWords(DEGREE, 400 * DEGREE)).toMatch(/^within 3.5 mm .* below 1 degree at 400/);
    expect(radiusWords(5 * DEGREE, 400 * DEGREE)).toMatch(/^within 17 mm /);
    expect(radiusWithin(DEGREE, 0)).toBe(Number.POSITIVE_INFINITY);
    expect(radiusWords(DEGREE, 0)).toBe("without yaw there is no such error, at any place");
  });
});

test("share of a turn: 1 - exp(-1) after one time constant, 0 at once, all in the end", () => {
  expect(turnShare(2, 2)).toBeCloseTo(0.632120558829, 12);
  expect(turnShare(0, 2)).toBe(0);
  expect(turnShare(1e-9, 1)).toBeCloseTo(1e-9, 17);
  expect(turnShare(1e6, 1)).toBe(1);
});

describe("what a vector filter settles at", () => {
  test("stands still under the filter's equation along the body axes", () => {
    fc.assert(
      fc.property(between(0.05, 12), between(0, 0.2), between(0.02, 5), (w, distance, tau) => {
        const { tilt, trailing } = settledYawTilt(w, distance, tau);
        // the sensor in front, yaw to the left: the low side is -trailing from the nose
        const u = turn([0, 0, -trailing]).map((row) => -Math.sin(tilt) * row[0]);
        u[2] = Math.cos(tilt);
        const m = Math.atan((w * w * distance) / G);
        const f = [-Math.sin(m), 0, Math.cos(m)];
        const along = f.reduce((sum, value, k) => sum + value * u[k], 0);
        // u' = -omega x u + (f - (f . u) u)/tau
        const turned = [w * u[1], -w * u[0], 0];
        turned.forEach((value, k) => {
          expect(value + (f[k] - along * u[k]) / tau).toBeCloseTo(0, 11);
        });
      }),
      RUNS,
    );
  });

  test("is the static tilt for a slow yaw, a quarter turn behind and rate distance/(g tau) for a quick one", () => {
    const slow = settledYawTilt(0.01, 0.05, 0.1);
    expect(slow.tilt / steadyYawTilt(0.01, 0.05)).toBeCloseTo(1, 5);
    expect(slow.trailing).toBeCloseTo(0.001, 6);
    const quick = settledYawTilt(-7, 0.01, 50);
    // less by half the square of the static lean, 0.05
    expect(quick.tilt / ((7 * 0.01) / (G * 50))).toBeCloseTo(1 - 0.05 ** 2 / 2, 4);
    expect(quick.trailing).toBeCloseTo(Math.PI / 2, 2);
    expect(settledYawTilt(0, 0.03, 1)).toEqual({ tilt: 0, trailing: 0 });
    expect(settledYawTilt(5, 0, 1).tilt).toBe(0);
  });
});

test("numbers as the sentences say them", () => {
  expect([0.01, 0.06, 1, 1.02, 2.206, 17.4, 120].map((v) => degrees(v * DEGREE))).toEqual([
    "less than 0.05 degrees",
    "0.06 degrees",
    "1 degree",
    "1 degree",
    "2.2 degrees",
    "17 degrees",
    "120 degrees",
  ]);
  expect([0.00042, 0.0042, 0.031, 0.0996, 0.163].map(millimetres)).toEqual([
    "0.42 mm",
    "4.2 mm",
    "31 mm",
    "100 mm",
    "163 mm",
  ]);
  expect([perSecond(-200 * DEGREE), perSecond(33.33 * DEGREE)]).toEqual([
    "200 deg/s",
    "33.3 deg/s",
  ]);
  expect(twoDigits(0.0373)).toBe("0.037");
});

describe("refused", () => {
  const nan = Number.NaN;
  test.each<readonly [string, () => unknown, string]>([
    ["place", () => falseTiltAt(nan, 0, 1), "x: the distance forward must be a finite number"],
    ["rate", () => falseTiltAt(0, 0, nan), "yawRate: the rate of yaw must be a finite number"],
    [
      "half a place",
      () => falseTilts(new Float64Array(3), 1),
      "places: there must be an x and a y",
    ],
    ["no error", () => radiusWithin(0, 1), "error: the error must be above 0, but is 0 rad."],
    ["a quarter turn", () => radiusWithin(2, 1), "error: the error must be below a quarter turn"],
    ["time", () => turnShare(-1, 1), "T: the duration of the turn must be 0 or more, but is -1 s."],
    ["lag", () => turnShare(1, 0), "timeConstant: the time constant must be above 0, but is 0 s."],
    ["settled", () => settledYawTilt(1, -1, 1), "distance: the distance from the axis must be 0"],
  ])("%s", (_, call, message) => {
    expect(call).toThrow(InputError);
    expect(call).toThrow(message);
  });
});
