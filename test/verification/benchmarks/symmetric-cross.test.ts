/** What the symmetry of the cross says beyond its list of frequencies. */

import { describe, expect, test } from "vitest";
import { expectClose } from "../compare.ts";
import { frequencies, solveFrame } from "../frequencies.ts";
import { CROSS, type Cross, clampedArm, crossOfArms, crossOfMembers } from "./cross-frames.ts";

const SAME = 1e-8;

const spectrum = (cross: Cross) => frequencies(crossOfMembers(cross), { modes: 22 });

/** Of each value, the nearest of the spectrum. */
function nearest(values: readonly number[], all: readonly number[]): number[] {
  return values.map((v) => all.reduce((a, b) => (Math.abs(b - v) < Math.abs(a - v) ? b : a)));
}

const moved = (f: number, all: readonly number[]) => Math.abs(nearest([f], all)[0] / f - 1);

describe.each([
  { written: "arms", frame: crossOfArms() },
  { written: "points and members", frame: crossOfMembers() },
])("the cross written with $written", ({ frame }) => {
  test("has six rigid-body motions, and the count proves that no mode is missing", () => {
    const { modes } = solveFrame(frame, { modes: 8 });
    expect(modes.rigid.length).toBe(6);
    expect(modes.evidence.counted).toBe(modes.evidence.found);
  });
});

describe("motions in which the hub rests", () => {
  // Bending up and sideways, first and second; twisting; stretching.
  const arm = frequencies(clampedArm(), { modes: 6 });

  test("are those of one arm clamped at its root", () => {
    expectClose(nearest(arm, spectrum(CROSS)), arm, SAME);
  });

  test.each([
    { change: { hub: 0.9 }, moves: "umbrella", f: 135.1089341 },
    { change: { Jxx: 1e-3 }, moves: "rock", f: 253.3842955 },
    { change: { Jzz: 7e-4 }, moves: "pinwheel", f: 641.701024 },
  ])("do not feel $change, which moves the $moves", ({ change, f }) => {
    const other = spectrum({ ...CROSS, ...change });
    expectClose(nearest(arm, other), arm, SAME);
    expect(moved(f, other)).toBeGreaterThan(1e-3);
  });

  test("do not feel G J, but for the twisting itself", () => {
    const other = spectrum({ ...CROSS, G: 4 * CROSS.G });
    const twisting = nearest([2696.841201], arm)[0];
    const rest = arm.filter((f) => f !== twisting);
    expect(rest.length).toBe(5);
    expectClose(nearest(rest, other), rest, SAME);
    expect(moved(twisting, other)).toBeGreaterThan(0.1);
  });
});
