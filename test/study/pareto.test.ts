/** The front against its definition. */

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { paretoFront } from "../../src/study/pareto.ts";

type Point = readonly [number, number];
const beats = (a: Point, b: Point) => a[0] <= b[0] && a[1] <= b[1] && (a[0] < b[0] || a[1] < b[1]);

describe("the front", () => {
  test("is what nothing beats, with ties and doubles", () => {
    // few values, so that ties are the rule
    const figure = fc.oneof(
      fc.integer({ min: 0, max: 5 }),
      fc.constantFrom(Number.POSITIVE_INFINITY, Number.NaN),
    );
    fc.assert(
      fc.property(fc.array(fc.tuple(figure, figure), { maxLength: 12 }), (points) => {
        const known = points.map((p) => p.every(Number.isFinite));
        const expected = points.flatMap((p, i) =>
          known[i] && !points.some((q, j) => known[j] && beats(q, p)) ? [i] : [],
        );
        const front = paretoFront(points);
        expect([...front].sort((a, b) => a - b)).toEqual(expected);
        for (let k = 1; k < front.length; k++) {
          const [a, b] = [front[k - 1], front[k]];
          expect(points[a][0] < points[b][0] || (points[a][0] === points[b][0] && a < b)).toBe(
            true,
          );
        }
      }),
      { seed: 7, numRuns: 400 },
    );
  });
});
