/** Modes told again by their shapes, on shapes made for it. */

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { matchModes } from "../../src/study/match-modes.ts";
import { madeOutcome, samplesOf, turned } from "./made-outcomes.ts";

const DEGREE = Math.PI / 180;
const same = turned(6, []);
const apart = [100, 150, 200, 300, 400, 500];
const partners = (m: ReturnType<typeof matchModes>) => m.pairs.map(({ a, b }) => [a, b]);

describe("modes far apart", () => {
  test("are found again in any order, whatever their sign and size", () => {
    const order = fc.shuffledSubarray([0, 1, 2, 3, 4, 5], { minLength: 6 });
    const factors = fc.array(fc.constantFrom(-3, -1, 0.2, 1), { minLength: 6, maxLength: 6 });
    fc.assert(
      fc.property(order, factors, (place, factor) => {
        const a = madeOutcome(apart, same);
        const b = madeOutcome(
          apart,
          place.map((k, i) => same[k].map((v) => factor[i] * v)),
        );
        const match = matchModes(a, b, 6);
        expect(match.pairs.map((p) => place[p.b - 1] + 1)).toEqual(match.pairs.map((p) => p.a));
        expect(match.pairs.length).toBe(6);
        for (const { mac } of match.pairs) expect(mac).toBeCloseTo(1, 12);
      }),
      { seed: 11, numRuns: 50 },
    );
  });

  test("carry cos^2 of the angle by which they turned", () => {
    const b = madeOutcome(apart, turned(6, [[0, 1, 25 * DEGREE]]));
    const { pairs } = matchModes(madeOutcome(apart, same), b, 6);
    expect(pairs[0]).toMatchObject({ a: 1, b: 1 });
    expect(pairs[0].mac).toBeCloseTo(Math.cos(25 * DEGREE) ** 2, 12);
  });

  test("are left alone when they could be paired either way", () => {
    const b = madeOutcome(apart, turned(6, [[0, 1, 45 * DEGREE]]));
    const match = matchModes(madeOutcome(apart, same), b, 6);
    expect(partners(match)).toEqual([3, 4, 5, 6].map((k) => [k, k]));
    expect(match.lost).toEqual([1, 2]);
    expect(match.gained).toEqual([1, 2]);
  });

  test("are lost and gained when a part goes and another comes", () => {
    const a = madeOutcome(apart.slice(0, 5), same.slice(0, 5));
    const b = madeOutcome(
      apart.slice(0, 5),
      [0, 1, 5, 3, 4].map((k) => same[k]),
    );
    const match = matchModes(a, b, 5);
    expect(partners(match)).toEqual([1, 2, 4, 5].map((k) => [k, k]));
    expect(match.lost).toEqual([3]);
    expect(match.gained).toEqual([3]);
  });

  test("have partners above the count that was asked about", () => {
    const b = madeOutcome(
      apart,
      [2, 3, 4, 5, 0, 1].map((k) => same[k]),
    );
    const match = matchModes(madeOutcome(apart, same), b, 2);
    expect(partners(match)).toEqual([
      [1, 5],
      [2, 6],
      [3, 1],
      [4, 2],
    ]);
    expect([match.lost, match.gained]).toEqual([[], []]);
  });
});

describe("close modes", () => {
  const close = [100, 101, 102, 200, 300, 400];

  test("that turned among themselves are the same group, in order of frequency", () => {
    const b = madeOutcome(
      close,
      turned(6, [
        [0, 1, 50 * DEGREE],
        [1, 2, 40 * DEGREE],
        [0, 2, 30 * DEGREE],
      ]),
    );
    const { pairs, lost } = matchModes(madeOutcome(close, same), b, 6);
    expect(pairs.map((p) => [p.a, p.b])).toEqual([1, 2, 3, 4, 5, 6].map((k) => [k, k]));
    expect(lost).toEqual([]);
    for (const p of pairs.slice(0, 3)) expect(p.together).toBeCloseTo(1, 12);
    for (const p of pairs.slice(3)) expect(p.together).toBeUndefined();
  });

  test("need be close in one of the two only", () => {
    const wide = [100, 112, 140, 200, 300, 400];
    const turn = turned(6, [[0, 1, 45 * DEGREE]]);
    const forth = matchModes(madeOutcome(close, same), madeOutcome(wide, turn), 6);
    const back = matchModes(madeOutcome(wide, turn), madeOutcome(close, same), 6);
    for (const { pairs } of [forth, back]) {
      expect(pairs.map((p) => [p.a, p.b])).toEqual([1, 2, 3, 4, 5, 6].map((k) => [k, k]));
      expect(pairs[0].together).toBeCloseTo(1, 12);
      expect(pairs[2].together).toBeUndefined();
    }
  });

  test("that crossed and kept their shapes are told by these", () => {
    const swapped = [1, 0, 2, 3, 4, 5].map((k) => same[k]);
    const match = matchModes(madeOutcome(close, same), madeOutcome(close, swapped), 3);
    expect(partners(match)).toEqual([
      [1, 2],
      [2, 1],
      [3, 3],
    ]);
  });

  test("a third that passes through a turning pair keeps its shape", () => {
    const turn = turned(6, [[0, 1, 45 * DEGREE]]);
    // the third mode is now the lowest
    const b = madeOutcome(
      close,
      [2, 0, 1, 3, 4, 5].map((k) => turn[k]),
    );
    const match = matchModes(madeOutcome(close, same), b, 3);
    expect(partners(match)).toEqual([
      [1, 2],
      [2, 3],
      [3, 1],
    ]);
  });

  test("that turned out of their group are not the same", () => {
    const b = madeOutcome(
      close,
      turned(6, [
        [0, 1, 45 * DEGREE],
        [0, 4, 45 * DEGREE],
        [1, 5, 45 * DEGREE],
      ]),
    );
    expect(matchModes(madeOutcome(close, same), b, 2).lost).toEqual([1, 2]);
  });
});

test("frames without parts of the same name are not compared, and the reason is given", () => {
  const other = { shapes: samplesOf(same, (dof) => `other ${dof}`) };
  const match = matchModes(madeOutcome(apart, same), madeOutcome(apart, same, other), 3);
  expect(match.pairs).toEqual([]);
  expect([match.lost, match.gained]).toEqual([
    [1, 2, 3],
    [1, 2, 3],
  ]);
  expect(match.reason).toContain("too few parts of the same name");
});
