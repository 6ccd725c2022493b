/** Modes that share a frequency, or nearly do. */

import { describe, expect, test } from "vitest";
import { parseFrameSource } from "../../src/frame/change.ts";
import { inputFrame } from "../../src/reduced/input-frame.ts";
import { clustersOf, ownSlopes, slopesOf } from "../../src/reduced/slopes.ts";
import { crossSections } from "../modes/toys.ts";
import { derivativesOf, inputNamed, type Subject, solved, subject } from "./differenced.ts";

const lump = (mass: number, x: number, y: number) => ({
  mass,
  at: [x, y, 8],
  size: [8, 8, 8],
  on: "hub",
});

/** A square hub with four arms at 45 degrees; lumps on the axes and on the diagonals, ahead by so many g. */
function square(ahead = 0): Subject {
  const { stack: _stack, candidates: _candidates, ...sections } = crossSections();
  const frame = {
    version: 1,
    name: "square",
    ...sections,
    meshSize: 14,
    plates: { hub: { material: "metal", thickness: 3, z: 0, outline: corners(40) } },
    arms: {
      arm: {
        ...(sections.arms as { arm: object }).arm,
        root: [35, 35],
        tip: [100, 100],
      },
    },
    bodies: {
      front: lump(10 + ahead, 28, 0),
      rear: lump(10 + ahead, -28, 0),
      left: lump(10, 0, 28),
      right: lump(10, 0, -28),
      "front left": lump(10, 20, 20),
      "front right": lump(10, 20, -20),
      "rear left": lump(10, -20, 20),
      "rear right": lump(10, -20, -20),
    },
  };
  return subject(parseFrameSource(JSON.stringify(frame), "square.jsonc"), 9);
}

const corners = (a: number) => [
  [a, a],
  [-a, a],
  [-a, -a],
  [a, -a],
];

/** Eigenvalues with the input changed, in ascending order. */
const changed = (of: Subject, name: string, change: number) =>
  solved(inputFrame(of.source, inputNamed(of, name), of.meshSize)(change), of.count).modes.lambda;

const pick = (of: ArrayLike<number>, group: readonly number[]) => group.map((i) => of[i]);
const ascending = (values: readonly number[]) => [...values].sort((a, b) => a - b);

describe("a frame with fourfold symmetry", () => {
  const of = square();
  const groups = clustersOf(of.lambda);
  const pairs = groups.filter(([i, j]) => of.lambda[j] / of.lambda[i] - 1 < 1e-7);
  const name = "bodies.front.mass";
  const slopes = slopesOf(of.lambda, derivativesOf(of, inputNamed(of, name)), groups);

  test("has pairs of one frequency", () => {
    expect(pairs.length).toBeGreaterThan(1);
    for (const group of pairs) expect(group.length).toBe(2);
  });

  test("each branch of a pair has its derivative, whichever vectors the solver gave", () => {
    const h = 1e-4 * 0.01;
    const [up, down, up2, down2] = [h, -h, h / 2, -h / 2].map((v) => changed(of, name, v));
    for (const group of pairs) {
      // what rises fastest is the upper one after the change and the lower one before it
      const after = [pick(up, group), pick(up2, group)];
      const before = [pick(down, group).reverse(), pick(down2, group).reverse()];
      const central = after.map((l, k) =>
        l.map((v, i) => (v - before[k][i]) / (2 * [h, h / 2][k])),
      );
      const expected = central[1].map((v, i) => v + (v - central[0][i]) / 3);
      const found = ascending(pick(slopes, group));
      const largest = Math.max(...expected.map(Math.abs));
      found.forEach((v, i) => {
        expect(Math.abs(v - expected[i]) / largest).toBeLessThan(1e-5);
      });
    }
  });
});

test("modes that are merely close move as a cluster once they move by more than they lie apart", () => {
  const of = square(0.005);
  const name = 'bodies."front left".mass';
  const derivatives = derivativesOf(of, inputNamed(of, name));
  const groups = clustersOf(of.lambda);
  const own = ownSlopes(of.lambda, derivatives);
  const slopes = slopesOf(of.lambda, derivatives, groups);
  const apart = (l: ArrayLike<number>, [i, j]: readonly number[]) => l[j] - l[i];
  const group = groups.find((g) => g.length === 2 && apart(slopes, g) !== 0);
  if (group === undefined) throw new Error("no pair");
  // a hundred times the lightness that parts them
  const h = 0.5e-3;
  const [up, down] = [h, -h].map((v) => changed(of, name, v));
  const split = (apart(up, group) + apart(down, group)) / (2 * h);
  const [least, most] = ascending(pick(slopes, group));
  expect(split / (most - least)).toBeGreaterThan(0.97);
  expect(split / (most - least)).toBeLessThan(1.03);
  // by themselves, as for a change that is small beside their distance, they would hardly part
  expect(Math.abs(apart(own, group))).toBeLessThan(0.2 * (most - least));
  // together they fall as the sum of their own
  const sum = (l: ArrayLike<number>) => pick(l, group).reduce((s, v) => s + v, 0);
  expect(sum(slopes) / sum(own)).toBeCloseTo(1, 9);
});
