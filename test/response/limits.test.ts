/** Limits with a closed form: rigid frames and static loads. */

import { describe, expect, test } from "vitest";
import type { OrderKind } from "../../src/excitation/types.ts";
import { expand } from "../../src/matrices/reduction.ts";
import { harmonics } from "../../src/response/harmonic.ts";
import { type Reading, rms } from "../../src/response/reading.ts";
import { crossFrame, PROPULSION, stiffer } from "../modes/toys.ts";
import { denseSystem, directMotions, rotorForce } from "./direct.ts";
import { motionOf, readSensor, type Shaken, shake } from "./pipeline.ts";

const DEGREE = Math.PI / 180;
const G = 9.80665;

type Vector = readonly [number, number, number];
const minus = (a: ArrayLike<number>, b: ArrayLike<number>): Vector => [
  a[0] - b[0],
  a[1] - b[1],
  a[2] - b[2],
];
const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const square = (a: Vector) => a[0] ** 2 + a[1] ** 2 + a[2] ** 2;

/** x of I x = b for the inertia tensor, by Cramer's rule. */
function solveInertia(s: Shaken, b: Vector): Vector {
  const { xx, yy, zz, xy, xz, yz } = s.mass.inertia;
  const c: Vector[] = [
    [xx, xy, xz],
    [xy, yy, yz],
    [xz, yz, zz],
  ];
  const det = (p: Vector, q: Vector, r: Vector) =>
    p[0] * (q[1] * r[2] - q[2] * r[1]) +
    p[1] * (q[2] * r[0] - q[0] * r[2]) +
    p[2] * (q[0] * r[1] - q[1] * r[0]);
  const D = det(c[0], c[1], c[2]);
  return [det(b, c[1], c[2]) / D, det(c[0], b, c[2]) / D, det(c[0], c[1], b) / D];
}

/** A rigid craft: a = F/m + alpha x r, I alpha = (p - cg) x F + M; powers of one order at one speed. */
function rigidPower(s: Shaken, order: number, at: number, chip: Vector) {
  const force = s.excitation.orders[order];
  const speed = s.excitation.grid[at];
  const omega = force.order * speed;
  const A = force.coefficient * speed * speed;
  let gyro = 0;
  let accel = 0;
  for (const rotor of s.model.rotors) {
    // one push each for the cosine and the sine part: their powers add
    const pushes: Record<OrderKind, readonly { F: Vector; M: Vector }[]> = {
      "side force": [
        { F: [A, 0, 0], M: [0, 0, 0] },
        { F: [0, A, 0], M: [0, 0, 0] },
      ],
      "rotating moment": [
        { F: [0, 0, 0], M: [A, 0, 0] },
        { F: [0, 0, 0], M: [0, A, 0] },
      ],
      thrust: [{ F: [0, 0, A], M: [0, 0, 0] }],
      torque: [{ F: [0, 0, 0], M: [0, 0, A] }],
    };
    for (const { F, M } of pushes[force.kind]) {
      const moment = cross(minus(rotor.position, s.mass.cg), F);
      const alpha = solveInertia(s, [moment[0] + M[0], moment[1] + M[1], moment[2] + M[2]]);
      const lever = cross(alpha, minus(chip, s.mass.cg));
      const a: Vector = [0, 1, 2].map((i) => F[i] / s.mass.mass + lever[i]) as never;
      gyro += square(alpha) / (omega * DEGREE) ** 2 / 2;
      accel += square(a) / G ** 2 / 2;
    }
  }
  return { gyro, accel };
}

const stiff = shake(stiffer(crossFrame({ lopsided: true }), 1e8));
const flexible = shake(crossFrame({ lopsided: true }));
const read = (s: Shaken): Reading[] => s.sensors.map((sensor) => readSensor(s.h, sensor));
const gyros = (s: Shaken) => read(s).map((r) => rms(r.gyroAxes));
const spread = (v: readonly number[]) => Math.max(...v) / Math.min(...v) - 1;

describe("a frame a hundred million times stiffer", () => {
  test("turns as one: the gyro reads the same everywhere, which it does not on the real frame", () => {
    expect(spread(gyros(stiff))).toBeLessThan(1e-4);
    expect(spread(gyros(flexible))).toBeGreaterThan(0.05);
  });

  test("reads what Newton and Euler give for a rigid body, accelerometer with its lever arm", () => {
    read(stiff).forEach((reading, c) => {
      const { chip } = stiff.model.candidates[c];
      stiff.excitation.orders.forEach((_, order) => {
        for (const at of [0, 150, 299]) {
          const expected = rigidPower(stiff, order, at, chip);
          expect(reading.gyroPower[order][at] / expected.gyro).toBeCloseTo(1, 4);
          expect(reading.accelPower[order][at] / expected.accel).toBeCloseTo(1, 4);
        }
      });
    });
  });
});

