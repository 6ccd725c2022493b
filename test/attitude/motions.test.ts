import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { durationOf, type MotionProfile, ratesAt } from "../../src/attitude/motion-profile.ts";
import {
  pitchSnap,
  rollSnap,
  steadyYaw,
  usualMotions,
  yawReversal,
  yawTurn,
} from "../../src/attitude/motions.ts";
import { sampleMotion } from "../../src/attitude/sampled-motion.ts";
import { InputError } from "../../src/errors.ts";
import { between, RUNS } from "../filter/filter-orders.ts";
import { anyProfile, bodyAt, DEGREE, ratesOf } from "./body-path.ts";
import { transposed } from "./body-turns.ts";

const two: MotionProfile = {
  name: "two",
  segments: [
    { alpha: [1, 0, -2], duration: 0.5 },
    { alpha: [0, 4, 2], duration: 0.25 },
  ],
};

describe("rates of a profile", () => {
  test("by hand: before, in, between, at the end of and after the segments", () => {
    expect(durationOf(two)).toBe(0.75);
    expect(ratesAt(two, -1)).toEqual({ omega: [0, 0, 0], alpha: [0, 0, 0] });
    expect(ratesAt(two, 0)).toEqual({ omega: [0, 0, 0], alpha: [1, 0, -2] });
    expect(ratesAt(two, 0.25)).toEqual({ omega: [0.25, 0, -0.5], alpha: [1, 0, -2] });
    expect(ratesAt(two, 0.5)).toEqual({ omega: [0.5, 0, -1], alpha: [0, 4, 2] });
    expect(ratesAt(two, 0.75)).toEqual({ omega: [0.5, 1, -0.5], alpha: [0, 4, 2] });
    expect(ratesAt(two, 9)).toEqual({ omega: [0.5, 1, -0.5], alpha: [0, 0, 0] });
  });

  test("omega is continuous and alpha its derivative", () => {
    fc.assert(
      fc.property(anyProfile, between(0.001, 0.999), (profile, share) => {
        const t = share * durationOf(profile);
        const h = 1e-7;
        const [before, after] = [ratesAt(profile, t - h), ratesAt(profile, t + h)];
        for (const k of [0, 1, 2]) {
          expect(ratesAt(profile, t).omega[k]).toBeCloseTo(ratesOf(profile, t)[k], 12);
          const slope = (after.omega[k] - before.omega[k]) / (2 * h);
          const [a, b] = [before.alpha[k], after.alpha[k]];
          expect(slope).toBeGreaterThan(Math.min(a, b) - 1e-6);
          expect(slope).toBeLessThan(Math.max(a, b) + 1e-6);
        }
      }),
      RUNS,
    );
  });
});

describe("the body axes of a sampled motion", () => {
  const matrices = (profile: MotionProfile, fineness = 1) =>
    sampleMotion(profile, Number.POSITIVE_INFINITY, fineness).flatMap(({ instants }) => instants);

  test("are those of a body followed by Runge-Kutta, any axes", () => {
    fc.assert(
      fc.property(anyProfile, between(0, 1), (profile, share) => {
        const instants = matrices(profile);
        const { time, axes } = instants[Math.floor(share * (instants.length - 1))];
        const expected = transposed(bodyAt(profile, time)).flat();
        expected.forEach((value, i) => {
          expect(Math.abs(axes[i] - value)).toBeLessThan(1e-8);
        });
      }),
      { ...RUNS, numRuns: 25 },
    );
  });

  test("come nearer with the fourth power of the step", () => {
    const tumble: MotionProfile = {
      name: "tumble",
      segments: [
        { alpha: [40, 0, 0], duration: 0.2 },
        { alpha: [-10, 30, 50], duration: 0.2 },
      ],
    };
    const end = (fineness: number) => matrices(tumble, fineness).at(-1)?.axes ?? [];
    const exact = transposed(bodyAt(tumble, 0.4, 1e-4)).flat();
    const error = (fineness: number) =>
      Math.max(...exact.map((value, i) => Math.abs(end(fineness)[i] - value)));
    expect(error(1)).toBeLessThan(1e-6);
    expect(error(1) / error(2)).toBeGreaterThan(14);
    expect(error(1) / error(2)).toBeLessThan(18);
  });
});

