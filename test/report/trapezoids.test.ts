import { describe, expect, test } from "vitest";
import { disc, moments, oriented, type Polygon, sumMoments } from "../../src/model/polygon.ts";
import { type Trapezoid, trapezoids } from "../../src/report/trapezoids.ts";

/** Area and first moments of trapezoids as polygons. */
function sumOf(list: readonly Trapezoid[]) {
  return sumMoments(
    list.map(({ y0, y1, left, right }) =>
      Float64Array.of(left[0], y0, right[0], y0, right[1], y1, left[1], y1),
    ),
  );
}

/** The whole plate through a grid of n x n cells over the box from -1 to 1. */
function throughGrid(outline: Polygon, holes: readonly Polygon[], n: number): Trapezoid[] {
  const h = 2 / n;
  return Array.from({ length: n * n }, (_, k) => {
    const [x, y] = [-1 + (k % n) * h, -1 + Math.floor(k / n) * h];
    return trapezoids(outline, holes, [x, y, x + h, y + h]);
  }).flat();
}

const STAR = Float64Array.of(
  1,
  0,
  0.3,
  0.25,
  0,
  1,
  -0.35,
  0.3,
  -1,
  0,
  -0.2,
  -0.3,
  0,
  -1,
  0.2,
  -0.2,
);
const HOLES = [oriented(disc(0.1, 0.05, 0.2), -1), oriented(disc(-0.45, 0, 0.18), -1)];

describe("trapezoids", () => {
  test.each([1, 2, 3, 7, 16])("through %i x %i cells cover outline less holes", (n) => {
    const whole = sumMoments([STAR, ...HOLES]);
    const cut = sumOf(throughGrid(STAR, HOLES, n));
    expect(cut.area).toBeCloseTo(whole.area, 10);
    expect(cut.x).toBeCloseTo(whole.x, 10);
    expect(cut.y).toBeCloseTo(whole.y, 10);
    expect(cut.xx).toBeCloseTo(whole.xx, 10);
  });

  test("of a cell wholly inside are the cell itself", () => {
    const square = Float64Array.of(-1, -1, 1, -1, 1, 1, -1, 1);
    expect(trapezoids(square, [], [0, 0, 0.5, 0.25])).toEqual([
      { y0: 0, y1: 0.25, left: [0, 0], right: [0.5, 0.5] },
    ]);
  });

  test("of a cell outside or in a hole are none", () => {
    expect(trapezoids(STAR, [], [0.8, 0.8, 1, 1])).toEqual([]);
    const hole = oriented(disc(0, 0, 0.6), -1);
    expect(moments(hole).area).toBeLessThan(0);
    expect(sumOf(trapezoids(STAR, [hole], [-0.1, -0.1, 0.1, 0.1])).area).toBeCloseTo(0, 12);
  });
});
