import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { durationOf, type MotionProfile } from "../../src/attitude/motion-profile.ts";
import { pitchSnap, rollSnap, steadyYaw, yawTurn } from "../../src/attitude/motions.ts";
import { staticFalseAttitude } from "../../src/attitude/static-false-attitude.ts";
import { InputError } from "../../src/errors.ts";
import type { Vec3 } from "../../src/model/types.ts";
import { between, RUNS } from "../filter/filter-orders.ts";
import { anyProfile, DEGREE, forceByDifferences, G } from "./body-path.ts";
import { vector } from "./body-turns.ts";

const place = vector(0.08);

/** The reading of a history nearest to a time. */
function at(profile: MotionProfile, r: Vec3, t: number) {
  const { time, roll, pitch } = staticFalseAttitude(profile, r);
  const i = time.findIndex((v) => v >= t - 1e-12);
  return { time: time[i], roll: roll[i], pitch: pitch[i] };
}

/** Parts turned or mirrored: alpha and r by functions of their own. */
function mapped(profile: MotionProfile, turn: (alpha: Vec3) => Vec3): MotionProfile {
  const segments = profile.segments.map((s) => ({ ...s, alpha: turn(s.alpha) }));
  return { name: "mapped", segments };
}

describe("what the sensor alone seems to see", () => {
  test("is the second derivative of its path in a frame that stands still, and the carrying thrust", () => {
    fc.assert(
      fc.property(anyProfile, place, between(0.1, 0.9), (profile, r, share) => {
        const { segments } = profile;
        const before = durationOf({ name: "", segments: segments.slice(0, -1) });
        const last = segments[segments.length - 1].duration;
        const seen = at(profile, r, before + share * last);
        fc.pre(seen.time < before + 0.95 * last);
        const [x, y, z] = forceByDifferences(profile, r, seen.time, 1e-3);
        fc.pre(z > 1);
        expect(seen.roll).toBeCloseTo(Math.atan2(y, z), 6);
        expect(seen.pitch).toBeCloseTo(Math.atan2(x, Math.hypot(y, z)), 6);
      }),
      { ...RUNS, numRuns: 40 },
    );
  });

  test("nothing at the centre of gravity, in any motion", () => {
    fc.assert(
      fc.property(anyProfile, (profile) => {
        const { roll, pitch, peak } = staticFalseAttitude(profile, [0, 0, 0]);
        expect(Math.max(...roll.map(Math.abs), ...pitch.map(Math.abs))).toBe(0);
        expect(peak).toEqual({ roll: 0, pitch: 0, tilt: 0, time: 0, lowSide: "level" });
      }),
      RUNS,
    );
  });

  test("begins and ends with the motion, and its peaks are those of its history", () => {
    fc.assert(
      fc.property(anyProfile, place, (profile, r) => {
        const { time, roll, pitch, peak } = staticFalseAttitude(profile, r);
        expect(time[0]).toBe(0);
        expect(time[time.length - 1]).toBeCloseTo(durationOf(profile), 12);
        expect([roll.length, pitch.length]).toEqual([time.length, time.length]);
        expect(Math.abs(peak.roll)).toBeCloseTo(Math.max(...roll.map(Math.abs)), 8);
        expect(Math.abs(peak.pitch)).toBeCloseTo(Math.max(...pitch.map(Math.abs)), 8);
        const i = time.indexOf(peak.time);
        expect(Math.cos(peak.tilt)).toBeLessThanOrEqual(Math.cos(roll[i]) + 1e-12);
      }),
      RUNS,
    );
  });
});

