/** Products with a packed matrix against plain ones. */

import fc from "fast-check";
import { Matrix } from "ml-matrix";
import { describe, expect, test } from "vitest";
import {
  addProduct,
  panelsFor,
  setColumn,
  wholePanels,
  zeroPanels,
} from "../../src/linalg/panels.ts";

const wave = (i: number, j: number) => Math.sin(1.3 * i + 2.7 * j + 0.1 * i * j);

const wavePanels = (terms: number, columns: number) => {
  const out = zeroPanels(terms, columns);
  const before = 3; // numbers of the list that are not the column's
  for (let c = 0; c < columns; c++) {
    const column = Float64Array.from({ length: before + terms }, (_, t) => wave(t - before, c));
    setColumn(out, c, column, before);
  }
  return out;
};

/** terms, columns, rows, first panel, panels. */
const sizes = fc
  .record({
    terms: fc.integer({ min: 0, max: 9 }),
    columns: fc.integer({ min: 1, max: 23 }),
    triples: fc.integer({ min: 1, max: 7 }),
  })
  .chain(({ terms, columns, triples }) => {
    const last = panelsFor(columns) - 1;
    return fc.integer({ min: 0, max: last }).chain((first) =>
      fc.record({
        terms: fc.constant(terms),
        columns: fc.constant(columns),
        rows: fc.constant(3 * triples),
        first: fc.constant(first),
        count: fc.integer({ min: 1, max: last - first + 1 }),
      }),
    );
  });

describe("panels", () => {
  test("out + A B on any run of panels, with nothing beyond the columns of B", () => {
    fc.assert(
      fc.property(sizes, ({ terms, columns, rows, first, count }) => {
        const B = wavePanels(terms, columns);
        const A = Float64Array.from({ length: rows * terms }, (_, k) => Math.cos(k));
        const width = 4 * count;
        const out = Float64Array.from({ length: rows * width }, (_, k) => k);
        addProduct(out, A, B, first, count);
        const product =
          terms === 0
            ? Matrix.zeros(rows, columns)
            : Matrix.from1DArray(rows, terms, A).mmul(
                new Matrix(
                  Array.from({ length: terms }, (_, t) =>
                    Array.from({ length: columns }, (_, c) => wave(t, c)),
                  ),
                ),
              );
        out.forEach((v, k) => {
          const [row, column] = [Math.floor(k / width), 4 * first + (k % width)];
          const expected = k + (column < columns ? product.get(row, column) : 0);
          expect(v).toBeCloseTo(expected, 12);
        });
      }),
      { seed: 3, numRuns: 60 },
    );
  });

  test("rows come in threes", () => {
    const B = wavePanels(2, 4);
    expect(() => addProduct(new Float64Array(16), new Float64Array(8), B, 0, 1)).toThrow(
      new RangeError("4 rows, not a multiple of 3"),
    );
  });

  test("columns are brought to whole panels", () => {
    expect([1, 4, 5, 8, 9].map(wholePanels)).toEqual([4, 4, 8, 8, 12]);
  });
});
