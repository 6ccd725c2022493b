/** Spaces of shapes against rotations whose angles are known. */

import { describe, expect, test } from "vitest";
import { likestVectors, orthonormal, shareIn } from "../../src/study/subspace.ts";
import { dot } from "../../src/variants/assurance.ts";
import { turned } from "./made-outcomes.ts";

const DEGREE = Math.PI / 180;
const vectors = (rows: readonly (readonly number[])[]) => rows.map((r) => Float64Array.from(r));
const axes = vectors(turned(5, []));

test("a basis spans what its vectors span, and leaves out what adds nothing", () => {
  const [a, b] = vectors([
    [1, 2, 3, 4, 5],
    [1, 2, 3, 4, 5 + 1e-3],
  ]);
  const basis = orthonormal([a, b, a.map((v, i) => 2 * v - b[i])]);
  expect(basis.length).toBe(2);
  expect(dot(basis[0], basis[1])).toBeCloseTo(0, 12);
  for (const v of [a, b]) {
    const unit = v.map((x) => x / Math.sqrt(dot(v, v)));
    expect(shareIn(basis, unit)).toBeCloseTo(1, 12);
  }
});

describe("the likest vectors", () => {
  test("are the turned ones among all, with cos^2 of the greatest angle out of the plane", () => {
    const others = vectors(
      turned(5, [
        [0, 1, 50 * DEGREE],
        [1, 4, 20 * DEGREE],
      ]),
    );
    const like = likestVectors(axes, [0, 1], others, [0, 1, 2, 3, 4])!;
    expect(like.chosen).toEqual([0, 1]);
    expect(like.share).toBeCloseTo(Math.cos(20 * DEGREE) ** 2, 12);
  });

  test("must span the whole group: two that are nearly one vector do not", () => {
    const others = vectors([
      [1, 0, 0, 0, 0],
      [Math.cos(10 * DEGREE), 0, Math.sin(10 * DEGREE), 0, 0],
    ]);
    // each lies in the plane of the group, all but 3 %; the second of the group does not in theirs
    expect(likestVectors(axes, [0, 1], others, [0, 1])!.share).toBeCloseTo(0, 12);
  });

  test("need be as many as the group", () => {
    expect(likestVectors(axes, [0, 1], axes, [0])).toBeUndefined();
  });
});
