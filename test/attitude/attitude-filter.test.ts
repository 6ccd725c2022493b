import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type AttitudeFilter,
  FILTER_DEFAULTS,
  filteredFalseAttitude,
  filteredOf,
  filterRun,
} from "../../src/attitude/attitude-filter.ts";
import { durationOf, type MotionProfile, ratesAt } from "../../src/attitude/motion-profile.ts";
import { steadyYaw, usualMotions, yawTurn } from "../../src/attitude/motions.ts";
import { staticFalseAttitude } from "../../src/attitude/static-false-attitude.ts";
import { settledYawTilt } from "../../src/attitude/yaw-rules.ts";
import { InputError } from "../../src/errors.ts";
import type { Vec3 } from "../../src/model/types.ts";
import { between, RUNS } from "../filter/filter-orders.ts";
import { anyProfile, bodyAt, DEGREE, G } from "./body-path.ts";
import { times, transposed, vector } from "./body-turns.ts";
import { believedAttitude } from "./simulated-filter.ts";

const place = vector(0.08);
const AFT: Vec3 = [-0.03, 0, 0];
const FAR_OFF: Vec3 = [0.05, -0.03, 0.04];
/** About z only. */
const anyYaw: fc.Arbitrary<MotionProfile> = fc
  .array(fc.record({ alpha: between(-15, 15), duration: between(0.05, 0.7) }), {
    minLength: 1,
    maxLength: 3,
  })
  .map((parts) => ({
    name: "any yaw",
    segments: parts.map(({ alpha, duration }) => ({ alpha: [0, 0, alpha], duration })),
  }));
const few = { ...RUNS, numRuns: 20 };

const angles = (timeConstant: number): AttitudeFilter => ({ timeConstant, estimate: "angles" });
const vectors = (timeConstant: number): AttitudeFilter => ({ timeConstant, estimate: "vector" });

describe("a filter of angles", () => {
  test("in steady yaw takes 1 - exp(-T/tau) of the static tilt, on top of the spin-up", () => {
    const yawRate = 400 * DEGREE;
    const hold = (steadyHold: number) =>
      filteredFalseAttitude(steadyYaw({ yawRate, steadyHold }), AFT, angles(0.8)).end.pitch;
    const m = Math.atan((yawRate ** 2 * 0.03) / G);
    for (const T of [0.5, 2]) {
      // e(T) = m + (e(0) - m) exp(-T/tau), the same e(0) for both
      const share = (hold(T) - hold(0.1)) / (m - hold(0.1));
      expect(share).toBeCloseTo(-Math.expm1(-(T - 0.1) / 0.8), 12);
    }
  });

  test("is that of fine Euler steps", () => {
    fc.assert(
      fc.property(anyProfile, place, between(0.05, 3), (profile, r, tau) => {
        const seen = staticFalseAttitude(profile, r);
        fc.pre(seen.peak.tilt < 1);
        const n = 4000;
        const h = durationOf(profile) / n;
        let [roll, pitch] = [0, 0];
        for (let i = 0; i < n; i++) {
          const { omega, alpha } = ratesAt(profile, (i + 0.5) * h);
          const f = forceOf(omega, alpha, r);
          roll += (h * (Math.atan2(f[1], f[2]) - roll)) / tau;
          pitch += (h * (Math.atan2(f[0], Math.hypot(f[1], f[2])) - pitch)) / tau;
        }
        const ours = filteredFalseAttitude(profile, r, angles(tau)).end;
        expect(Math.abs(ours.roll - roll)).toBeLessThan((3 * h) / tau + 1e-6);
        expect(Math.abs(ours.pitch - pitch)).toBeLessThan((3 * h) / tau + 1e-6);
      }),
      few,
    );
  });
});

