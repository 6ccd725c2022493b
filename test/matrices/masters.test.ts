import fc from "fast-check";
import { expect, test } from "vitest";
import { withMasters } from "../../src/matrices/masters.ts";
import { eliminate, expand, restrict } from "../../src/matrices/reduction.ts";
import type { Tie } from "../../src/mesh/types.ts";

const FULL = 18;
const SETTINGS = { seed: 11, numRuns: 200 };

/** Ties with coefficients of 1 to 3, which may prefer to give up any of their unknowns. */
const ties = fc.array(
  fc.record({
    dofs: fc.uniqueArray(fc.nat(FULL - 1), { minLength: 2, maxLength: 4 }),
    sizes: fc.array(fc.integer({ min: 1, max: 3 }), { minLength: 4, maxLength: 4 }),
    other: fc.nat(3),
  }),
  { minLength: 1, maxLength: 6 },
);

type Plan = { dofs: number[]; sizes: number[]; other: number };

const tieOf = ({ dofs, sizes }: Plan, prefer: number): Tie => ({
  dofs: Int32Array.from(dofs),
  coefs: Float64Array.from(dofs, (_, i) => sizes[i] * (i === 0 ? 1 : -1)),
  prefer,
});

test("motions are the same whichever unknowns are kept", () => {
  let exchanged = 0;
  fc.assert(
    fc.property(ties, (plans) => {
      const one = eliminate(
        FULL,
        plans.map((p) => tieOf(p, p.dofs[0])),
        [3],
      );
      const two = eliminate(
        FULL,
        plans.map((p) => tieOf(p, p.dofs[p.other % p.dofs.length])),
        [3],
      );
      fc.pre(one.n === two.n);
      const found = withMasters(two, one.masters);
      expect(found).toBeDefined();
      if (found === undefined) return;
      if (found !== two) exchanged++;
      const q = Float64Array.from({ length: one.n }, (_, i) => Math.sin(3 * i + 1));
      const u = expand(one, q);
      expand(found, q).forEach((v, i) => {
        expect(v).toBeCloseTo(u[i], 9);
      });
      expect(restrict(found, u)).toEqual(q);
      // the rows are those of one elimination, whichever way it was come by
      expect([...found.masters]).toEqual([...one.masters]);
    }),
    SETTINGS,
  );
  expect(exchanged).toBeGreaterThan(20);
});

test("unknowns that do not fix the motion are refused", () => {
  const r = eliminate(6, [tieOf({ dofs: [0, 1], sizes: [1, 1], other: 0 }, 0)], []);
  // 0 and 1 move together, so both of them and not 2 leave 2 free
  expect(withMasters(r, Int32Array.of(0, 1, 3, 4, 5))).toBeUndefined();
  expect(withMasters(r, Int32Array.of(0, 2, 3, 4))).toBeUndefined();
});
