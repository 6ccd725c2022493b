/**
 * Which side looks low, from Newton's law alone: a small mass carried by a craft in steady yaw,
 * followed in a frame that stands still.
 */

import { describe, expect, test } from "vitest";
import { steadyYaw } from "../../src/attitude/motions.ts";
import { sideTowards } from "../../src/attitude/sides.ts";
import { staticFalseAttitude } from "../../src/attitude/static-false-attitude.ts";
import type { Vec3 } from "../../src/model/types.ts";
import { DEGREE, G } from "./body-path.ts";

const RATE = 400 * DEGREE;
/** Natural frequency (rad/s) and damping of the mass on its springs. */
const W0 = 2 * Math.PI * 30;
const ZETA = 0.7;

const PLACES: readonly (readonly [string, number, number])[] = [
  ["front", 0.03, 0],
  ["front left", 0.03, 0.03],
  ["left", 0, 0.03],
  ["rear left", -0.03, 0.03],
  ["rear", -0.03, 0],
  ["rear right", -0.03, -0.03],
  ["right", 0, -0.03],
  ["front right", 0.03, -0.03],
];

/** Turned by the angle about z. */
function about([x, y, z]: Vec3, angle: number): Vec3 {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return [c * x - s * y, s * x + c * y, z];
}

/** Place and velocity in the frame that stands still, m and m/s. */
type State = readonly [Vec3, Vec3];

/**
 * The mass hangs in springs of equal stiffness in all directions from the point r of a craft that
 * yaws at a steady rate, damped against the craft. After it has settled: its place against r along
 * the body axes, m.
 */
function settled(r: Vec3, rate: number): Vec3 {
  const slope = (t: number, [p, v]: State): State => {
    const anchor = about(r, rate * t);
    // of the craft at the place of the mass: about z
    const carried: Vec3 = [-rate * p[1], rate * p[0], 0];
    const a = [0, 1, 2].map(
      (k) => -(W0 ** 2) * (p[k] - anchor[k]) - 2 * ZETA * W0 * (v[k] - carried[k]),
    );
    return [v, [a[0], a[1], a[2] - G]];
  };
  const steps = 1000;
  const h = 0.2 / steps;
  let state: State = [r, [0, 0, 0]];
  for (let i = 0; i < steps; i++) {
    const k1 = slope(i * h, state);
    const k2 = slope((i + 0.5) * h, moved(state, k1, h / 2));
    const k3 = slope((i + 0.5) * h, moved(state, k2, h / 2));
    const k4 = slope((i + 1) * h, moved(state, k3, h));
    const [a, b] = [moved(state, k1, h / 6), h / 3];
    state = moved(moved(moved(a, k2, b), k3, b), k4, h / 6);
  }
  const here = about(state[0], -rate * steps * h);
  return [here[0] - r[0], here[1] - r[1], here[2] - r[2]];
}

function moved([p, v]: State, [dp, dv]: State, h: number): State {
  const add = (a: Vec3, b: Vec3): Vec3 => [a[0] + h * b[0], a[1] + h * b[1], a[2] + h * b[2]];
  return [add(p, dp), add(v, dv)];
}

describe.each([RATE, -RATE])("a mass on springs in steady yaw at %d rad/s", (rate) => {
  test.each(PLACES)("at the %s hangs outwards: its own side looks low", (side, x, y) => {
    const r: Vec3 = [x, y, 0.01];
    const [dx, dy, dz] = settled(r, rate);
    expect(dz).toBeCloseTo(-G / W0 ** 2, 9);
    expect(sideTowards(dx, dy)).toBe(side);
    // the springs push against the displacement; they give, and the mass pulls at the larger radius
    const firm = 1 - (rate / W0) ** 2;
    const { roll, pitch } = staticFalseAttitude(steadyYaw({ yawRate: rate }), r);
    const [fx, fy, fz] = [-dx * firm, -dy * firm, -dz];
    expect(pitch[pitch.length - 1]).toBeCloseTo(Math.atan2(fx, Math.hypot(fy, fz)), 6);
    expect(roll[roll.length - 1]).toBeCloseTo(Math.atan2(fy, fz), 6);
  });
});
