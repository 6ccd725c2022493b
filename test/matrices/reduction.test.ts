import fc from "fast-check";
import { Matrix, SingularValueDecomposition } from "ml-matrix";
import { describe, expect, test } from "vitest";
import { InputError } from "../../src/errors.ts";
import {
  eliminate,
  expand,
  project,
  type Reduction,
  restrict,
} from "../../src/matrices/reduction.ts";
import type { Tie } from "../../src/mesh/types.ts";

const FULL = 24;

const tie = (terms: readonly (readonly [number, number])[], prefer = terms[0][0]): Tie => ({
  dofs: Int32Array.from(terms, ([d]) => d),
  coefs: Float64Array.from(terms, ([, c]) => c),
  prefer,
});

/** T as rows (full x n). */
function dense(t: Reduction): number[][] {
  return Array.from({ length: t.full }, (_, i) => {
    const row = new Array(t.n).fill(0);
    for (let k = t.ptr[i]; k < t.ptr[i + 1]; k++) row[t.col[k]] += t.coef[k];
    return row;
  });
}

/** The constraints as rows on all unknowns: ties, then fixed ones. */
function constraints(ties: readonly Tie[], fixed: readonly number[]): number[][] {
  const unit = (d: number) => Array.from({ length: FULL }, (_, i) => +(i === d));
  const rows = ties.map((t) => {
    const row = new Array(FULL).fill(0);
    t.dofs.forEach((d, k) => {
      row[d] += t.coefs[k];
    });
    return row;
  });
  return [...rows, ...fixed.map(unit)];
}

function rank(rows: readonly number[][]): number {
  if (rows.length === 0) return 0;
  const { diagonal } = new SingularValueDecomposition(new Matrix(rows.map((r) => [...r])), {
    autoTranspose: true,
  });
  return diagonal.filter((s) => s > 1e-8 * diagonal[0]).length;
}

/** Random ties of two to six unknowns, coefficients that are not tiny, some said twice. */
const term = fc.tuple(
  fc.integer({ min: 0, max: FULL - 1 }),
  fc.oneof(
    fc.double({ min: 0.2, max: 2, noNaN: true }),
    fc.double({ min: -2, max: -0.2, noNaN: true }),
  ),
);
const randomTie = fc
  .uniqueArray(term, { minLength: 2, maxLength: 6, selector: ([d]) => d })
  .chain((terms) =>
    fc.integer({ min: 0, max: terms.length - 1 }).map((p) => tie(terms, terms[p][0])),
  );
const problem = fc.record({
  ties: fc.array(randomTie, { minLength: 1, maxLength: 10 }),
  repeats: fc.array(fc.nat(9), { maxLength: 3 }),
  fixed: fc.uniqueArray(fc.integer({ min: 0, max: FULL - 1 }), { maxLength: 4 }),
});

describe("eliminating ties", () => {
  test("T spans exactly the null space of the constraints, redundant ones included", () => {
    fc.assert(
      fc.property(problem, ({ ties, repeats, fixed }) => {
        // Some ties again, scaled, and the sum of the first two: nothing new.
        const again = repeats
          .filter((r) => r < ties.length)
          .map((r) => ({ ...ties[r], coefs: ties[r].coefs.map((c) => -3 * c) }));
        const all = [...ties, ...again];
        const rows = constraints(all, fixed);
        const reduction = eliminate(FULL, all, fixed);
        const T = dense(reduction);
        expect(reduction.n).toBe(FULL - rank(rows));
        // Every constraint holds for every column; entries grow with each chain of pivots.
        const scale = Math.max(1, ...T.flat().map(Math.abs));
        for (const row of rows) {
          for (let j = 0; j < reduction.n; j++) {
            const gap = row.reduce((s, c, i) => s + c * T[i][j], 0);
            expect(Math.abs(gap)).toBeLessThan(1e-11 * scale);
          }
        }
        // Unknowns that remain are themselves, so the columns are independent.
        reduction.masters.forEach((dof, j) => {
          T[dof].forEach((c, k) => {
            expect(c).toBe(+(k === j));
          });
        });
      }),
      { seed: 13, numRuns: 150 },
    );
  });

  test("expand, restrict and project are T, its left inverse and its transpose", () => {
    const ties = [
      tie([
        [3, 1],
        [0, -0.5],
        [7, -0.5],
      ]),
      tie([
        [7, 2],
        [8, -1],
        [9, 4],
      ]),
    ];
    const t = eliminate(12, ties, [5]);
    const T = dense(t);
    const q = Float64Array.from({ length: t.n }, (_, i) => Math.cos(i + 1));
    const u = expand(t, q);
    u.forEach((v, i) => {
      expect(v).toBeCloseTo(
        T[i].reduce((s, c, j) => s + c * q[j], 0),
        14,
      );
    });
    expect(restrict(t, u)).toEqual(q);
    const loads = [0.3, -2, 1.1];
    const f = project(t, [3, 7, 5], loads);
    f.forEach((v, j) => {
      expect(v).toBeCloseTo(loads[0] * T[3][j] + loads[1] * T[7][j] + loads[2] * T[5][j], 14);
    });
    expect(u[5]).toBe(0);
  });
});

describe("which unknown goes", () => {
  test("the preferred one, while its coefficient is not tiny against the largest", () => {
    const goes = (coef: number) => {
      const t = eliminate(
        3,
        [
          tie(
            [
              [0, 1],
              [1, coef],
              [2, -0.4],
            ],
            1,
          ),
        ],
        [],
      );
      return [0, 1, 2].find((d) => !t.masters.includes(d));
    };
    expect(goes(0.3)).toBe(1);
    expect(goes(1e-6)).toBe(0);
  });

  test("a tie said twice, and one that follows from held unknowns, drop out", () => {
    const pair = tie([
      [0, 1],
      [1, -1],
    ]);
    expect(eliminate(4, [pair, pair], []).n).toBe(3);
    expect(eliminate(4, [pair], [0, 1]).n).toBe(2);
  });

  test("a tie to a held unknown holds the other one", () => {
    const pair = tie([
      [0, 1],
      [1, -1],
    ]);
    const t = eliminate(3, [pair], [0]);
    expect(t.n).toBe(1);
    expect(Array.from(expand(t, [1]))).toEqual([0, 0, 1]);
  });

  test("nothing left to vibrate is an error", () => {
    expect(() => eliminate(2, [], [0, 1])).toThrow(InputError);
  });
});
