/** The whole way, seen from outside. */

import { describe, expect, test } from "vitest";
import { analyse, analyseModes, prepare } from "../src/analyse.ts";
import { InputError } from "../src/errors.ts";
import { crossFrame, crossSections, frameOf } from "./modes/toys.ts";

const file = crossFrame({ lopsided: true });
/** The middle of the hub. */
const SQUARE = [
  [31, 15],
  [-31, 15],
  [-31, -15],
  [31, -15],
];

describe("stages", () => {
  test("are told in order", () => {
    const told: string[] = [];
    analyse(file, { modes: 20, progress: (stage) => told.push(stage) });
    expect(told.length).toBeGreaterThanOrEqual(4);
    expect(new Set(told).size).toBe(told.length);
    expect(told[0]).toContain("mesh");
    expect(told[told.length - 1]).toContain("placing");
  });

  test("prepare knows masses and speeds before any mode", () => {
    const p = prepare(file);
    // hub 120 x 80 x 3, arms, motors and propellers 4 x 37 g, lump 60 g, board 20 g
    expect(p.mass.mass).toBeGreaterThan(0.0778 + 4 * 0.037 + 0.08);
    expect(p.mass.parts.reduce((s, q) => s + q.mass, 0)).toBeCloseTo(p.mass.mass, 12);
    expect(p.excitation?.speeds.hoverThrust).toBeCloseTo((p.mass.mass * 9.80665) / 4, 12);
    expect(p.mesh.size).toBe(30e-3);
  });

  test("the assembled mass is the one drawn", () => {
    const a = analyseModes(file, { modes: 6 });
    expect((a.assembledMass?.mass ?? 0) / a.mass.mass).toBeCloseTo(1, 9);
    a.assembledMass?.cg.forEach((v, i) => {
      expect(v).toBeCloseTo(a.mass.cg[i], 9);
    });
    expect(a.warnings.join()).not.toContain("does not agree");
  });

  test("a frame that is held has no free mass to compare, and no rigid motions", () => {
    const held = crossFrame(
      {},
      {
        supports: {
          bench: {
            plate: "hub",
            within: SQUARE,
            fix: "all",
          },
        },
      },
    );
    const a = analyseModes(held, { modes: 6 });
    expect(a.assembledMass).toBeUndefined();
    expect(a.modes.rigid.length).toBe(0);
    expect(a.modes.evidence.counted).toBe(a.modes.evidence.found);
  });
});

describe("options", () => {
  test("number of modes and mesh size are taken", () => {
    const a = analyse(file, { modes: 12, meshSize: 20e-3 });
    expect(a.modes.lambda.length).toBe(12);
    expect(a.mesh.size).toBe(20e-3);
  });

  test("a finer mesh brings the modes down, and not by much", () => {
    const [coarse, fine] = [20e-3, 10e-3].map((meshSize) =>
      analyseModes(file, { modes: 8, meshSize }).modes.described.map((m) => m.frequency),
    );
    fine.forEach((f, i) => {
      expect(f / coarse[i]).toBeGreaterThan(0.95);
      expect(f / coarse[i]).toBeLessThan(1.01);
    });
  });

  test("levels do not hang on the mesh or on the number of modes", () => {
    const level = (meshSize: number, modes: number) =>
      analyse(file, { meshSize, modes }).ranking?.candidates.map((c) => [c.gyro, c.accel]) ?? [];
    const few = level(15e-3, 25);
    level(15e-3, 60).forEach(([gyro, accel], i) => {
      expect(few[i][0] / gyro).toBeCloseTo(1, 2);
      expect(few[i][1] / accel).toBeCloseTo(1, 1.5);
    });
  });
});

test("the same file gives the same numbers to the last bit", () => {
  const once = () => {
    const a = analyse(file, { modes: 20 });
    return JSON.stringify([
      Array.from(a.modes.lambda),
      a.modes.shapes.map((s) => Array.from(s)),
      a.ranking,
    ]);
  };
  expect(once()).toBe(once());
});

describe("warnings and errors", () => {
  test("modes that stop short of what is shaken are told, enough of them are not", () => {
    const short = analyse(file, { modes: 8 }).warnings.filter((w) => w.includes("more modes"));
    expect(short.length).toBe(1);
    expect(short[0]).toContain("the 8 modes reach");
    expect(analyse(file).warnings.filter((w) => w.includes("more modes"))).toEqual([]);
  });

  test("forces that are all zero are refused", () => {
    const silent = crossFrame(
      {},
      {
        excitation: {
          balanceGrade: 0,
          bladeDifference: 0,
          thrustRipple: 0,
          torqueRipple: 0,
          thrustRippleDouble: 0,
          torqueRippleDouble: 0,
        },
      },
    );
    expect(() => analyse(silent)).toThrow(InputError);
  });

  describe("a boom on a universal joint", () => {
    const { propulsion: _, stack: __, candidates: ___, ...plain } = crossSections();
    const hinged = (more: object) =>
      frameOf({
        ...plain,
        points: { mast: [0, 0, 1.5], boom: [0, 0, 1.5], end: [0, 0, 60] },
        members: {
          boom: {
            from: "boom",
            to: "end",
            material: "metal",
            section: { shape: "rod", diameter: "4 mm" },
          },
        },
        links: {
          foot: { point: "mast", plate: "hub", footprint: "8 mm" },
          hinge: { points: ["mast", "boom"], ties: ["x", "y", "z", "rz"] },
        },
        ...more,
      });

    test("on the bench: two motions without stiffness are told", () => {
      const bench = { plate: "hub", within: SQUARE, fix: "all" };
      const { warnings } = analyseModes(hinged({ supports: { bench } }), { modes: 10 });
      expect(warnings.join()).toMatch(/2 motions meet no stiffness/);
    });

    test("in flight as well", () => {
      const { warnings } = analyseModes(hinged({}), { modes: 10 });
      expect(warnings.join()).toMatch(/2 motions meet no stiffness/);
    });

    test("and none where nothing is loose", () => {
      const { warnings } = analyseModes(frameOf(plain), { modes: 10 });
      expect(warnings.join()).not.toContain("no stiffness");
    });
  });
});
