/** How often each is best, on samples counted by hand. */

import { describe, expect, test } from "vitest";
import { InputError } from "../../src/errors.ts";
import { type Chances, chancesOf, type SpotSample, spotChances } from "../../src/study/chances.ts";

/** Scores by name; "out" is ruled out. */
const sample = (scores: Record<string, number | "out">): SpotSample => ({
  spots: Object.entries(scores).map(([name, score]) =>
    score === "out" ? { name, score: -50, ruledOut: "cantilevered" } : { name, score },
  ),
});
const shares = ({ rivals }: Chances) =>
  rivals.map(({ name, best, near, out }) => [name, best.share, near.share, out.share]);

test("the least score is the best, and whatever is within 1 dB of it is near", () => {
  const samples = [
    sample({ rear: 3, centre: 0 }),
    sample({ rear: 0.9, centre: 0 }),
    sample({ rear: 0, centre: 1 }),
    sample({ rear: 1.2, centre: 0.1 }),
  ];
  expect(shares(spotChances(samples))).toEqual([
    ["centre", 0.75, 1, 0],
    ["rear", 0.25, 0.5, 0],
  ]);
});

test("a spot ruled out is never best nor near, however good its score", () => {
  const samples = [sample({ a: "out", b: 0 }), sample({ a: 0, b: 5 })];
  const chances = spotChances(samples);
  expect(shares(chances)).toEqual([
    ["a", 0.5, 0.5, 0.5],
    ["b", 0.5, 0.5, 0],
  ]);
  expect(chances.none.share).toBe(0);
});

test("samples in which all are ruled out are counted, and are no one's", () => {
  const chances = spotChances([sample({ a: "out", b: "out" }), sample({ a: 0, b: 5 })]);
  expect(chances.none.share).toBe(0.5);
  expect(shares(chances)).toEqual([
    ["a", 0.5, 0.5, 0.5],
    ["b", 0, 0, 0.5],
  ]);
});

test("mirrored spots that differ by rounding share the lead", () => {
  const chances = spotChances([
    sample({ left: 0, right: 1e-12, rear: 4 }),
    sample({ left: 1e-12, right: 0, rear: 4 }),
    sample({ left: 0, right: 1e-12, rear: 0.005 }),
  ]);
  const best = Object.fromEntries(chances.rivals.map((r) => [r.name, r.best.share]));
  expect(best.left).toBe(best.right);
  expect(best.left).toBeCloseTo((1 / 2 + 1 / 2 + 1 / 3) / 3, 12);
  expect(best.rear).toBeCloseTo(1 / 9, 12);
});

test("a spot that a sample lacks counts as ruled out there", () => {
  expect(shares(spotChances([sample({ a: 0 }), sample({ a: 0, b: 2 })]))).toEqual([
    ["a", 1, 1, 0],
    ["b", 0, 0, 0.5],
  ]);
});

test("shares of the best and of none sum to one", () => {
  const chances = chancesOf(
    ["a", "b", "c"],
    Array.from({ length: 97 }, (_, i) =>
      [0, 1, 2].map((j) =>
        i % (j + 5) === 0 ? undefined : Math.floor(((i * 37 * (j + 1)) % 11) / 3),
      ),
    ),
  );
  const sum = chances.rivals.reduce((total, r) => total + r.best.share, chances.none.share);
  expect(sum).toBeCloseTo(1, 12);
  expect(chances.rivals.every((r) => r.near.share >= r.best.share)).toBe(true);
});

test("rivals that are all endless share the lead, one alone never leads a finite one", () => {
  const { POSITIVE_INFINITY: endless } = Number;
  expect(shares(chancesOf(["a", "b"], [[endless, endless]])).map((r) => r[1])).toEqual([0.5, 0.5]);
  expect(shares(chancesOf(["a", "b"], [[endless, 70]]))[0].slice(0, 2)).toEqual(["b", 1]);
});

describe("refused", () => {
  test("no samples", () => {
    expect(() => spotChances([])).toThrow(/at least 1 sample, but there are 0/);
    expect(() => chancesOf(["a"], [])).toThrow(InputError);
  });

  test("a score that is no number, by the spot's name", () => {
    expect(() => spotChances([sample({ a: 1, "rear deck": Number.NaN })])).toThrow(
      /"rear deck" must be a number, but is NaN dB/,
    );
  });

  test("rows of another length", () => {
    expect(() => chancesOf(["a", "b"], [[1]])).toThrow(/each of the 2 rivals, but one has 1/);
  });
});
