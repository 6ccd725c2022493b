/** What each mode does alone, against mode shapes and inertias of the frame with the stack in its mesh. */

import { describe, expect, test } from "vitest";
import type { Excitation } from "../../src/excitation/types.ts";
import { restrict } from "../../src/matrices/reduction.ts";
import { seatMotion } from "../../src/mesh/seat.ts";
import type { Candidate, Vec3 } from "../../src/model/types.ts";
import { modeShares } from "../../src/response/mode-shares.ts";
import { readPlace } from "../../src/response/reading.ts";
import { rotorForce } from "./direct.ts";
import { bareOf, type Joined, joined, placeOf, shaken, smallCross } from "./joined.ts";
import { angularAcceleration, moment } from "./stiff-body.ts";

const DEGREE = Math.PI / 180;
const NOSE = { plate: "hub", at: [44, 0], holes: { spacing: "20 mm" } };
const SOFT = { axial: "6 kN/m", lateral: "3 kN/m", lossFactor: 0.3 };
const candidates = { nose: NOSE, soft: { ...NOSE, isolators: SOFT } };
const frame = bareOf(smallCross({}, {}, { candidates }), 40, 10);
const { h } = frame.bare;

/** Amplitudes of force and couple of an order of unit size, real and imaginary part. */
function unitLoad(order: number, spin: number): readonly (readonly [Vec3, Vec3])[] {
  const none: Vec3 = [0, 0, 0];
  const { kind } = h.orders[order];
  if (kind === "thrust") return [[[0, 0, 1], none]];
  if (kind === "torque") return [[none, [0, 0, 1]]];
  // x cos + s y sin turns anticlockwise for s = 1: Re[(x - i s y) e^(i omega t)]
  const [x, y]: [Vec3, Vec3] = [
    [1, 0, 0],
    [0, -spin, 0],
  ];
  if (kind === "side force")
    return [
      [x, none],
      [y, none],
    ];
  return [
    [none, x],
    [none, y],
  ];
}

type Passing = (omega: number) => number;
const ALL: Passing = () => 1;

/** Mean over the mix of the squared rate per squared amplitude, (deg/s)^2: `turning` at omega in rad. */
function overMix(order: number, { grid, weights }: Excitation, turning: (omega: number) => number) {
  const { coefficient, order: multiple } = h.orders[order];
  return grid.reduce((sum, speed, s) => {
    const omega = multiple * speed;
    const rate = (omega * coefficient * speed ** 2) / DEGREE;
    return sum + (weights[s] * rate ** 2 * turning(omega)) / 2;
  }, 0);
}

/** |theta f|^2/|lambda (1 + i eta) - omega^2|^2 of one mode of the whole frame, over all rotors. */
function ofMode(whole: Joined, k: number, order: number, passed = ALL): number {
  const { lambda, shapes, described } = whole.solved.modes;
  const theta = seatMotion(whole.chip, shapes[k]).subarray(3);
  const phi = restrict(whole.system.reduction, shapes[k]);
  let work = 0;
  for (const rotor of frame.model.rotors) {
    for (const [F, M] of unitLoad(order, rotor.spin)) {
      const load = rotorForce(whole.system, whole.mesh, rotor, F, M);
      work += phi.reduce((sum, v, i) => sum + v * load[i], 0) ** 2;
    }
  }
  const eta = described[k].lossFactor;
  return overMix(order, frame.excitation, (omega) => {
    const away = (lambda[k] - omega ** 2) ** 2 + (eta * lambda[k]) ** 2;
    return (passed(omega) * work * Math.hypot(...theta) ** 2) / away;
  });
}

/** Turning = alpha/omega^2. */
function ofRigidCraft({ mass }: Joined, order: number): number {
  let square = 0;
  for (const { position, spin } of frame.model.rotors) {
    for (const [F, M] of unitLoad(order, spin)) {
      const alpha = angularAcceleration(mass, moment(mass, position, F, M));
      square += Math.hypot(...alpha) ** 2;
    }
  }
  return overMix(order, frame.excitation, (omega) => square / omega ** 4);
}

describe.each(frame.model.candidates.map((c) => [c.name, c] as const))("%s", (_, c: Candidate) => {
  const found = modeShares(h, frame.solved.modes, placeOf(frame, c));
  const whole = joined(frame, c, 12);

  test("the first twelve modes cause what they do in the frame that was solved as a whole", () => {
    h.orders.forEach((_, order) => {
      const most = Math.max(...found.power[order]);
      for (let k = 0; k < 12; k++) {
        const expected = ofMode(whole, k, order);
        expect(Math.abs(found.power[order][1 + k] - expected)).toBeLessThan(
          1e-3 * expected + 1e-9 * most,
        );
      }
    });
  });

  test("of which a chip passes on what its low-pass lets through", () => {
    // at the frequency of the third mode half of the power is left
    const half = whole.solved.modes.lambda[2];
    const passed: Passing = (omega) => 1 / (1 + (omega ** 2 / half) ** 2);
    const { grid } = frame.excitation;
    const gains = h.orders.map((o) => grid.map((speed) => passed(o.order * speed)));
    const less = modeShares(h, frame.solved.modes, placeOf(frame, c), gains);
    h.orders.forEach((_, order) => {
      const most = Math.max(...less.power[order]);
      for (let k = 0; k < 12; k++) {
        const expected = ofMode(whole, k, order, passed);
        const off = Math.abs(less.power[order][1 + k] - expected);
        expect(off).toBeLessThan(1e-3 * expected + 1e-9 * most);
      }
    });
  });

  test("the rigid motions together what a stiff body of this inertia would", () => {
    h.orders.forEach((_, order) => {
      expect(found.power[order][0] / ofRigidCraft(whole, order)).toBeCloseTo(1, 6);
    });
  });
});

test("at the resonance of a mode that is lightly damped and far from others it causes nearly all", () => {
  const light = bareOf(
    smallCross({ lossFactor: 1e-3 }, {}, { candidates: { nose: NOSE } }),
    40,
    100,
  );
  const place = placeOf(light, light.model.candidates[0]);
  const { coupled, rigid } = modeShares(light.bare.h, light.solved.modes, place);
  for (const mode of [2, 3, 4]) {
    const omega = Math.sqrt(coupled.lambda[rigid + mode]);
    const orders = light.excitation.orders.filter((o) => o.name === "unbalance");
    const grid = Float64Array.of(omega);
    const one = { ...light.excitation, orders, grid, weights: Float64Array.of(1) };
    const there = shaken(light, one);
    const { power } = modeShares(there.bare.h, light.solved.modes, place);
    const { gyroAxes } = readPlace(there.bare, place);
    const whole = gyroAxes[0] + gyroAxes[1] + gyroAxes[2];
    expect(power[0][1 + mode] / whole).toBeCloseTo(1, 2);
    expect(Math.max(...power[0])).toBe(power[0][1 + mode]);
  }
});