describe("a filter of a vector", () => {
  test("is a lag of the sensor's velocity in a frame that stands still, for small leans in yaw", () => {
    fc.assert(
      fc.property(anyYaw, between(-1e-3, 1e-3), between(0.05, 3), (profile, x, tau) => {
        // d = (v - its own lag)/(g tau), v = omega x r: by midpoints
        const n = 400;
        const end = durationOf(profile);
        const h = end / n;
        const r: Vec3 = [x, 1e-3, 0];
        const velocity = (t: number) => {
          const { omega } = ratesAt(profile, t);
          return times(bodyAt(profile, t, 0.02), crossed(omega, r));
        };
        let lagged = [0, 0, 0];
        for (let i = 0; i < n; i++) {
          const v = velocity((i + 0.5) * h);
          const decay = Math.exp(-h / tau);
          lagged = lagged.map((e, k) => decay * e + (1 - decay) * v[k]);
        }
        const v = velocity(end);
        const still = v.map((value, k) => (value - lagged[k]) / (G * tau)) as unknown as Vec3;
        const d = times(transposed(bodyAt(profile, end)), still);
        const { roll, pitch } = filteredFalseAttitude(profile, r, vectors(tau)).end;
        const close = 2e-3 * Math.hypot(...d) + 1e-7;
        expect(Math.abs(roll - d[1])).toBeLessThan(close);
        expect(Math.abs(pitch - d[0])).toBeLessThan(close);
      }),
      { ...few, numRuns: 6 },
    );
  });

  test("settles at the closed form, trailing behind the sensor's side", () => {
    for (const rate of [-7, -2, 0.5, 3.5, 7]) {
      const yaw = steadyYaw({ yawRate: rate, steadyHold: 40 });
      const { roll, pitch, end } = filteredFalseAttitude(yaw, [0.03, 0, 0], vectors(1.5));
      const { tilt, trailing } = settledYawTilt(rate, 0.03, 1.5);
      expect(roll[roll.length - 1]).toBe(end.roll);
      // the low side from above, anticlockwise from the nose: lean is towards (sin pitch, sin roll ...)
      const low = Math.atan2(-Math.tan(end.roll), -Math.tan(end.pitch) / Math.cos(end.roll));
      expect(low).toBeCloseTo(-Math.sign(rate) * trailing, 6);
      expect(Math.cos(end.roll) * Math.cos(end.pitch)).toBeCloseTo(Math.cos(tilt), 9);
      expect(pitch[pitch.length - 1]).toBe(end.pitch);
    }
  });

  test("a slow yaw or a quick filter reads as the sensor alone; a quick yaw far less", () => {
    const r: Vec3 = [-0.03, 0, 0];
    const quick = filteredFalseAttitude(yawTurn({ turnHold: 1 }), r, vectors(0.01));
    expect(quick.peak.tilt / quick.static.tilt).toBeCloseTo(1, 1);
    expect(quick.peak.lowSide).toBe(quick.static.lowSide);
    const usual = filteredFalseAttitude(yawTurn({ yawRate: 400 * DEGREE }), r, vectors(1));
    expect(usual.peak.tilt).toBeLessThan(0.2 * usual.static.tilt);
  });

  test("is what a whole filter believes: matrices, cross products, Euler steps of half a millisecond", () => {
    for (const profile of usualMotions({ yawRate: 300 * DEGREE, steadyHold: 1.5 })) {
      for (const r of [AFT, [0.02, -0.025, 0.01]] as const) {
        const simulated = believedAttitude(profile, r, 1.2);
        const { roll, pitch } = filteredFalseAttitude(profile, r, vectors(1.2)).end;
        expect(Math.abs(roll - simulated.roll), profile.name).toBeLessThan(3e-5);
        expect(Math.abs(pitch - simulated.pitch), profile.name).toBeLessThan(3e-5);
      }
    }
  });

  test("comes nearer with the fourth power of the step", () => {
    const tumble: MotionProfile = {
      name: "tumble",
      segments: [
        { alpha: [8, 0, -10], duration: 0.5 },
        { alpha: [-10, 6, 10], duration: 0.4 },
      ],
    };
    const end = (fineness: number) => {
      const { roll, pitch } = filteredOf(filterRun(tumble, vectors(0.3), fineness), FAR_OFF).end;
      return [roll, pitch];
    };
    const exact = end(16);
    const error = (fineness: number) =>
      Math.hypot(...end(fineness).map((value, i) => value - exact[i]));
    expect(error(1)).toBeLessThan(1e-6);
    expect(error(1) / error(2)).toBeGreaterThan(12);
    expect(error(1) / error(2)).toBeLessThan(20);
  });

  test("in yaw never passes 1 - exp(-T/tau) of the static tilt, nor about twice the velocity over g tau", () => {
    fc.assert(
      fc.property(anyYaw, place, between(0.05, 3), (profile, r, tau) => {
        const T = durationOf(profile);
        let speed = 0;
        for (let i = 0; i <= 400; i++) {
          const { omega } = ratesAt(profile, (i / 400) * T);
          speed = Math.max(speed, Math.hypot(...crossed(omega, r)));
        }
        const ours = filteredFalseAttitude(profile, r, vectors(tau));
        const share = -Math.expm1(-T / tau);
        expect(ours.peak.tilt).toBeLessThan((1 + 1e-6) * share * ours.static.tilt + 1e-12);
        expect(ours.peak.tilt).toBeLessThan(1.01 * ((2 * speed) / (G * tau)) + 1e-12);
      }),
      RUNS,
    );
  });
});

