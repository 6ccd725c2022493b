/**
 * A turning body followed in a frame that stands still, without the program's kinematics: rotation
 * matrices by Runge-Kutta, places by the matrix, accelerations by differences of places.
 */

import fc from "fast-check";
import type { MotionProfile } from "../../src/attitude/motion-profile.ts";
import type { Vec3 } from "../../src/model/types.ts";
import { between } from "../filter/filter-orders.ts";
import { type Matrix3, times, transposed, vector } from "./body-turns.ts";

export const G = 9.80665;
export const DEGREE = Math.PI / 180;

/** One to three segments about any axes: up to some 6 rad/s, for less than a second. */
export const anyProfile: fc.Arbitrary<MotionProfile> = fc
  .array(fc.record({ alpha: vector(8), duration: between(0.05, 0.25) }), {
    minLength: 1,
    maxLength: 3,
  })
  .map((segments) => ({ name: "any", segments }));

const UNIT: Matrix3 = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

/** Body rates at t, added up from the segments; past the end as if the last went on. */
export function ratesOf({ segments }: MotionProfile, t: number): Vec3 {
  const omega = [0, 0, 0];
  let start = 0;
  for (const [i, { alpha, duration }] of segments.entries()) {
    const lasts = i === segments.length - 1 ? Number.POSITIVE_INFINITY : duration;
    const spent = Math.min(Math.max(t - start, 0), lasts);
    for (const k of [0, 1, 2]) omega[k] += alpha[k] * spent;
    start += duration;
  }
  return [omega[0], omega[1], omega[2]];
}

/** Steps A from t over h by the rates, A' = A [omega]x: the classic Runge-Kutta step. */
export function step(A: Matrix3, rates: (t: number) => Vec3, t: number, h: number): Matrix3 {
  const slope = (B: Matrix3, at: number) => timesSkew(B, rates(at));
  const k1 = slope(A, t);
  const k2 = slope(plus(A, k1, h / 2), t + h / 2);
  const k3 = slope(plus(A, k2, h / 2), t + h / 2);
  const k4 = slope(plus(A, k3, h), t + h);
  return plus(plus(plus(plus(A, k1, h / 6), k2, h / 3), k3, h / 3), k4, h / 6);
}

/** Columns are the body axes at t; corners of the profile fall on ends of steps. */
export function bodyAt(profile: MotionProfile, t: number, longest = 2e-3): Matrix3 {
  let A = UNIT;
  let at = 0;
  for (const end of [...cornersOf(profile), t].filter((c) => c <= t)) {
    const steps = Math.ceil((end - at) / longest);
    const h = (end - at) / steps;
    for (let i = 0; i < steps; i++) A = step(A, (time) => ratesOf(profile, time), at + i * h, h);
    at = end;
  }
  return A;
}

function cornersOf({ segments }: MotionProfile): number[] {
  let end = 0;
  return segments.slice(0, -1).map(({ duration }) => {
    end += duration;
    return end;
  });
}

/**
 * Specific force at r along the body axes at t inside a segment, by fourth-order differences of the
 * place over 4 h: gravity is taken off along the body's z, as thrust carries the craft.
 */
export function forceByDifferences(profile: MotionProfile, r: Vec3, t: number, h: number): Vec3 {
  const A = bodyAt(profile, t);
  const rates = (time: number) => ratesOf(profile, time);
  const forth = step(A, rates, t, h);
  const back = step(A, rates, t, -h);
  const places = [step(back, rates, t - h, -h), back, A, forth, step(forth, rates, t + h, h)].map(
    (B) => times(B, r),
  );
  const weights = [-1, 16, -30, 16, -1];
  const a = [0, 1, 2].map((k) =>
    places.reduce((sum, p, i) => sum + (weights[i] * p[k]) / (12 * h * h), 0),
  );
  const inBody = times(transposed(A), a as unknown as Vec3);
  return [inBody[0], inBody[1], inBody[2] + G];
}

function timesSkew(A: Matrix3, [x, y, z]: Vec3): Matrix3 {
  const row = ([a, b, c]: Vec3): Vec3 => [b * z - c * y, c * x - a * z, a * y - b * x];
  return [row(A[0]), row(A[1]), row(A[2])];
}

function plus(A: Matrix3, B: Matrix3, share: number): Matrix3 {
  const row = (i: 0 | 1 | 2): Vec3 => [
    A[i][0] + share * B[i][0],
    A[i][1] + share * B[i][1],
    A[i][2] + share * B[i][2],
  ];
  return [row(0), row(1), row(2)];
}
