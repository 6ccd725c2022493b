/**
 * Theorems about natural frequencies, on a small frame with all kinds of parts: two plates, standoffs,
 * arms, a soft-mounted battery.
 *
 * Separation (A. Cauchy, H. Poincare; see W. T. Thomson, Theory of Vibration, and any text on matrix
 * analysis): eigenvalues of two systems that differ by r constraints, r springs or masses of rank r
 * interlace. Scaling: the equations of motion without units.
 */

import { describe, expect, test } from "vitest";
import { expectClose } from "./compare.ts";
import { solveFrame } from "./frequencies.ts";

interface Scale {
  /** on every length */
  readonly length?: number;
  /** on every modulus */
  readonly modulus?: number;
  /** on every density and mass */
  readonly mass?: number;
}

/** Every quantity of the frame carries its scale, so that it can be written larger or heavier. */
function smallFrame({ length: s = 1, modulus: e = 1, mass: m = 1 }: Scale, more: object = {}) {
  const mm = (...v: number[]) => v.map((x) => x * s);
  const grams = (v: number) => v * m * s ** 3;
  // Pad stiffness must grow as E L: m omega^2 with omega as the frame's own.
  const hertz = (f: number) => (f * Math.sqrt(e / m)) / s;
  const plate = { material: "sheet", symmetry: "all four corners" };
  return {
    meshSize: 8 * s,
    materials: {
      sheet: {
        kind: "measured",
        E1: 60 * e,
        E2: 50 * e,
        G12: 5 * e,
        G13: 3 * e,
        nu12: 0.1,
        density: 1.5 * m,
      },
    },
    points: { eye: mm(30, 20, 0) },
    plates: {
      base: { ...plate, thickness: 2 * s, z: 0, outline: [mm(40, 10), mm(25, 20)] },
      top: { ...plate, thickness: 1.5 * s, z: 20 * s, outline: [mm(35, 12), mm(30, 16)] },
    },
    arms: {
      arm: {
        material: "sheet",
        thickness: 2 * s,
        width: mm(12, 9),
        root: mm(20, 15),
        tip: mm(60, 50),
        copies: "all four corners",
        joint: { kind: "one piece", plate: "base" },
      },
    },
    standoffs: {
      post: {
        at: mm(22, 10),
        copies: "all four corners",
        between: ["base", "top"],
        section: { shape: "rod", diameter: 4 * s },
        material: "sheet",
      },
    },
    links: { eye: { point: "eye", plate: "base", footprint: 6 * s } },
    bodies: {
      motor: {
        mass: grams(12),
        at: mm(60, 50, 6),
        size: mm(18, 18, 12),
        on: "arm",
        copies: "all four corners",
      },
      battery: {
        mass: grams(60),
        at: mm(0, 0, 35),
        size: mm(50, 25, 20),
        on: "top",
        hold: "soft",
        soft: { bounce: hertz(80) },
      },
      ...more,
    },
  };
}

/** All eigenvalues up to a mode, (rad/s)^2, the zeros of the rigid-body motions included. */
function eigenvalues(frame: object, modes: number): number[] {
  const solved = solveFrame(frame, { modes }).modes;
  return [...solved.rigid.map(() => 0), ...solved.lambda];
}

const elastic = (frame: object) =>
  solveFrame(frame, { modes: 12 }).modes.described.map((mode) => mode.frequency);

/** Rounding of eigenvalues that theory has equal, relative. */
const ROUNDING = 1e-7;

/** lambda_i <= stiffened_i <= lambda_(i + r) for all i that are known. */
function expectInterlaced(loose: readonly number[], stiff: readonly number[], rank: number) {
  for (let i = 0; i < Math.min(loose.length, stiff.length); i++) {
    expect(stiff[i], `eigenvalue ${i + 1}`).toBeGreaterThanOrEqual(loose[i] * (1 - ROUNDING));
  }
  for (let i = 0; i + rank < loose.length && i < stiff.length; i++) {
    expect(stiff[i], `eigenvalue ${i + 1}`).toBeLessThanOrEqual(loose[i + rank] * (1 + ROUNDING));
  }
}

describe("separation theorems", () => {
  const free = eigenvalues(smallFrame({}), 14);

  test("a body with three translations and no inertia lowers every mode, by at most three places", () => {
    const heavier = eigenvalues(smallFrame({}, { lump: { mass: "20 g", on: "eye" } }), 14);
    expectInterlaced(heavier, free, 3);
    expect(heavier[8]).toBeLessThan(free[8] * 0.999);
  });

  test("a spring to the ground raises every mode, by at most one place", () => {
    const springs = { tether: { between: ["eye", "ground"], z: "20 N/mm" } };
    const held = eigenvalues({ ...smallFrame({}), springs }, 14);
    expectInterlaced(free, held, 1);
    expect(held.filter((v) => v === 0).length).toBe(5);
  });

  test("a support in one direction raises every mode, and more than any spring there", () => {
    const supports = { pin: { point: "eye", fix: ["z"] } };
    const pinned = eigenvalues({ ...smallFrame({}), supports }, 14);
    const springs = { tether: { between: ["eye", "ground"], z: "20 N/mm" } };
    const sprung = eigenvalues({ ...smallFrame({}), springs }, 14);
    expectInterlaced(free, pinned, 1);
    expectInterlaced(sprung, pinned, 1);
  });

  test("more elements in an arm never raise a frequency (nested, Rayleigh-Ritz)", () => {
    const withElements = (elements: number) => {
      const frame = smallFrame({});
      return eigenvalues({ ...frame, arms: { arm: { ...frame.arms.arm, elements } } }, 14);
    };
    const [coarse, fine] = [withElements(4), withElements(8)];
    fine.forEach((v, i) => {
      expect(v, `eigenvalue ${i + 1}`).toBeLessThanOrEqual(coarse[i] * (1 + ROUNDING));
    });
  });
});

describe("scaling laws", () => {
  const asDrawn = elastic(smallFrame({}));

  test("twice as large in the same materials: half the frequencies", () => {
    const large = elastic(smallFrame({ length: 2 }));
    expectClose(
      large.map((f) => 2 * f),
      asDrawn,
      ROUNDING,
    );
  });

  test("four times the mass everywhere: half the frequencies", () => {
    const heavy = elastic(smallFrame({ mass: 4 }));
    expectClose(
      heavy.map((f) => 2 * f),
      asDrawn,
      ROUNDING,
    );
  });

  test("modulus and density together change nothing", () => {
    expectClose(elastic(smallFrame({ modulus: 3, mass: 3 })), asDrawn, ROUNDING);
  });
});
