/** Assignments against all permutations. */

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { assign } from "../../src/study/assignment.ts";

/** The greatest sum by trying everything: each of the fewer gets one of the more. */
function greatest(weights: readonly number[], rows: number, columns: number): number {
  const at = (i: number, j: number) =>
    rows <= columns ? weights[i * columns + j] : weights[j * columns + i];
  const [few, many] = [Math.min(rows, columns), Math.max(rows, columns)];
  const best = (i: number, taken: number): number => {
    if (i === few) return 0;
    let most = Number.NEGATIVE_INFINITY;
    for (let j = 0; j < many; j++) {
      if (taken & (1 << j)) continue;
      most = Math.max(most, at(i, j) + best(i + 1, taken | (1 << j)));
    }
    return most;
  };
  return best(0, 0);
}

const table = fc
  .tuple(fc.integer({ min: 0, max: 5 }), fc.integer({ min: 0, max: 6 }))
  .chain(([rows, columns]) =>
    fc.record({
      rows: fc.constant(rows),
      columns: fc.constant(columns),
      // few values, so that ties are common
      weights: fc.array(
        fc.oneof(fc.integer({ min: -3, max: 3 }), fc.double({ min: -1, max: 1, noNaN: true })),
        { minLength: rows * columns, maxLength: rows * columns },
      ),
    }),
  );

describe("assignment", () => {
  test("is the greatest of all, whatever the shape of the table", () => {
    fc.assert(
      fc.property(table, ({ rows, columns, weights }) => {
        const columnOf = assign(weights, rows, columns);
        const taken = Array.from(columnOf).filter((j) => j >= 0);
        expect(columnOf.length).toBe(rows);
        expect(taken.length).toBe(Math.min(rows, columns));
        expect(new Set(taken).size).toBe(taken.length);
        const sum = columnOf.reduce((s, j, i) => (j < 0 ? s : s + weights[i * columns + j]), 0);
        expect(sum).toBeCloseTo(greatest(weights, rows, columns), 9);
      }),
      { seed: 5, numRuns: 300 },
    );
  });

  test("gives up the best single pair for the best sum", () => {
    // 9 + 0 is less than 8 + 7
    expect([...assign([9, 8, 7, 0], 2, 2)]).toEqual([1, 0]);
  });

  test("finds a hidden permutation of forty", () => {
    const n = 40;
    const hidden = Array.from({ length: n }, (_, i) => (7 * i + 3) % n);
    const weights = Float64Array.from({ length: n * n }, (_, k) => {
      const [i, j] = [Math.floor(k / n), k % n];
      return hidden[i] === j ? 0.6 : (0.5 * ((31 * i + 17 * j) % 11)) / 11;
    });
    expect([...assign(weights, n, n)]).toEqual(hidden);
  });
});
