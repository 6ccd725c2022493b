import { describe, expect, test } from "vitest";
import { filteredFalseAttitude } from "../../src/attitude/attitude-filter.ts";
import { leverArm, leverArms } from "../../src/attitude/lever-arm.ts";
import {
  leverArmWords,
  motionWords,
  placeWords,
  RATE_FLIGHT,
} from "../../src/attitude/lever-arm-words.ts";
import { pitchSnap, rollSnap, usualMotions, yawTurn } from "../../src/attitude/motions.ts";
import { opposite, SIDE_WORDS, type Side, sideTowards } from "../../src/attitude/sides.ts";
import { InputError } from "../../src/errors.ts";
import type { Vec3 } from "../../src/model/types.ts";
import { DEGREE, G } from "./body-path.ts";

const FAST = { yawRate: 400 * DEGREE };

describe("the record of a place", () => {
  const arm = leverArm([-0.03, 0, 0.012], FAST);

  test("30 mm aft at 400 deg/s: 8.480 degrees nose up, the tail lifted, forwards with 0.149 g", () => {
    expect(arm.distance).toBe(0.03);
    expect(arm.side).toBe("rear");
    expect(arm.reading.pitch / DEGREE).toBeCloseTo(8.48028232, 7);
    expect(arm.reading.roll).toBeCloseTo(0, 12);
    expect(arm.reading.tilt / DEGREE).toBeCloseTo(8.48028232, 7);
    expect(arm.reading.lowSide).toBe("rear");
    // thrust tips forwards when the tail comes up
    expect(arm.selfLevel).toEqual({
      lifts: "rear",
      driftsTo: "front",
      drift: expect.closeTo(1.462163615, 8),
    });
    expect(arm.radius * 1e3).toBeCloseTo(3.51210447, 7);
    expect(arm.within).toBe(false);
  });

  test("behind the filter each motion has what the filter believes of it", () => {
    const motions = usualMotions(FAST);
    expect(arm.motions.map(({ motion }) => motion)).toEqual(motions.map(({ name }) => name));
    for (const [i, effect] of arm.motions.entries()) {
      const alone = filteredFalseAttitude(motions[i], arm.lever, arm.filter);
      expect(effect.believed).toEqual(alone.peak);
      expect(effect.static).toEqual(alone.static);
      expect(effect.end).toEqual(alone.end);
      expect(effect.believed.tilt).toBeLessThanOrEqual(arm.worst.believed.tilt * 1.001);
    }
  });

  test("of many places is the record of each", () => {
    const places: readonly Vec3[] = [
      [0.01, 0, 0],
      [-0.03, 0, 0.012],
    ];
    expect(leverArms(places, FAST)[1]).toEqual(arm);
    expect(leverArms([], FAST)).toEqual([]);
  });

  test("of a yaw the other way is mirrored, with the same reading", () => {
    const back = leverArm([-0.03, 0, 0.012], { yawRate: -400 * DEGREE });
    expect(back.reading).toEqual(arm.reading);
    expect(back.selfLevel).toEqual(arm.selfLevel);
    expect(back.settled).toEqual(arm.settled);
    const [, ours] = arm.motions;
    const [, theirs] = back.motions;
    expect(theirs.believed.tilt).toBeCloseTo(ours.believed.tilt, 12);
    expect([ours.believed.lowSide, theirs.believed.lowSide]).toEqual(["left", "right"]);
  });

  test("within the radius of its error, and on it, but not beyond", () => {
    const { radius } = leverArm([0, 0, 0]);
    expect(radius * 1e3).toBeCloseTo(14.0484179, 6);
    const at = (x: number) => leverArm([x, 0, 0], { motions: [yawTurn()] }).within;
    expect([at(0), at(radius), at(1.0001 * radius)]).toEqual([true, true, false]);
  });
});

describe("direction, in words", () => {
  test.each<readonly [Side, number, number, string, string, string, string]>([
    ["front", 31, 0, "ahead of", "nose down", "the nose", "backwards"],
    ["rear", -31, 0, "behind", "nose up", "the tail", "forwards"],
    ["left", 0, 31, "left of", "left side down", "the left side", "to the right"],
    ["right", 0, -31, "right of", "right side down", "the right side", "to the left"],
    [
      "front left",
      22,
      22,
      "ahead and left of",
      "nose and left side down",
      "the front left corner",
      "backwards and to the right",
    ],
    [
      "front right",
      22,
      -22,
      "ahead and right of",
      "nose and right side down",
      "the front right corner",
      "backwards and to the left",
    ],
    [
      "rear left",
      -22,
      22,
      "behind and left of",
      "nose up and left side down",
      "the rear left corner",
      "forwards and to the right",
    ],
    [
      "rear right",
      -22,
      -22,
      "behind and right of",
      "nose up and right side down",
      "the rear right corner",
      "forwards and to the left",
    ],
  ])("%s", (side, x, y, place, low, part, way) => {
    for (const yawRate of [200 * DEGREE, -200 * DEGREE]) {
      const arm = leverArm([x * 1e-3, y * 1e-3, 0], { yawRate, motions: [yawTurn()] });
      expect(arm.side).toBe(side);
      expect(leverArmWords(arm)[0]).toBe(
        `31 mm ${place} the centre of gravity: at 200 deg/s of steady yaw, either way round, the accelerometer reads 2.2 degrees ${low}; self-level flight that took it at its word would lift ${part} and drift ${way} with 0.039 g.`,
      );
      // the signs of the angles say the same: nose up and right side down are positive
      const { roll, pitch } = arm.reading;
      expect(Math.abs(pitch) < 1e-9 ? 0 : Math.sign(pitch)).toBe(0 - Math.sign(x));
      expect(Math.abs(roll) < 1e-9 ? 0 : Math.sign(roll)).toBe(0 - Math.sign(y));
    }
  });

  test("sides come in eighths, each with one opposite", () => {
    for (let i = 0; i < 64; i++) {
      const angle = (i / 64) * 2 * Math.PI + 0.01;
      const side = sideTowards(Math.cos(angle), Math.sin(angle));
      expect(opposite(side)).toBe(sideTowards(-Math.cos(angle), -Math.sin(angle)));
      expect(opposite(opposite(side))).toBe(side);
    }
    expect(Object.keys(SIDE_WORDS).length).toBe(8);
  });
});

