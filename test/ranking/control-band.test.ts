/** Loop gains at resonances, against direct solutions of the damped frame with the stack in its mesh. */

import { describe, expect, test } from "vitest";
import { expand } from "../../src/matrices/reduction.ts";
import { seatMotion } from "../../src/mesh/seat.ts";
import type { Candidate, Vec3 } from "../../src/model/types.ts";
import { type LoopSettings, loopCouplings, rigidGain } from "../../src/ranking/control-band.ts";
import { coupledModes } from "../../src/response/coupled-modes.ts";
import { denseSystem, directMotions, rotorForce } from "../response/direct.ts";
import { type Bare, bareOf, joined, placeOf, smallCross } from "../response/joined.ts";
import { angularAcceleration, moment, plus } from "../response/stiff-body.ts";

const AXES = ["roll", "pitch", "yaw"] as const;
const LOSS = 0.01;
const SETTINGS: LoopSettings = { bandwidth: 60, below: 700, torquePerThrust: 0.014 };

function couplings(frame: Bare, c: Candidate, settings = SETTINGS) {
  const place = placeOf(frame, c);
  const { modes } = frame.solved;
  const coupled = coupledModes(modes, place);
  return loopCouplings(frame.bare.h, coupled, modes.rigid.length, place, settings);
}

/** Force and couple of each rotor under a roll, pitch or yaw command of unit size. */
function command(frame: Bare, axis: number): readonly (readonly [Vec3, Vec3])[] {
  const { rotors } = frame.model;
  const middle = (i: number) => rotors.reduce((s, r) => s + r.position[i], 0) / rotors.length;
  return rotors.map(({ position, spin }) => {
    const [x, y] = [position[0] - middle(0), position[1] - middle(1)];
    if (axis === 2)
      return [
        [0, 0, -spin / SETTINGS.torquePerThrust],
        [0, 0, 1],
      ];
    return [
      [0, 0, axis === 0 ? y : -x],
      [0, 0, 0],
    ];
  });
}

/** The frame as one that bends and is damped, with the stack in its mesh. */
function bending(frame: Bare, c: Candidate) {
  const whole = joined(frame, c, 20);
  const { system, mesh, mass, chip } = whole;
  const dense = denseSystem(system, mesh);
  const loads = AXES.map((_, axis) => {
    const load = new Float64Array(dense.n);
    let M: Vec3 = [0, 0, 0];
    command(frame, axis).forEach(([force, couple], r) => {
      const rotor = frame.model.rotors[r];
      rotorForce(system, mesh, rotor, force, couple).forEach((v, i) => {
        load[i] += v;
      });
      M = plus(M, moment(mass, rotor.position, force, couple));
    });
    return { load, alpha: angularAcceleration(mass, M)[axis] };
  });
  const still = new Float64Array(dense.n);
  return {
    frequencies: Array.from(whole.solved.modes.lambda, (l) => Math.sqrt(l) / (2 * Math.PI)),
    /** complex turning of the chip about each axis, per that of the craft as a stiff body, at f in Hz */
    overStiff: (f: number) => {
      const omega = 2 * Math.PI * f;
      const motions = directMotions(
        dense,
        omega,
        loads.map(({ load }) => ({ re: load, im: still })),
      );
      return motions.map((u, axis) => {
        const stiff = -loads[axis].alpha / omega ** 2;
        const [re, im] = [u.re, u.im].map(
          (v) => seatMotion(chip, expand(system.reduction, v))[3 + axis] / stiff,
        );
        return { re, im };
      });
    },
  };
}

/** Bode's plot of an integrator: 1 at the bandwidth. */
const bode = (f: number, { bandwidth }: LoopSettings) => 1 / f / (1 / bandwidth);

const NOSE = { plate: "hub", at: [44, 0], holes: { spacing: "20 mm" } };
const MOUNTS = { axial: "6 kN/m", lateral: "3 kN/m", lossFactor: LOSS };
const lopsided = bareOf(
  smallCross(
    { lossFactor: LOSS },
    {},
    {
      candidates: {
        nose: NOSE,
        "nose on mounts": { ...NOSE, isolators: MOUNTS },
        "left edge": { plate: "hub", at: [0, 26], holes: { spacing: "20 mm" } },
      },
    },
  ),
  30,
  50,
);