describe("steady yaw", () => {
  const end = (r: Vec3, degrees: number) => {
    const { roll, pitch } = staticFalseAttitude(steadyYaw({ yawRate: degrees * DEGREE }), r);
    return [roll[roll.length - 1] / DEGREE, pitch[pitch.length - 1] / DEGREE];
  };

  // vector formula in 30-digit arithmetic, as in the verification cases
  test.each<readonly [Vec3, number, number, number]>([
    [[-0.03, 0, 0], 400, 0, 8.48028232],
    [[-0.03, 0, 0], -400, 0, 8.48028232],
    [[0.03, 0, 0], 400, 0, -8.48028232],
    [[0, -0.03, 0], 400, 8.48028232, 0],
    [[0, 0.03, 0.02], -400, -8.48028232, 0],
    [[-0.01, 0, -0.01], 400, 0, 2.84524375],
    [[-0.005, 0, 0], 200, 0, 0.35594353],
    [[-0.03, 0, 0], 800, 0, 30.81171414],
  ])("%j m at %d deg/s: roll %d, pitch %d degrees", (r, degrees, roll, pitch) => {
    const [ours, theirs] = end(r, degrees);
    expect(ours).toBeCloseTo(roll, 7);
    expect(theirs).toBeCloseTo(pitch, 7);
  });

  test("spinning up, the sensor leans into its path: ahead and turning left, the right side looks low first", () => {
    const { roll, peak } = staticFalseAttitude(yawTurn(), [0.03, 0, 0]);
    // r alpha/g = 0.03 (200 deg/s)/(0.2 s)/g
    expect(Math.tan(roll[0])).toBeCloseTo((0.03 * 200 * DEGREE) / 0.2 / G, 12);
    expect(peak.lowSide).toBe("front right");
    expect(peak.time).toBeCloseTo(0.2, 12);
    const back = staticFalseAttitude(yawTurn({ yawRate: -200 * DEGREE }), [0.03, 0, 0]);
    expect(back.roll[0]).toBe(-roll[0]);
    expect(back.peak.lowSide).toBe("front left");
  });
});

describe("height", () => {
  test("does not count in yaw", () => {
    const flat = staticFalseAttitude(yawTurn(), [0.02, -0.01, 0]);
    expect(staticFalseAttitude(yawTurn(), [0.02, -0.01, 0.05])).toEqual(flat);
  });

  // 20 mm below, 50 rad/s^2: 5.82241827 degrees in the sense of the acceleration (30-digit arithmetic)
  test.each<readonly [string, number, number]>([
    ["below", -0.02, 5.82241827],
    ["above", 0.02, -5.82241827],
  ])("%s, a snap's first reading leans with it or against it", (_, z, degrees) => {
    const options = { snapRate: 5, snapHalf: 0.1 };
    const roll = staticFalseAttitude(rollSnap(options), [0, 0, z]);
    expect(roll.roll[0] / DEGREE).toBeCloseTo(degrees, 7);
    // a positive snap takes the nose down, pitch counts nose up
    const pitch = staticFalseAttitude(pitchSnap(options), [0, 0, z]);
    expect(pitch.pitch[0] / DEGREE).toBeCloseTo(-degrees, 7);
  });
});

describe("symmetry", () => {
  const history = (profile: MotionProfile, r: Vec3) => {
    const { roll, pitch } = staticFalseAttitude(profile, r);
    return { roll: [...roll], pitch: [...pitch] };
  };
  const minus = (values: readonly number[]) => values.map((v) => 0 - v);
  const near = (ours: readonly number[], expected: readonly number[]) => {
    ours.forEach((value, i) => {
      expect(Math.abs(value - expected[i])).toBeLessThan(1e-12);
    });
  };

  test("mirrored left for right: roll changes sign, pitch stays", () => {
    fc.assert(
      fc.property(anyProfile, place, (profile, r) => {
        // rotations mirror as axial vectors
        const mirror = mapped(profile, ([x, y, z]) => [-x, y, -z]);
        const [a, b] = [history(profile, r), history(mirror, [r[0], -r[1], r[2]])];
        near(b.roll, minus(a.roll));
        near(b.pitch, a.pitch);
      }),
      RUNS,
    );
  });

  test("turned half round: both change sign", () => {
    fc.assert(
      fc.property(anyProfile, place, (profile, r) => {
        const turned = mapped(profile, ([x, y, z]) => [-x, -y, z]);
        const [a, b] = [history(profile, r), history(turned, [-r[0], -r[1], r[2]])];
        fc.pre(a.roll.every((v) => Math.abs(v) < 1.5));
        near(b.roll, minus(a.roll));
        near(b.pitch, minus(a.pitch));
      }),
      RUNS,
    );
  });
});

test("a place that is no number is refused", () => {
  const call = () => staticFalseAttitude(yawTurn(), [0, Number.NaN, 0]);
  expect(call).toThrow(InputError);
  expect(call).toThrow("r.y: the component must be a finite number, but is NaN.");
});
