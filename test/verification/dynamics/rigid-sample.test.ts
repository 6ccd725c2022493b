/**
 * A rigid body turns as one, so a gyro reads the same wherever it sits on it: a sample frame with all
 * stiffness a million times larger, and as it is. The whole public path, from the file to the ranking.
 */

import { describe, expect, test } from "vitest";
import { analyse } from "../../../src/analyse.ts";
import { readFrame } from "../../../src/frame/read.ts";
import type { BodyDef, FrameFile, MaterialDef } from "../../../src/frame/types.ts";
import { libraryMaterial } from "../../../src/material/library-materials.ts";
import type { RankedCandidate } from "../../../src/ranking/types.ts";

const MODULI = ["E", "G", "E1", "E2", "G12", "G13", "G23"];

function scaleMaterial(material: object, factor: number): MaterialDef {
  const scaled = Object.entries(material).map(([name, value]) => [
    name,
    MODULI.includes(name) ? factor * value : value,
  ]);
  return Object.fromEntries(scaled);
}

/** A soft mount's stiffness goes with the square of the frequency that the file gives. */
function scaleMount(body: BodyDef, factor: number): BodyDef {
  if (!body.soft) return body;
  const { bounce, sway } = body.soft;
  const root = Math.sqrt(factor);
  return { ...body, soft: { ...body.soft, bounce: root * bounce, sway: root * sway } };
}

/** Every modulus and every mount of a frame that has no other stiffness in its file. */
function stiffened(file: FrameFile, factor: number): FrameFile {
  expect([file.springs, file.joints].map((part) => Object.keys(part).length)).toEqual([0, 0]);
  const named = [file.plates, file.arms, file.standoffs].flatMap((parts) => Object.values(parts));
  const materials = named.map(({ material }) => {
    const plain = file.materials[material] ?? libraryMaterial(material).material;
    expect(["isotropic", "measured"]).toContain(plain.kind);
    return [material, scaleMaterial(plain, factor)];
  });
  const bodies = Object.entries(file.bodies).map(([name, b]) => [name, scaleMount(b, factor)]);
  return { ...file, materials: Object.fromEntries(materials), bodies: Object.fromEntries(bodies) };
}

const read = readFrame("frames/five-inch.jsonc");
/** Without twice blade pass, where bending shows four times as much. */
const excitation = { ...read.excitation, thrustRippleDouble: 0, torqueRippleDouble: 0 };
/** A stack that weighs something would take its inertia with it from place to place. */
const stack = read.stack && { ...read.stack, mass: 1e-9 };
const sample = { ...read, excitation, ...(stack && { stack }) };

function candidatesOf(file: FrameFile): readonly RankedCandidate[] {
  const { ranking } = analyse(file, { meshSize: 9e-3, modes: 40 });
  if (!ranking) throw new Error("the sample names its candidates");
  // What the search finds lies on the bottom plate, which hangs on the arms' faces alone: see below.
  return ranking.candidates.filter((c) => !c.found);
}

const [flexible, stiff, rigid] = [1, 1e4, 1e6].map((factor) =>
  candidatesOf(stiffened(sample, factor)),
);

/** Largest over smallest, less one. */
const spread = (values: readonly number[]) => Math.max(...values) / Math.min(...values) - 1;
const decibels = (ratio: number) => 20 * Math.log10(ratio);

const gyroSpread = (candidates: readonly RankedCandidate[]) =>
  spread(candidates.map((c) => c.gyro));

/** The largest spread at any one motor speed. */
function widestSpread(candidates: readonly RankedCandidate[]): number {
  const speeds = Array.from(candidates[0].gyroTotal.keys());
  return Math.max(...speeds.map((s) => spread(candidates.map((c) => c.gyroTotal[s]))));
}

describe("the five-inch sample with all stiffness a million times larger", () => {
  test("the gyro reads the same at every candidate, over the mix and at every motor speed", () => {
    expect(rigid.length).toBe(4);
    // measured: 2.1e-6 over the mix, 4.2e-6 at the worst speed
    expect(gyroSpread(rigid)).toBeLessThan(5e-6);
    expect(widestSpread(rigid)).toBeLessThan(1e-5);
  });

  test("what is left is bending: a hundred times the stiffness, a hundredth of the difference", () => {
    const ratio = gyroSpread(stiff) / gyroSpread(rigid);
    // measured: 113; the arms' face joints do not get stiffer, so the motion is not quite the same
    expect(ratio).toBeGreaterThan(80);
    expect(ratio).toBeLessThan(130);
  });

  test("each axis by itself, too, but the accelerometer keeps its lever arm", () => {
    for (let axis = 0; axis < 3; axis++) {
      // pitch is a sixth of the whole; measured: 5e-5 of it
      expect(spread(rigid.map((c) => c.gyroAxes[axis]))).toBeLessThan(2e-4);
    }
    expect(decibels(1 + spread(rigid.map((c) => c.accel)))).toBeGreaterThan(2);
  });

  test("the cause is the whole craft moving as one", () => {
    for (const { causes } of rigid) {
      const whole = causes.filter((c) => c.mode === 0).reduce((sum, c) => sum + c.share, 0);
      expect(whole).toBeGreaterThan(0.99);
    }
  });
});

describe("the same sample as it is", () => {
  test("places differ by decibels over the mix, and by more at single speeds", () => {
    // measured: 2.1 dB, and 9.9 dB at the worst speed
    expect(decibels(1 + gyroSpread(flexible))).toBeGreaterThan(1.5);
    expect(decibels(1 + widestSpread(flexible))).toBeGreaterThan(8);
  });

  test("it is bending that the gyro reads: every place is far above the rigid body", () => {
    // measured: 30 dB and more
    for (const c of flexible) expect(decibels(c.gyro / rigid[0].gyro)).toBeGreaterThan(25);
  });
});