describe.each(lopsided.model.candidates.map((c) => [c.name, c] as const))("%s", (_, c) => {
  const found = couplings(lopsided, c);
  const whole = bending(lopsided, c);

  test("each axis has its liveliest mode, the most dangerous axis first", () => {
    expect(found.map((k) => k.axis).sort()).toEqual([...AXES].sort());
    const gains = found.map((k) => k.gain);
    expect(gains).toEqual([...gains].sort((a, b) => b - a));
  });

  test.each(found.map((k) => [k.axis, k] as const))("%s: what the damped frame does", (axis, k) => {
    const { re, im } = whole.overStiff(k.frequency)[AXES.indexOf(axis)];
    // the resonance alone is in quadrature; the rest of the craft follows in phase
    expect((Math.abs(im) * bode(k.frequency, SETTINGS)) / k.gain).toBeCloseTo(1, 3);
    expect(Math.hypot(re, im) / Math.abs(im)).toBeLessThan(1.02);
  });

  test("no other frequency of the frame in between has more", () => {
    const inside = whole.frequencies.filter((f) => f > SETTINGS.bandwidth && f < SETTINGS.below);
    expect(inside.length).toBeGreaterThan(8);
    const gains = inside.map((f) =>
      whole.overStiff(f).map(({ im }) => Math.abs(im) * bode(f, SETTINGS)),
    );
    for (const { axis, gain, frequency } of found) {
      const off = inside.map((f) => Math.abs(f / frequency - 1));
      expect(Math.min(...off)).toBeLessThan(1e-4);
      const others = gains.filter((_, i) => off[i] > 1e-3).map((g) => g[AXES.indexOf(axis)]);
      expect(Math.max(...others)).toBeLessThan(1.001 * gain);
    }
  });
});

describe("limits", () => {
  const [nose] = lopsided.model.candidates;
  const { lambda } = joined(lopsided, nose, 12).solved.modes;
  const own = Array.from(lambda, (l) => Math.sqrt(l) / (2 * Math.PI));

  test("modes below the bandwidth and above the limit are left out", () => {
    for (const k of [1, 2, 3]) {
      const [bandwidth, below] = [own[k] - 1, own[k] + 1];
      const found = couplings(lopsided, nose, { ...SETTINGS, bandwidth, below });
      expect(found.map((c) => c.mode)).toEqual([k + 1, k + 1, k + 1]);
      for (const c of found) expect(c.frequency / own[k]).toBeCloseTo(1, 5);
    }
    const [bandwidth, below] = [own[1] + 1, own[2] - 1];
    expect(couplings(lopsided, nose, { ...SETTINGS, bandwidth, below })).toEqual([]);
  });

  test("a frame that is held does not fly", () => {
    const within = [
      [-60, -40],
      [-30, -40],
      [-30, 40],
      [-60, 40],
    ];
    const held = bareOf(
      smallCross({}, {}, { supports: { bench: { plate: "hub", within, fix: "all" } } }),
      20,
      100,
    );
    for (const c of held.model.candidates) expect(couplings(held, c)).toEqual([]);
  });
});

describe("a square frame", () => {
  const side = 50;
  const hub = {
    material: "metal",
    thickness: 3,
    z: 0,
    outline: [
      [side, side],
      [-side, side],
      [-side, -side],
      [side, -side],
    ],
  };
  const arm = {
    material: "metal",
    thickness: 4,
    root: [40, 40],
    tip: [105, 105],
    copies: "all four corners",
    width: [16, 12],
    elements: 1,
    joint: { kind: "one piece", plate: "hub" },
  };
  const square = (bodies: object) => {
    const more = { plates: { hub }, arms: { arm }, bodies, candidates: { middle: MIDDLE } };
    const frame = bareOf(smallCross({ lossFactor: 0.02 }, {}, more), 30, 100);
    const found = couplings(frame, frame.model.candidates[0]);
    return AXES.map((axis) => found.find((c) => c.axis === axis)?.gain ?? Number.NaN);
  };
  const MIDDLE = { plate: "hub", at: [0, 0] };
  const plain = square({});

  test("rolls as it pitches", () => {
    expect(plain[0] / plain[1]).toBeCloseTo(1, 6);
    expect(plain[0]).toBeGreaterThan(1);
  });

  test("and a tag of half a gram that turns its pairs of modes by 45 degrees changes little", () => {
    const tagged = square({ tag: { mass: "0.5 g", at: [105, 105, 0], on: "front left arm" } });
    for (const axis of [0, 1]) expect(tagged[axis] / plain[axis]).toBeCloseTo(1, 1);
  });
});

describe("the loop of the rigid craft", () => {
  test.each([20, 40, 77])(
    "has gain 1 at its bandwidth of %d Hz and falls 20 dB per decade",
    (bandwidth) => {
      expect(rigidGain(bandwidth, { bandwidth })).toBe(1);
      expect(20 * Math.log10(rigidGain(10 * bandwidth, { bandwidth }))).toBeCloseTo(-20, 12);
    },
  );
});
