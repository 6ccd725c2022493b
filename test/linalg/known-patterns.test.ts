import { expect, test } from "vitest";
import { knownPattern, symbolicOf } from "../../src/linalg/known-patterns.ts";
import { lowestModes } from "../../src/linalg/modes.ts";
import { compressTriplets, type SymmetricPattern } from "../../src/linalg/sparse.ts";

/** A chain of masses on springs, anew every time. */
function chain(n: number, stiffness: number) {
  const rows = Int32Array.from({ length: 2 * n - 1 }, (_, t) => (t < n ? t : t - n + 1));
  const cols = Int32Array.from({ length: 2 * n - 1 }, (_, t) => (t < n ? t : t - n));
  const k = Float64Array.from(rows, (_, t) => (t < n ? 2 * stiffness : -stiffness));
  const m = Float64Array.from(rows, (_, t) => (t < n ? 1 : 0));
  const { pattern, values } = compressTriplets(n, rows.length, rows, cols, [k, m]);
  return { pattern, k: values[0], m: values[1] };
}

test("an equal pattern is the one met before, another is itself", () => {
  const [first, again, longer] = [chain(12, 1), chain(12, 3), chain(13, 1)];
  const known = knownPattern(first.pattern);
  expect(knownPattern(again.pattern)).toBe(known);
  expect(knownPattern(longer.pattern)).toBe(longer.pattern);
  expect(symbolicOf(known)).toBe(symbolicOf(knownPattern(chain(12, 7).pattern)));
});

test("only a few are kept", () => {
  const first = chain(20, 1).pattern;
  knownPattern(first);
  for (let n = 30; n < 40; n++) knownPattern(chain(n, 1).pattern);
  const again: SymmetricPattern = chain(20, 1).pattern;
  expect(knownPattern(again)).toBe(again);
});

test("a known ordering gives the same modes to the last bit", () => {
  const solve = (pattern: SymmetricPattern, { k, m }: ReturnType<typeof chain>) =>
    lowestModes({ pattern, values: k }, { pattern, values: m }, { count: 5 });
  const fresh = chain(40, 2);
  const alone = solve(fresh.pattern, fresh);
  const known = knownPattern(chain(40, 1).pattern);
  symbolicOf(known);
  const other = chain(40, 2);
  const shared = solve(knownPattern(other.pattern), other);
  expect(shared.lambda).toEqual(alone.lambda);
  expect(shared.phi).toEqual(alone.phi);
});
