/** Factors of the file on moduli and on damping, through to the modes. */

import { describe, expect, test } from "vitest";
import { analyseModes } from "../../src/analyse.ts";
import type { FrameFile } from "../../src/frame/types.ts";
import { coupledModes } from "../../src/response/coupled-modes.ts";
import { bareOf, placeOf, smallCross } from "../response/joined.ts";
import { crossFrame, stiffer } from "./toys.ts";

const modesOf = (file: FrameFile) => analyseModes(file, { modes: 12 }).modes.described;

const SOFT = {
  mass: "150 g",
  at: [0, 0, 24],
  size: [60, 36, 34],
  on: "hub",
  hold: "soft",
  soft: { bounce: "40 Hz", lossFactor: 0.3 },
};

describe("modulusFactors", () => {
  test("a metal 21 % stiffer by its factor is the stiffer metal: every frequency 10 % higher", () => {
    const base = modesOf(crossFrame({ lopsided: true }));
    const found = modesOf(crossFrame({ lopsided: true }, { modulusFactors: { metal: 1.21 } }));
    const written = modesOf(stiffer(crossFrame({ lopsided: true }), 1.21));
    found.forEach((mode, i) => {
      expect(mode.frequency / base[i].frequency).toBeCloseTo(1.1, 6);
      expect(mode.frequency / written[i].frequency).toBeCloseTo(1, 9);
      expect(mode.lossFactor).toBeCloseTo(base[i].lossFactor, 9);
    });
  });

  test("that of another material does nothing", () => {
    const other = modesOf(crossFrame({}, { modulusFactors: { nylon: 2 } }));
    const base = modesOf(crossFrame());
    expect(other.map((m) => m.frequency)).toEqual(base.map((m) => m.frequency));
  });
});

describe("dampingFactor", () => {
  const more = { assemblyLossFactor: 0.015, bodies: { soft: SOFT } };

  test("is on every mode, those on soft mounts too, and moves no frequency", () => {
    const base = modesOf(crossFrame({ lossFactor: 0.004 }, more));
    const found = modesOf(crossFrame({ lossFactor: 0.004 }, { ...more, dampingFactor: 1.7 }));
    expect(Math.max(...base.map((m) => m.motion.softMount))).toBeGreaterThan(0.98);
    found.forEach((mode, i) => {
      expect(mode.lossFactor / base[i].lossFactor).toBeCloseTo(1.7, 9);
      expect(mode.frequency).toBe(base[i].frequency);
    });
  });

  test("is on the stack's isolators as well, joined or in the mesh", () => {
    const isolators = { axial: "6 kN/m", lateral: "3 kN/m", lossFactor: 0.3 };
    const nose = { plate: "hub", at: [44, 0], holes: { spacing: "20 mm" }, isolators };
    const joined = (dampingFactor: number) => {
      const file = smallCross({ lossFactor: 0.01 }, {}, { candidates: { nose }, dampingFactor });
      const frame = bareOf(file, 30, 20);
      const [c] = frame.model.candidates;
      return coupledModes(frame.solved.modes, placeOf(frame, c));
    };
    const [one, two] = [joined(1), joined(2)];
    expect(Math.max(...one.isolatorShare)).toBeGreaterThan(0.9);
    one.lossFactor.forEach((eta, k) => {
      expect(two.lossFactor[k]).toBeCloseTo(2 * eta, 9);
    });
    const stack = (dampingFactor: number) =>
      modesOf(smallCross({ lossFactor: 0.01 }, { isolators }, { dampingFactor }));
    const [inMesh, doubled] = [stack(1), stack(2)];
    expect(Math.max(...inMesh.map((m) => m.motion.softMount))).toBeGreaterThan(0.9);
    doubled.forEach((mode, i) => {
      expect(mode.lossFactor / inMesh[i].lossFactor).toBeCloseTo(2, 9);
    });
  });
});