describe("sums", () => {
  const [all] = read(flexible);

  test("the powers of the motors add", () => {
    const { h } = flexible;
    const each = h.rotors.map((_, rotor) =>
      readSensor(
        { ...h, responses: h.responses.filter((r) => r.rotor === rotor) },
        flexible.sensors[0],
      ),
    );
    expect(each.length).toBe(4);
    for (const at of [0, 100, 299]) {
      const sum = each.reduce((t, r) => t + r.gyroPower[0][at], 0);
      expect(all.gyroPower[0][at]).toBeCloseTo(sum, 9);
    }
    const total = each.reduce((t, r) => t + rms(r.accelAxes) ** 2, 0);
    expect(rms(all.accelAxes) ** 2 / total).toBeCloseTo(1, 10);
  });

  test("levels over the mix weigh every speed and add the orders", () => {
    const { weights } = flexible.excitation;
    const mean = (powers: readonly Float64Array[]) =>
      powers.reduce((sum, p) => sum + p.reduce((t, v, i) => t + weights[i] * v, 0), 0);
    expect(rms(all.gyroAxes) ** 2 / mean(all.gyroPower)).toBeCloseTo(1, 10);
    expect(rms(all.accelAxes) ** 2 / mean(all.accelPower)).toBeCloseTo(1, 10);
  });

  test("doubling the unbalance and the ripples doubles every level", () => {
    const { excitation: e } = flexible;
    const orders = e.orders.map((o) => ({ ...o, coefficient: 2 * o.coefficient }));
    const { modes, rigidShapes } = flexible.solved;
    const h = harmonics(
      flexible.mesh,
      modes,
      rigidShapes,
      flexible.model.rotors,
      flexible.residuals,
      {
        ...e,
        orders,
      },
    );
    const twice = readSensor(h, flexible.sensors[0]);
    expect(rms(twice.gyroAxes) / rms(all.gyroAxes)).toBeCloseTo(2, 10);
    expect(rms(twice.accelAxes) / rms(all.accelAxes)).toBeCloseTo(2, 10);
  });
});

describe("rotors that hardly turn, on a clamped hub", () => {
  const slow = shake(
    crossFrame(
      { lopsided: true, lossFactor: 0 },
      {
        propulsion: {
          ...PROPULSION,
          speeds: { idle: "4 rpm", hover: "6 rpm", full: "8 rpm" },
        },
        supports: {
          bench: {
            plate: "hub",
            within: [
              [31, 15],
              [-31, 15],
              [-31, -15],
              [31, -15],
            ],
            fix: "all",
          },
        },
      },
    ),
    { modes: 5 },
  );
  const { h, mesh, system } = slow;

  /** Under the first order of a kind, at the lowest speed. */
  const motion = (kind: OrderKind, rotor: number) =>
    motionOf(
      h,
      h.orders.findIndex((o) => o.kind === kind),
      rotor,
      0,
    );

  /** K^-1 f on the mesh. */
  function staticMotion(rotor: number, force: Vector, couple: Vector = [0, 0, 0]) {
    const dense = denseSystem(system, mesh);
    const re = rotorForce(system, mesh, h.rotors[rotor], force, couple);
    const [x] = directMotions(dense, 0, [{ re, im: new Float64Array(re.length) }]);
    return expand(system.reduction, x.re);
  }

  const difference = (a: Float64Array, b: Float64Array) =>
    Math.max(...a.map((v, i) => Math.abs(v - b[i]))) / Math.max(...b.map(Math.abs));

  test("nothing is free, and five modes with residual flexibility give the static deflection", () => {
    expect(slow.solved.modes.rigid.length).toBe(0);
    expect(h.elastic).toBe(5);
    const { re, A } = motion("thrust", 2);
    expect(difference(re, staticMotion(2, [0, 0, A]))).toBeLessThan(1e-5);
    const torque = motion("torque", 0);
    expect(difference(torque.re, staticMotion(0, [0, 0, 0], [0, 0, torque.A]))).toBeLessThan(1e-5);
  });

  test.each([0, 1, 2, 3])(
    "the unbalance of rotor %i points along x first and then its own way round",
    (rotor) => {
      const { re, im, A } = motion("side force", rotor);
      const s = h.rotors[rotor].spin;
      expect(difference(re, staticMotion(rotor, [A, 0, 0]))).toBeLessThan(1e-5);
      // a quarter of a turn later u = Re[i (re + i im)] = -im
      expect(
        difference(
          im.map((v) => -v),
          staticMotion(rotor, [0, s * A, 0]),
        ),
      ).toBeLessThan(1e-5);
    },
  );

  test.each([0, 1, 2, 3])(
    "the moment of rotor %i points along x first and then its own way round",
    (rotor) => {
      const { re, im, A } = motion("rotating moment", rotor);
      const s = h.rotors[rotor].spin;
      const still = [0, 0, 0] as const;
      expect(difference(re, staticMotion(rotor, still, [A, 0, 0]))).toBeLessThan(1e-5);
      const later = im.map((v) => -v);
      expect(difference(later, staticMotion(rotor, still, [0, s * A, 0]))).toBeLessThan(1e-5);
    },
  );

  test("neighbours turn opposite ways", () => {
    for (const a of h.rotors) {
      for (const b of h.rotors) {
        const neighbours = Math.sign(a.position[0] * b.position[0] * a.position[1] * b.position[1]);
        expect(a.spin * b.spin).toBe(neighbours);
      }
    }
  });
});
