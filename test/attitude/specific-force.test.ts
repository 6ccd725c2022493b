import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  accelerationAt,
  type RigidMotion,
  specificForce,
} from "../../src/attitude/specific-force.ts";
import { InputError } from "../../src/errors.ts";
import type { Vec3 } from "../../src/model/types.ts";
import { between, RUNS } from "../filter/filter-orders.ts";
import { dot, times, turn, vector } from "./body-turns.ts";

const STILL: RigidMotion = { acceleration: [0, 0, 0], omega: [0, 0, 0], alpha: [0, 0, 0] };
const DOWN: Vec3 = [0, 0, -9.80665];

const motion = fc.record({ acceleration: vector(5), omega: vector(15), alpha: vector(100) });
const place = vector(0.1);

describe("acceleration of a point", () => {
  test("is the second derivative of its path", () => {
    // R(t) = turn(omega t + alpha t^2/2) has R'' = [alpha]x + [omega]x^2 at t = 0
    fc.assert(
      fc.property(motion, place, ({ omega, alpha }, r) => {
        const t = 1e-4;
        const at = (time: number) => {
          const angle = omega.map((w, i) => w * time + (alpha[i] * time * time) / 2);
          return times(turn(angle as unknown as Vec3), r);
        };
        const [before, now, after] = [at(-t), at(0), at(t)];
        const ours = accelerationAt({ ...STILL, omega, alpha }, r);
        ours.forEach((value, i) => {
          const measured = (after[i] - 2 * now[i] + before[i]) / (t * t);
          expect(Math.abs(value - measured)).toBeLessThan(1e-4);
        });
      }),
      RUNS,
    );
  });

  test("changes over the body with trace -2 omega^2", () => {
    fc.assert(
      fc.property(motion, (m) => {
        const unit: readonly Vec3[] = [
          [1, 0, 0],
          [0, 1, 0],
          [0, 0, 1],
        ];
        const trace = unit.reduce(
          (sum, r, i) => sum + accelerationAt(m, r)[i] - m.acceleration[i],
          0,
        );
        expect(trace).toBeCloseTo(-2 * dot(m.omega, m.omega), 9);
      }),
      RUNS,
    );
  });

  test("is that of the reference point on the axis of a steady rotation", () => {
    fc.assert(
      fc.property(motion, between(-0.01, 0.01), ({ acceleration, omega }, share) => {
        const r: Vec3 = [share * omega[0], share * omega[1], share * omega[2]];
        const ours = accelerationAt({ acceleration, omega, alpha: [0, 0, 0] }, r);
        ours.forEach((value, i) => {
          expect(value).toBeCloseTo(acceleration[i], 12);
        });
      }),
      RUNS,
    );
  });

  test("is the same whichever way round, and points to the axis", () => {
    fc.assert(
      fc.property(motion, place, ({ omega }, r) => {
        fc.pre(dot(omega, omega) > 1e-6);
        const back: Vec3 = [-omega[0], -omega[1], -omega[2]];
        const a = accelerationAt({ ...STILL, omega }, r);
        expect(accelerationAt({ ...STILL, omega: back }, r)).toEqual(a);
        // normal to the axis, and inwards: a . r = -omega^2 (distance)^2
        const distanceSquared = dot(r, r) - dot(omega, r) ** 2 / dot(omega, omega);
        expect(dot(a, omega)).toBeCloseTo(0, 9);
        expect(dot(a, r)).toBeCloseTo(-dot(omega, omega) * distanceSquared, 9);
      }),
      RUNS,
    );
  });

  test("by angular acceleration, by hand: nose swinging left carries the tail to the right", () => {
    const left = accelerationAt({ ...STILL, alpha: [0, 0, 100] }, [-0.03, 0, 0]);
    expect(left).toEqual([0, -3, 0]);
    // nose going down (about +y) lifts the tail
    const down = accelerationAt({ ...STILL, alpha: [0, 100, 0] }, [-0.03, 0, 0]);
    expect(down.map((v) => v + 0)).toEqual([0, 0, 3]);
  });
});

describe("specific force", () => {
  test("at rest is the support that carries the sensor; in free fall there is none", () => {
    expect(specificForce(STILL, [0.02, -0.01, 0.005], DOWN)).toEqual([0, 0, 9.80665]);
    const falling = { ...STILL, acceleration: DOWN };
    expect(specificForce(falling, [0.02, -0.01, 0.005], DOWN)).toEqual([0, 0, 0]);
  });

  test("is acceleration less gravity", () => {
    fc.assert(
      fc.property(motion, place, vector(10), (m, r, gravity) => {
        const a = accelerationAt(m, r);
        specificForce(m, r, gravity).forEach((value, i) => {
          expect(value).toBe(a[i] - gravity[i]);
        });
      }),
      RUNS,
    );
  });
});

describe("refused, with vector and axis", () => {
  test.each<readonly [string, () => unknown, string]>([
    [
      "place",
      () => accelerationAt(STILL, [0, Number.NaN, 0]),
      "r.y: the component must be a finite number, but is NaN.",
    ],
    [
      "motion",
      () =>
        accelerationAt({ ...STILL, omega: [Number.POSITIVE_INFINITY, 0, Number.NaN] }, [0, 0, 0]),
      "omega.x: the component must be a finite number, but is Infinity.\nomega.z: the component must be a finite number, but is NaN.",
    ],
    [
      "gravity",
      () => specificForce(STILL, [0, 0, 0], [0, 0, Number.NEGATIVE_INFINITY]),
      "gravity.z: the component must be a finite number, but is -Infinity.",
    ],
  ])("%s", (_, call, message) => {
    expect(call).toThrow(InputError);
    expect(call).toThrow(message);
  });
});