describe("sentences", () => {
  test("behind a filter: the most that it believes, the motion, and rate flight", () => {
    const arm = leverArm([-0.03, 0, 0], { ...FAST, motions: [yawTurn(FAST)] });
    expect(leverArmWords(arm)[1]).toBe(
      "Of the motions tried, an attitude filter of 1 s believes at most 1.3 degrees left side down, in a yaw turn to the left of 2.4 s at 400 deg/s; in rate flight it has no effect.",
    );
    const filter = { timeConstant: 0.5, estimate: "angles" } as const;
    expect(leverArmWords(leverArm([-0.03, 0, 0], { ...FAST, filter }))[1]).toBe(
      "Of the motions tried, an attitude filter of 0.5 s that keeps roll and pitch as two angles believes at most 8.5 degrees nose up, in steady yaw to the left at 400 deg/s for 10.2 s; in rate flight it has no effect.",
    );
    expect(RATE_FLIGHT).toMatch(/^In rate flight it has no effect: /);
  });

  test("at the centre, near it, and without yaw", () => {
    const motions = [yawTurn()];
    expect(leverArmWords(leverArm([0, 0, 0.02], { motions }))).toEqual([
      "At the centre of gravity in the plan: at 200 deg/s of steady yaw the accelerometer reads less than 0.05 degrees of false tilt.",
      "Of the motions tried, an attitude filter of 1 s believes less than 0.05 degrees; in rate flight it has no effect.",
    ]);
    expect(leverArmWords(leverArm([0.0004, 0, 0], { motions }))[0]).toBe(
      "0.4 mm ahead of the centre of gravity: at 200 deg/s of steady yaw the accelerometer reads less than 0.05 degrees of false tilt.",
    );
    expect(leverArmWords(leverArm([0, 0.05, 0], { motions, yawRate: 0 }))[0]).toBe(
      "50 mm left of the centre of gravity: without yaw the accelerometer reads no false tilt.",
    );
    expect(placeWords({ side: "rear left", distance: 0.0421 })).toBe(
      "42 mm behind and left of the centre of gravity",
    );
  });

  test("height shows in the snaps: above, the first reading leans against the bank", () => {
    const motions = [rollSnap(), pitchSnap(), yawTurn()];
    const words = (z: number) => leverArm([0, 0, z], { motions }).motions.map(motionWords);
    // 500 deg/s in 0.1 s is 87.3 rad/s^2; times 20 mm, over g: atan(0.178) = 10.1 degrees
    expect(Math.atan((500 * DEGREE * 0.02) / 0.1 / G) / DEGREE).toBeCloseTo(10.09, 2);
    const [roll, pitch, yaw] = words(0.02);
    expect(roll).toMatch(
      /^in a roll snap to the right with a peak of 500 deg\/s the accelerometer reads up to \d+ degrees left side down; the filter believes at most 0.\d+ degrees left side down$/,
    );
    expect(pitch).toMatch(/ reads up to \d+ degrees nose up; /);
    expect(yaw).toBe(
      "in a yaw turn to the left of 2.4 s at 200 deg/s the accelerometer reads no false tilt",
    );
    expect(words(-0.02)[0]).toMatch(/ reads up to \d+ degrees right side down; /);
    expect(words(-0.02)[1]).toMatch(/ reads up to \d+ degrees nose down; /);
  });
});

describe("refused", () => {
  const r: Vec3 = [0.01, 0, 0];
  test.each<readonly [string, () => unknown, string]>([
    ["place", () => leverArm([0.01, Number.NaN, 0]), "r.y: the component must be a finite number"],
    [
      "rate",
      () => leverArm(r, { yawRate: Number.NaN }),
      "yawRate: the rate of yaw must be a finite",
    ],
    ["error", () => leverArm(r, { error: 0 }), "error: the error must be above 0, but is 0 rad."],
    [
      "no motions",
      () => leverArm(r, { motions: [] }),
      "motions: there are none; give at least one.",
    ],
    [
      "filter",
      () => leverArm(r, { filter: { timeConstant: -1, estimate: "vector" } }),
      "timeConstant: the time constant must be 0.01 s or more, but is -1 s",
    ],
  ])("%s", (_, call, message) => {
    expect(call).toThrow(InputError);
    expect(call).toThrow(message);
  });
});
