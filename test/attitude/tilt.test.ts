import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { specificForce } from "../../src/attitude/specific-force.ts";
import {
  apparentAttitude,
  apparentTilt,
  gravityInBody,
  lowSide,
  steadyYawTilt,
} from "../../src/attitude/tilt.ts";
import { InputError } from "../../src/errors.ts";
import { GRAVITY } from "../../src/excitation/speeds.ts";
import type { Vec3 } from "../../src/model/types.ts";
import { between, RUNS } from "../filter/filter-orders.ts";
import { times, transposed, turn, vector } from "./body-turns.ts";

const DEGREE = Math.PI / 180;
const LEVEL = gravityInBody({ roll: 0, pitch: 0 });
const attitude = fc.record({ roll: between(-3.1, 3.1), pitch: between(-1.5, 1.5) });

const atRest = (at: { roll: number; pitch: number }) =>
  gravityInBody(at).map((v) => -v) as unknown as Vec3;

/** What a sensor at r reads on a level craft in steady yaw. */
const inYaw = (rate: number, r: Vec3) =>
  specificForce({ acceleration: [0, 0, 0], omega: [0, 0, rate], alpha: [0, 0, 0] }, r, LEVEL);

describe("gravity along the body axes", () => {
  test("level, it points down; nose up, to the tail; right side down, to the right", () => {
    expect(LEVEL[2]).toBe(-GRAVITY);
    expect(gravityInBody({ roll: 0, pitch: 0.1 })[0]).toBeLessThan(0);
    expect(gravityInBody({ roll: 0.1, pitch: 0 })[1]).toBeLessThan(0);
  });

  test("turns with the body: nose up is a negative turn about y (left), right side down a positive one about x", () => {
    fc.assert(
      fc.property(attitude, ({ roll, pitch }) => {
        // body = turned by -pitch about y, then by roll about its own x: R = Ry(-pitch) Rx(roll)
        const afterRoll = times(transposed(turn([0, -pitch, 0])), [0, 0, -GRAVITY]);
        const expected = times(transposed(turn([roll, 0, 0])), afterRoll);
        gravityInBody({ roll, pitch }).forEach((value, i) => {
          expect(value).toBeCloseTo(expected[i], 12);
        });
      }),
      RUNS,
    );
  });
});

describe("apparent attitude", () => {
  test("of a sensor at rest is the true one", () => {
    fc.assert(
      fc.property(attitude, (at) => {
        const seen = apparentAttitude(atRest(at));
        expect(seen.roll).toBeCloseTo(at.roll, 12);
        expect(seen.pitch).toBeCloseTo(at.pitch, 12);
      }),
      RUNS,
    );
  });

  test("does not depend on the size of the force", () => {
    expect(apparentAttitude([1e-6, 2e-6, 3e-6])).toEqual(apparentAttitude([1, 2, 3]));
  });

  test("tilt is the angle to the z axis: cos tilt = cos roll cos pitch", () => {
    fc.assert(
      fc.property(attitude, (at) => {
        const expected = Math.cos(at.roll) * Math.cos(at.pitch);
        expect(Math.cos(apparentTilt(atRest(at)))).toBeCloseTo(expected, 12);
      }),
      RUNS,
    );
  });

  test("level is plain zero, upside down half a turn, nose straight up without roll", () => {
    expect(apparentAttitude([-0, -0, 9.8])).toEqual({ roll: 0, pitch: 0 });
    expect(apparentAttitude([0, 0, -9.8])).toEqual({ roll: Math.PI, pitch: 0 });
    expect(apparentAttitude([9.8, 0, -0])).toEqual({ roll: 0, pitch: Math.PI / 2 });
  });
});

describe("the side that looks low", () => {
  test.each<readonly [number, number, string]>([
    [0, 0, "level"],
    [0, 10, "rear"],
    [0, -10, "front"],
    [10, 0, "right"],
    [-10, 0, "left"],
    [10, 10, "rear right"],
    [-10, 10, "rear left"],
    [10, -10, "front right"],
    [-10, -10, "front left"],
    [3, 10, "rear"],
  ])("roll %d, pitch %d degrees: %s", (roll, pitch, side) => {
    expect(lowSide(atRest({ roll: roll * DEGREE, pitch: pitch * DEGREE }))).toBe(side);
  });

  test("is the sensor's own in steady yaw, either way round", () => {
    const places: readonly (readonly [Vec3, string])[] = [
      [[-0.03, 0, 0], "rear"],
      [[0.03, 0, 0.01], "front"],
      [[0, 0.03, -0.01], "left"],
      [[0, -0.03, 0], "right"],
      [[-0.02, -0.02, 0], "rear right"],
      [[0.02, 0.02, 0], "front left"],
    ];
    for (const [r, side] of places) {
      expect(lowSide(inYaw(7, r))).toBe(side);
      expect(lowSide(inYaw(-7, r))).toBe(side);
    }
  });

  test("of a sensor on the axis is none", () => {
    expect(lowSide(inYaw(7, [0, 0, 0.02]))).toBe("level");
  });
});

describe("steady yaw", () => {
  test("tilts by atan(rate^2 distance/g), as the reading shows, and the same to the left", () => {
    fc.assert(
      fc.property(between(0.1, 20), vector(0.05), (rate, r) => {
        fc.pre(Math.min(Math.abs(r[0]), Math.abs(r[1])) > 1e-6);
        const f = inYaw(rate, r);
        const tilt = steadyYawTilt(rate, Math.hypot(r[0], r[1]));
        expect(apparentTilt(f)).toBeCloseTo(tilt, 12);
        expect(steadyYawTilt(-rate, Math.hypot(r[0], r[1]))).toBe(tilt);
        expect(inYaw(-rate, r)).toEqual(f);
        // low towards (x, y): nose up where the sensor is aft, right side down where it is right
        const seen = apparentAttitude(f);
        expect(Math.sign(seen.pitch)).toBe(-Math.sign(r[0]));
        expect(Math.sign(seen.roll)).toBe(-Math.sign(r[1]));
      }),
      RUNS,
    );
  });

  test("none without rate or distance", () => {
    expect(steadyYawTilt(0, 0.03)).toBe(0);
    expect(steadyYawTilt(7, 0)).toBe(0);
  });
});

describe("refused", () => {
  const nan = Number.NaN;
  test.each<readonly [string, () => unknown, string]>([
    [
      "free fall",
      () => apparentAttitude([0, -0, 0]),
      "f: there is no specific force: in free fall",
    ],
    ["free fall, tilt", () => apparentTilt([0, 0, 0]), "f: there is no specific force"],
    ["free fall, side", () => lowSide([0, 0, 0]), "f: there is no specific force"],
    ["force", () => apparentAttitude([nan, 0, 1]), "f.x: the component must be a finite number"],
    ["roll", () => gravityInBody({ roll: nan, pitch: 0 }), "roll: the angle must be a finite"],
    ["rate", () => steadyYawTilt(nan, 1), "rate: the rate of yaw must be a finite number"],
    ["distance", () => steadyYawTilt(1, -0.03), "must be 0 or more, but is -0.03 m."],
  ])("%s", (_, call, message) => {
    expect(call).toThrow(InputError);
    expect(call).toThrow(message);
  });
});
