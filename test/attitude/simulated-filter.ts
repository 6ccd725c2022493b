/**
 * A whole attitude filter in time: rotation matrices for the craft and for the estimate, the gyro, the
 * accelerometer with its reading normalised, and a correction by the cross product of what is read and
 * what is believed. For a craft that flies a given motion, and for one that obeys the estimate.
 */

import { durationOf, type MotionProfile } from "../../src/attitude/motion-profile.ts";
import type { Vec3 } from "../../src/model/types.ts";
import { G, ratesOf } from "./body-path.ts";
import { type Matrix3, times, transposed, turn } from "./body-turns.ts";

const UP: Vec3 = [0, 0, 1];
const UNIT: Matrix3 = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

/**
 * Roll and pitch (rad) at the end of the motion that a sensor at r adds to the estimate: against the
 * same filter fed from the centre of gravity, where the sensor reads (0, 0, g).
 */
export function believedAttitude(
  profile: MotionProfile,
  r: Vec3,
  tau: number,
): { readonly roll: number; readonly pitch: number } {
  const end = durationOf(profile);
  const n = Math.round(end / 5e-4);
  const h = end / n;
  const fly = (from: Vec3) => {
    let estimate = UNIT;
    for (let i = 0; i < n; i++) {
      const [now, then] = [ratesOf(profile, i * h), ratesOf(profile, (i + 1) * h)];
      const omega = ratesOf(profile, (i + 0.5) * h);
      const alpha = [0, 1, 2].map((k) => (then[k] - now[k]) / h) as unknown as Vec3;
      estimate = corrected(estimate, omega, reading(omega, alpha, from), tau, h);
    }
    const [x, y, z] = times(transposed(estimate), UP);
    return { roll: Math.atan2(y, z), pitch: Math.atan2(x, Math.hypot(y, z)) };
  };
  const [off, centre] = [fly(r), fly([0, 0, 0])];
  return { roll: off.roll - centre.roll, pitch: off.pitch - centre.pitch };
}

/** True tilt over time of a craft that yaws as told and holds the ESTIMATE level with a quick loop. */
export interface ObeyedTilt {
  /** the craft's true vertical along its own axes at the end of every step: x, y */
  readonly up: readonly (readonly [number, number])[];
  readonly step: number;
}

/** @param yaw rate at t, rad/s; `gain` of the level loop, 1/s */
export function obeyedTilt(
  yaw: (t: number) => number,
  end: number,
  r: Vec3,
  tau: number,
  gain: number,
): ObeyedTilt {
  const step = 5e-4;
  let [body, estimate] = [UNIT, UNIT];
  let before: Vec3 = [0, 0, yaw(0)];
  const up: [number, number][] = [];
  for (let i = 0; i < Math.round(end / step); i++) {
    // rotate what is believed to be up onto the craft's z axis: omega = gain z x up
    const [x, y] = times(transposed(estimate), UP);
    const omega: Vec3 = [-gain * y, gain * x, yaw((i + 0.5) * step)];
    const alpha = omega.map((w, k) => (w - before[k]) / step) as unknown as Vec3;
    before = omega;
    estimate = corrected(estimate, omega, reading(omega, alpha, r), tau, step);
    body = product(body, turn(scaled(omega, step)));
    const [ux, uy] = times(transposed(body), UP);
    up.push([ux, uy]);
  }
  return { up, step };
}

/** Thrust over mass carries the craft along its own z axis, 1 g; the place adds the rest. */
function reading(omega: Vec3, alpha: Vec3, r: Vec3): Vec3 {
  const [t, c] = [cross(alpha, r), cross(omega, cross(omega, r))];
  return [t[0] + c[0], t[1] + c[1], G + t[2] + c[2]];
}

/** One step: the gyro's rate and (reading x believed up)/tau. */
function corrected(estimate: Matrix3, omega: Vec3, f: Vec3, tau: number, step: number): Matrix3 {
  const up = times(transposed(estimate), UP);
  const pull = scaled(cross(scaled(f, 1 / Math.hypot(...f)), up), 1 / tau);
  const rate = omega.map((w, k) => w + pull[k]) as unknown as Vec3;
  return product(estimate, turn(scaled(rate, step)));
}

function product(A: Matrix3, B: Matrix3): Matrix3 {
  const columns = transposed(B);
  const row = (i: 0 | 1 | 2) => times(columns, A[i]);
  return [row(0), row(1), row(2)];
}

const scaled = (v: Vec3, s: number): Vec3 => [s * v[0], s * v[1], s * v[2]];

function cross(a: Vec3, b: Vec3): Vec3 {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}
