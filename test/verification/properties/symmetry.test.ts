/**
 * Modes of symmetric frames: every shape is symmetric or antisymmetric, or one of several at the same
 * frequency that the symmetry takes into one another.
 */

import { describe, expect, test } from "vitest";
import { expand, restrict } from "../../../src/matrices/reduction.ts";
import { solveFrame } from "../frequencies.ts";
import { imageOf, mirrored, nextCopy, turnedFourTimes } from "./copies.ts";
import { type MemberFrame, memberFrame } from "./member-frames.ts";
import { QUARTER } from "./multirotor-moves.ts";
import { fileOf, type Multirotor, multirotor, type PlateBody, type Vec2 } from "./multirotors.ts";
import { forAll, mapValues } from "./runs.ts";
import { MIRROR_Y, type Orthogonal } from "./space.ts";
import { ALL, dot, eigenvaluesOf, shapesOf, times } from "./spectra.ts";

/** Eigenvalues nearer to each other than this are taken together, relative. */
const SAME = 1e-5;
/** Rounding of eigenvalues, 1e-10, over the gap between those that are kept apart. */
const MIXED = 1e-5;

/** Modes of one eigenvalue, and how the symmetry takes them into one another. */
interface Group {
  /** row by row; +1 or -1 for a simple mode */
  readonly C: readonly (readonly number[])[];
  /** what the program says of the first of them; undefined for rigid-body motions */
  readonly said: string | undefined;
}

function groupsOf(frame: MemberFrame, Q: Orthogonal, copies: number): Group[] {
  const analysis = solveFrame(frame, { modes: ALL });
  const { system, mesh, modes } = analysis;
  const image = imageOf(mesh, Q, nextCopy(copies));
  const lambda = eigenvaluesOf(analysis);
  const shapes = shapesOf(analysis);
  const starts = lambda.flatMap((l, i) => (i === 0 || l > lambda[i - 1] * (1 + SAME) ? [i] : []));
  return starts.map((start, k) => {
    const group = shapes.slice(start, starts[k + 1]);
    const C = group.map((phi) => {
      const seen = restrict(system.reduction, image(expand(system.reduction, phi)));
      const Mseen = times(system.M, seen);
      return group.map((other) => dot(other, Mseen));
    });
    return { C, said: modes.described[start - modes.rigid.length]?.symmetry };
  });
}

/** C'C = 1: nothing leaves the group of modes. */
function expectClosed(C: readonly (readonly number[])[]) {
  C.forEach((row, i) => {
    C.forEach((other, j) => {
      expect(Math.abs(dot(row, other) - +(i === j))).toBeLessThan(MIXED);
    });
  });
}

describe("a frame of members and its mirror image, joined", () => {
  test("each simple mode is symmetric or antisymmetric, and the program says which", () => {
    forAll(memberFrame(), 10, (part) => {
      const groups = groupsOf(mirrored(part, MIRROR_Y), MIRROR_Y, 2);
      for (const { C } of groups) expectClosed(C);
      const simple = groups.filter(({ C, said }) => C.length === 1 && said !== undefined);
      for (const { C, said } of simple) {
        expect(said).toBe(`${C[0][0] > 0 ? "symmetric" : "antisymmetric"} left to right`);
      }
      expect(new Set(simple.map(({ said }) => said)).size).toBe(2);
    });
  });
});

describe("a frame that is the same after a quarter turn", () => {
  test("each mode keeps or turns its sign, or belongs to a pair that turns as arrows do", () => {
    forAll(memberFrame({ isotropic: true, holding: "free" }), 6, (part) => {
      const groups = groupsOf(turnedFourTimes(part, QUARTER), QUARTER, 4);
      for (const { C } of groups) expectClosed(C);
      // A quarter turn of two arrows at right angles: nothing of either stays with itself.
      const arrows = groups.filter(
        ({ C }) => C.length === 2 && Math.abs(C[0][0]) < MIXED && Math.abs(C[1][1]) < MIXED,
      );
      expect(arrows.length).toBeGreaterThan(3);
    });
  });
});

/** The craft made the same on the left and on the right: what is drawn on the left counts. */
function evenSided(craft: Multirotor): Multirotor {
  const onAxis = ([x]: Vec2): Vec2 => [x, 0];
  const inPlane = (b: PlateBody): PlateBody => ({
    ...b,
    at: b.copies === "none" ? [b.at[0], 0, b.at[2]] : b.at,
    ...(b.inertia && { inertia: b.copies === "none" ? { ...b.inertia, xy: 0, yz: 0 } : b.inertia }),
  });
  return {
    ...craft,
    sheets: mapValues(craft.sheets, (s) => ({
      ...s,
      ...(s.angles && { angles: s.angles.map((a) => (a > 0 ? 90 : 0)) }),
    })),
    plates: mapValues(craft.plates, (p) => {
      const left = p.outline.filter(([, y]) => y > 1);
      const right = left.toReversed().map(([x, y]): Vec2 => [x, -y]);
      return {
        ...p,
        warp: 0,
        outline: [...left, ...right],
        holes: p.holes.map((h) => ({ ...h, at: onAxis(h.at) })),
      };
    }),
    arms: mapValues(craft.arms, (a) => ({
      ...a,
      // Cloth at an angle to x meets the left and the right arm at different angles.
      warp: "along the arm" as const,
      tip: a.copies === "none" ? onAxis(a.tip) : a.tip,
    })),
    posts: mapValues(craft.posts, (p) => (p.copies === "none" ? { ...p, at: onAxis(p.at) } : p)),
    points: mapValues(craft.points, ([x, , z]) => [x, 0, z] as const),
    bodies: mapValues(craft.bodies, inPlane),
  };
}

test("a multirotor alike on both sides: the program says of each simple mode which symmetry it has", () => {
  forAll(multirotor(), 6, (craft) => {
    const { lambda, described } = solveFrame(fileOf(evenSided(craft)), { modes: 20 }).modes;
    const simple = described.filter((_, i) => {
      const apart = (j: number) => Math.abs(lambda[j] / lambda[i] - 1) > 1e-4;
      return (i === 0 || apart(i - 1)) && i < 19 && apart(i + 1);
    });
    expect(simple.length).toBeGreaterThan(10);
    const words = simple.map((mode) => mode.symmetry);
    expect(new Set(words)).toEqual(
      new Set(["symmetric left to right", "antisymmetric left to right"]),
    );
  });
});

test.each([62.7, 40.002, 55.54, 50.25])(
  "a plate %d mm wide, whose grid falls on half micrometres: the same",
  (width) => {
    const y = width / 2;
    const outline = [
      [40, y],
      [-40, y],
      [-40, -y],
      [40, -y],
    ];
    const { described } = solveFrame(
      {
        meshSize: width / 8,
        materials: { sheet: { kind: "isotropic", E: 70, nu: 0.3, density: 2.7 } },
        plates: { sheet: { material: "sheet", thickness: 2, z: 0, outline } },
      },
      { modes: 10 },
    ).modes;
    for (const { symmetry } of described) expect(symmetry).toMatch(/symmetric left to right$/);
  },
);