describe.each(["vector", "angles"] as const)("either kind: %s", (estimate) => {
  const filter: AttitudeFilter = { timeConstant: 0.7, estimate };

  test("believes nothing at the centre of gravity", () => {
    for (const profile of usualMotions()) {
      const { peak, end } = filteredFalseAttitude(profile, [0, 0, 0], filter);
      expect(peak).toEqual({ roll: 0, pitch: 0, tilt: 0, time: 0, lowSide: "level" });
      expect(end).toEqual({ roll: 0, pitch: 0 });
    }
  });

  test("starts level, ends at its end, and keeps the static peaks beside its own", () => {
    fc.assert(
      fc.property(anyProfile, place, (profile, r) => {
        const ours = filteredFalseAttitude(profile, r, filter);
        expect([ours.time[0], ours.roll[0], ours.pitch[0]]).toEqual([0, 0, 0]);
        expect(ours.time[ours.time.length - 1]).toBeCloseTo(durationOf(profile), 12);
        expect(ours.static).toEqual(staticFalseAttitude(profile, r).peak);
        expect(ours.peak.tilt).toBeGreaterThanOrEqual(tiltOf(ours.end) - 1e-12);
      }),
      few,
    );
  });

  test("mirrored left for right, roll changes sign and pitch stays", () => {
    fc.assert(
      fc.property(anyProfile, place, (profile, r) => {
        const mirror: MotionProfile = {
          name: "mirrored",
          segments: profile.segments.map(({ alpha: [x, y, z], duration }) => ({
            alpha: [-x, y, -z],
            duration,
          })),
        };
        const a = filteredFalseAttitude(profile, r, filter);
        const b = filteredFalseAttitude(mirror, [r[0], -r[1], r[2]], filter);
        expect(b.end.roll).toBeCloseTo(-a.end.roll, 12);
        expect(b.end.pitch).toBeCloseTo(a.end.pitch, 12);
        expect(b.peak.tilt).toBeCloseTo(a.peak.tilt, 12);
      }),
      few,
    );
  });
});

test("in quick yaw the vector's low side is the one that the sensor moves away from; the angles' its own", () => {
  const of = (rate: number, estimate: "vector" | "angles") =>
    filteredFalseAttitude(yawTurn({ yawRate: rate }), [0.03, 0, 0], { timeConstant: 2, estimate })
      .peak.lowSide;
  expect([of(7, "vector"), of(-7, "vector")]).toEqual(["right", "left"]);
  expect([of(7, "angles"), of(-7, "angles")]).toEqual(["front", "front"]);
});

test("a vector of one second is the usual filter", () => {
  const usual = filteredFalseAttitude(yawTurn(), AFT);
  expect(usual).toEqual(filteredFalseAttitude(yawTurn(), AFT, vectors(1)));
  expect(FILTER_DEFAULTS).toEqual(vectors(1));
});

describe("refused", () => {
  const other = { timeConstant: 1, estimate: "toString" } as unknown as AttitudeFilter;
  test.each<readonly [string, AttitudeFilter, Vec3, string]>([
    [
      "time constant",
      vectors(0),
      AFT,
      "timeConstant: the time constant must be 0.01 s or more, but is 0 s",
    ],
    ["endless", angles(Number.POSITIVE_INFINITY), AFT, "timeConstant: the time constant must be a"],
    ["kind", other, AFT, 'estimate: the kind of estimate must be "vector" or "angles", but is "to'],
    ["place", vectors(1), [0, 0, Number.NaN], "r.z: the component must be a finite number"],
  ])("%s", (_, filter, r, message) => {
    const call = () => filteredFalseAttitude(yawTurn(), r, filter);
    expect(call).toThrow(InputError);
    expect(call).toThrow(message);
  });
});

/** Angle that roll and pitch make with upright. */
function tiltOf({ roll, pitch }: { readonly roll: number; readonly pitch: number }): number {
  return Math.acos(Math.min(1, Math.cos(roll) * Math.cos(pitch)));
}

function crossed(a: Vec3, b: Vec3): Vec3 {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

function forceOf(omega: Vec3, alpha: Vec3, r: Vec3): Vec3 {
  const [t, c] = [crossed(alpha, r), crossed(omega, crossed(omega, r))];
  return [t[0] + c[0], t[1] + c[1], G + t[2] + c[2]];
}
