/** Modes followed along a parameter, on systems whose frequencies are known in closed form. */

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { track } from "../../src/study/track.ts";
import type { Outcome } from "../../src/variants/types.ts";
import { madeOutcome, massesOnSprings, square } from "./made-outcomes.ts";

/** Two oscillators that pass each other at p = 2.5 and 150 Hz, coupled by c (rad/s)^2. */
const two = (p: number, c = 0) =>
  massesOnSprings([
    [square(100 + 20 * p), c],
    [c, square(200 - 20 * p)],
  ]);
const steps = [0, 1, 2, 3, 4, 5];
const frequencies = (b: { frequencies: readonly (number | undefined)[] }) =>
  b.frequencies.map((f) => Math.round(f ?? Number.NaN));
const counted = (family: (p: number) => Outcome, at = steps) => {
  const asked: number[] = [];
  const between = (i: number, f: number) => {
    const p = at[i] + f * (at[i + 1] - at[i]);
    asked.push(p);
    return family(p);
  };
  return { outcomes: at.map(family), between, asked };
};

describe("two modes that do not know of each other", () => {
  test("are followed through their crossing without a point between", () => {
    const { outcomes, between, asked } = counted(two);
    const { branches, crossings, veerings } = track(outcomes, between);
    expect(branches.map(frequencies)).toEqual([
      [100, 120, 140, 160, 180, 200],
      [200, 180, 160, 140, 120, 100],
    ]);
    expect(branches.map((b) => b.modes)).toEqual([
      [1, 1, 1, 2, 2, 2],
      [2, 2, 2, 1, 1, 1],
    ]);
    expect(asked).toEqual([]);
    expect(veerings).toEqual([]);
    expect(crossings.length).toBe(1);
    expect(crossings[0].at).toBeCloseTo(2.5, 9);
    expect(crossings[0].frequency).toBeCloseTo(150, 9);
  });

  test("are followed through a value at which they coincide in any mixture", () => {
    const mixture = (f: number) =>
      madeOutcome(
        [f, f],
        [
          [Math.SQRT1_2, Math.SQRT1_2],
          [Math.SQRT1_2, -Math.SQRT1_2],
        ],
      );
    const family = (p: number) => (p === 2.5 ? mixture(150) : two(p));
    const { outcomes, between } = counted(family, [1.5, 2, 2.5, 3, 3.5]);
    const { branches, crossings, veerings } = track(outcomes, between);
    expect(branches.map(frequencies)).toEqual([
      [130, 140, 150, 160, 170],
      [170, 160, 150, 140, 130],
    ]);
    expect(crossings.map((c) => Math.round(c.frequency))).toEqual([150]);
    expect(veerings).toEqual([]);
  });
});

describe("two modes that are weakly coupled", () => {
  // Leissa 1974, Perkins & Mote 1986 (from memory): squares of the frequencies are the mean of the two
  // diagonal terms -+ sqrt((half their difference)^2 + c^2), so the gap is least, 2 c, where these are equal.
  const c = 0.03 * square(150);
  const gap = (Math.sqrt(square(150) + c) - Math.sqrt(square(150) - c)) / (2 * Math.PI);

  test("veer: they keep their order, exchange their shapes and never meet", () => {
    const { outcomes, between, asked } = counted((p) => two(p, c));
    const { branches, crossings, veerings } = track(outcomes, between);
    expect(branches.map((b) => b.modes)).toEqual([new Array(6).fill(1), new Array(6).fill(2)]);
    expect(crossings).toEqual([]);
    expect(veerings.length).toBe(1);
    expect(veerings[0]).toMatchObject({ branches: [0, 1], modes: [1, 2], resolved: true });
    expect(veerings[0].at).toBeCloseTo(2.5, 2);
    expect(veerings[0].gap / gap).toBeCloseTo(1, 2);
    // only where they are close
    expect(Math.min(...asked)).toBeGreaterThan(2);
    expect(Math.max(...asked)).toBeLessThan(3);
  });

  test("keep their order where nothing between can be had, and that is said", () => {
    const at = [0, 1.5, 2.5, 3.5, 5];
    const outcomes = at.map((p) => two(p, c));
    const { branches, veerings, asked } = track(outcomes, undefined, { values: at });
    expect(asked).toBe(0);
    expect(branches.map((b) => b.modes)).toEqual([new Array(5).fill(1), new Array(5).fill(2)]);
    expect(veerings.length).toBe(1);
    expect(veerings[0]).toMatchObject({ branches: [0, 1], resolved: false });
    expect(veerings[0].gap / gap).toBeCloseTo(1, 2);
  });

  test("keep their order even where each is more like the other's former self", () => {
    const outcomes = [0, 55].map((degrees) => {
      const [x, y] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
      return madeOutcome(
        [100, 150],
        [
          [x, y],
          [-y, x],
        ],
      );
    });
    const { branches, veerings } = track(outcomes);
    expect(branches.map((b) => b.modes)).toEqual([
      [1, 1],
      [2, 2],
    ]);
    expect(veerings).toMatchObject([{ branches: [0, 1], modes: [1, 2], gap: 50, resolved: false }]);
  });

  test("keep their order at every strength of coupling that sixteenths of a step can show", () => {
    const strength = fc.double({ min: 0.006, max: 0.2, noNaN: true });
    fc.assert(
      fc.property(strength, fc.double({ min: -0.5, max: 0.5, noNaN: true }), (weak, shift) => {
        const family = (p: number) => two(p + shift, weak * square(150));
        const { outcomes, between } = counted(family);
        const { branches, veerings } = track(outcomes, between);
        expect(branches.map((b) => b.modes)).toEqual([new Array(6).fill(1), new Array(6).fill(2)]);
        expect(veerings.length).toBe(1);
        const [up, down] = [1 + weak, 1 - weak].map((v) => 150 * Math.sqrt(v));
        expect(Math.abs(veerings[0].gap / (up - down) - 1)).toBeLessThan(0.1);
      }),
      { seed: 3, numRuns: 60 },
    );
  });

  test("by far more than their distance from each other do not veer", () => {
    const family = (p: number) =>
      massesOnSprings([
        [square(100 + 2 * p), c],
        [c, square(200 - 2 * p)],
      ]);
    const { veerings, crossings } = track(steps.map(family));
    expect([veerings, crossings]).toEqual([[], []]);
  });
});

