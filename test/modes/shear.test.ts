/** The estimate of what shear would do, against beams that shear. */

import { describe, expect, test } from "vitest";
import { analyseModes } from "../../src/analyse.ts";
import type { ModeDescription } from "../../src/modes/types.ts";
import { modeWarnings } from "../../src/modes/warnings.ts";
import { crossFrame, frameOf, metal } from "./toys.ts";

/** A clamped beam of a section whose shear stiffness is low. */
function beam(theory: string, height: string): readonly ModeDescription[] {
  return analyseModes(
    frameOf({
      beamTheory: theory,
      materials: { metal: metal({}) },
      points: { wall: [0, 0, 0], end: [200, 0, 0] },
      members: {
        beam: {
          from: "wall",
          to: "end",
          material: "metal",
          section: { shape: "rectangle", width: "9 mm", height },
          elements: 16,
        },
      },
      supports: { wall: { point: "wall", fix: "all" } },
    }),
    { modes: 6 },
  ).modes.described;
}

/** Modes of bending in the plane of the height, which shears most. */
describe("a clamped beam", () => {
  test.each(["12 mm", "20 mm"])("%s high: the estimate is the fall that comes", (height) => {
    const plain = beam("rayleigh", height);
    const sheared = beam("timoshenko", height);
    let seen = 0;
    plain.forEach((mode, i) => {
      const fall = 1 - sheared[i].frequency / mode.frequency;
      if (fall < 1e-4) {
        expect(mode.shearEffect).toBeLessThan(1e-3);
        return;
      }
      seen++;
      expect(mode.shearEffect / fall).toBeGreaterThan(0.98);
      expect(mode.shearEffect / fall).toBeLessThan(1.1);
    });
    expect(seen).toBeGreaterThan(3);
  });

  test("with shear in the beams there is nothing left to estimate", () => {
    for (const m of beam("timoshenko", "20 mm")) expect(m.shearEffect).toBe(0);
  });
});

describe("thick tapered arms", () => {
  const stubby = { armThickness: 9, armElements: 6 };
  const plain = analyseModes(crossFrame(stubby), { modes: 30 });
  const sheared = analyseModes(crossFrame(stubby, { beamTheory: "timoshenko" }), { modes: 30 });

  // A taper carries part of the shear force: V = d(E I w'')/dx, which E I w''' alone is not.
  test("the estimate is close where there is something to estimate", () => {
    const rows = plain.modes.described.flatMap((m, i) => {
      const fall = 1 - sheared.modes.described[i].frequency / m.frequency;
      return fall > 2e-3 ? [{ mode: m.number, name: m.name, of: m.shearEffect / fall }] : [];
    });
    expect(rows.length).toBeGreaterThan(12);
    expect(rows.filter((r) => r.of < 0.9 || r.of > 1.2)).toEqual([]);
  });

  test("a warning says how much and what to write, and goes when it is written", () => {
    const told = (modes: typeof plain.modes, shaken?: number) =>
      modeWarnings(modes, shaken).filter((w) => w.includes("timoshenko")).length;
    expect(told(plain.modes)).toBe(1);
    expect(told(sheared.modes)).toBe(0);
    // Modes far above anything the motors shake are not worth a word.
    expect(told(plain.modes, plain.modes.described[0].frequency)).toBe(0);
  });
});