describe("motions", () => {
  const end = (profile: MotionProfile) => ratesAt(profile, durationOf(profile)).omega;
  /** Angle turned about an axis, by adding up the rates. */
  const angle = (profile: MotionProfile, k: 0 | 1 | 2) => {
    const n = 30_000;
    const h = durationOf(profile) / n;
    let sum = 0;
    for (let i = 0; i < n; i++) sum += ratesOf(profile, (i + 0.5) * h)[k] * h;
    return sum / DEGREE;
  };

  test("a turn, a reversal and the snaps end at rest, steady yaw at its rate", () => {
    for (const profile of usualMotions().slice(1)) {
      for (const rate of end(profile)) expect(rate, profile.name).toBeCloseTo(0, 12);
    }
    const rate = end(steadyYaw({ yawRate: -3 }));
    expect(rate).toEqual([0, 0, expect.closeTo(-3, 12)]);
  });

  test("a turn reaches its rate: 200 deg/s for 2 s and two ramps of 0.2 s make 440 degrees to the left", () => {
    expect(ratesAt(yawTurn(), 1).omega[2]).toBeCloseTo(200 * DEGREE, 12);
    expect(angle(yawTurn(), 2)).toBeCloseTo(440, 6);
    expect(angle(yawTurn({ yawRate: -200 * DEGREE, turnHold: 1 }), 2)).toBeCloseTo(-240, 6);
  });

  test("a reversal reaches its rate both ways and ends on its first heading", () => {
    expect(ratesAt(yawReversal(), 0.5).omega[2]).toBeCloseTo(200 * DEGREE, 12);
    expect(ratesAt(yawReversal(), 1.3).omega[2]).toBeCloseTo(-200 * DEGREE, 12);
    expect(angle(yawReversal(), 2)).toBeCloseTo(0, 6);
  });

  test("snaps of 500 deg/s tip by 50 degrees: right side down, nose down", () => {
    expect(angle(rollSnap(), 0)).toBeCloseTo(50, 6);
    // positive about y (left) takes the nose down
    expect(angle(pitchSnap(), 1)).toBeCloseTo(50, 6);
    expect(angle(rollSnap({ snapRate: -1000 * DEGREE, snapHalf: 0.05 }), 0)).toBeCloseTo(-50, 6);
  });

  test("say what they are", () => {
    expect(usualMotions().map(({ name }) => name)).toEqual([
      "steady yaw to the left at 200 deg/s for 10.2 s",
      "a yaw turn to the left of 2.4 s at 200 deg/s",
      "a yaw reversal, first to the left, at 200 deg/s",
      "a roll snap to the right with a peak of 500 deg/s",
      "a pitch snap nose down with a peak of 500 deg/s",
    ]);
    const other = { yawRate: -400 * DEGREE, snapRate: -650.5 * DEGREE };
    expect(usualMotions(other).map(({ name }) => name)).toEqual([
      "steady yaw to the right at 400 deg/s for 10.2 s",
      "a yaw turn to the right of 2.4 s at 400 deg/s",
      "a yaw reversal, first to the right, at 400 deg/s",
      "a roll snap to the left with a peak of 650.5 deg/s",
      "a pitch snap nose up with a peak of 650.5 deg/s",
    ]);
  });
});

describe("refused", () => {
  const bad = (alpha: number, duration: number): MotionProfile => ({
    name: "bad",
    segments: [
      { alpha: [0, 0, 1], duration: 1 },
      { alpha: [0, alpha, 0], duration },
    ],
  });
  test.each<readonly [string, () => unknown, string]>([
    ["no segments", () => ratesAt({ name: "", segments: [] }, 0), "segments: the motion has no"],
    [
      "acceleration",
      () => sampleMotion(bad(Number.NaN, 1)),
      "segments.1.alpha.y: the angular acceleration must be a finite number, but is NaN rad/s^2.",
    ],
    [
      "duration",
      () => sampleMotion(bad(1, 0)),
      "segments.1.duration: the duration must be above 0, but is 0 s.",
    ],
    ["time", () => ratesAt(two, Number.NaN), "t: the time must be a finite number"],
    [
      "spinning for hours",
      () => sampleMotion(bad(0, 7200 * 10)),
      'segments: the motion "bad" of 72001 s would take more than 100000 steps',
    ],
    ["rates past all numbers", () => sampleMotion(bad(1e300, 1e300)), "would take more than"],
    ["rate", () => usualMotions({ yawRate: Number.NaN }), "yawRate: the rate of yaw must be"],
    ["snap", () => rollSnap({ snapHalf: 0 }), "snapHalf: the time must be above 0, but is 0 s."],
  ])("%s", (_, call, message) => {
    expect(call).toThrow(InputError);
    expect(call).toThrow(message);
  });
});