describe("three modes", () => {
  test("one crosses two that veer", () => {
    const c = 0.04 * square(150);
    const family = (p: number) =>
      massesOnSprings([
        [square(100 + 20 * p), c, 0],
        [c, square(200 - 20 * p), 0],
        [0, 0, square(130)],
      ]);
    const { outcomes, between } = counted(family);
    const { branches, crossings, veerings } = track(outcomes, between);
    const alone = branches.findIndex((b) => frequencies(b)[0] === 130);
    expect(frequencies(branches[alone])).toEqual(new Array(6).fill(130));
    const others = [0, 1, 2].filter((k) => k !== alone);
    const [lower, upper] = others.map((k) => branches[k].frequencies as number[]);
    steps.forEach((p, i) => {
      const [k1, k2] = [(100 + 20 * p) ** 2, (200 - 20 * p) ** 2];
      const root = Math.hypot((k1 - k2) / 2, 0.04 * 150 ** 2);
      expect(lower[i]).toBeCloseTo(Math.sqrt((k1 + k2) / 2 - root), 6);
      expect(upper[i]).toBeCloseTo(Math.sqrt((k1 + k2) / 2 + root), 6);
    });
    expect(veerings.map((v) => v.branches)).toEqual([others]);
    // the lower one rises from 98 to 147 Hz and falls again
    expect(crossings.map((x) => x.branches.filter((k) => k !== alone))).toEqual([
      [others[0]],
      [others[0]],
    ]);
    expect(crossings.map((x) => Math.round(x.frequency))).toEqual([130, 130]);
  });

  test("that all veer from each other keep their order", () => {
    const c = 0.05 * square(150);
    const family = (p: number) =>
      massesOnSprings([
        [square(100 + 20 * p), c, c],
        [c, square(150), c],
        [c, c, square(200 - 20 * p)],
      ]);
    const { outcomes, between } = counted(family);
    const { branches, crossings } = track(outcomes, between);
    expect(branches.map((b) => b.modes)).toEqual([1, 2, 3].map((k) => new Array(6).fill(k)));
    expect(crossings).toEqual([]);
  });

  test("one goes and another comes: branches end and begin", () => {
    const shapes = [
      [1, 0, 0, 0],
      [0, 1, 0, 0],
      [0, 0, 1, 0],
      [0, 0, 0, 1],
    ];
    const before = madeOutcome([100, 150, 200], [shapes[0], shapes[1], shapes[2]]);
    const after = madeOutcome([100, 160, 200], [shapes[0], shapes[3], shapes[2]]);
    const { branches } = track([before, before, after], () => after);
    expect(branches.map((b) => b.modes)).toEqual([
      [1, 1, 1],
      [2, 2, undefined],
      [3, 3, 3],
      [undefined, undefined, 2],
    ]);
  });
});

test("a branch says how alike its shapes are from value to value", () => {
  const outcomes = [0, 20, 50].map((degrees) => {
    const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
    return madeOutcome(
      [100, 200],
      [
        [c, s],
        [-s, c],
      ],
    );
  });
  const [first] = track(outcomes).branches;
  expect(first.alike[0]).toBeUndefined();
  expect(first.alike[1]).toBeCloseTo(Math.cos((20 * Math.PI) / 180) ** 2, 12);
  expect(first.alike[2]).toBeCloseTo(Math.cos((30 * Math.PI) / 180) ** 2, 12);
});
