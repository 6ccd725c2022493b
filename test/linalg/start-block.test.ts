/** Bad start blocks: whatever the iteration begins with, the modes are the same. */

import { describe, expect, test } from "vitest";
import { lowestModes } from "../../src/linalg/modes.ts";
import { plateStack } from "./beam-grid.ts";
import { expectModes } from "./expect-modes.ts";

const { K, M, n, rigid } = plateStack({ nx: 6, ny: 5, length: 0.2, width: 0.15, thickness: 0.003 });
const count = 12;
const usual = lowestModes(K, M, { count, deflate: rigid });
const all = lowestModes(K, M, { count: 80, deflate: rigid });

/** Four columns, component i of column c. */
function block(component: (i: number, c: number) => number): Float64Array {
  return Float64Array.from({ length: 4 * n }, (_, q) => component(q % n, Math.floor(q / n)));
}

const wavy = (i: number, c: number) => Math.sin(i * (c + 1) + i);

describe("a start block of", () => {
  test.each<[string, (i: number, c: number) => number]>([
    ["zeros", () => 0],
    ["NaN", () => Number.NaN],
    ["one NaN among sound numbers", (i, c) => (c === 1 && i === 7 ? Number.NaN : wavy(i, c))],
    ["infinities", (_, c) => (c % 2 === 0 ? Number.POSITIVE_INFINITY : Number.NEGATIVE_INFINITY)],
    ["one column four times", (i) => wavy(i, 0)],
    ["columns that differ by roundings", (i, c) => wavy(i, 0) * (1 + c * 2 ** -52)],
    ["rigid-body motions", (i, c) => rigid[c][i]],
    ["unwanted modes, orthogonal to all wanted ones", (i, c) => all.phi[(70 + c) * n + i]],
    ["wanted modes, the upper ones", (i, c) => all.phi[(8 + c) * n + i]],
    ["motions of one node", (i, c) => (i === 6 * 7 + c ? 1 : 0)],
    ["numbers next to overflow", (i, c) => 1e300 * wavy(i, c)],
    ["numbers next to underflow", (i, c) => 1e-300 * wavy(i, c)],
  ])("%s", (_, component) => {
    const modes = lowestModes(K, M, { count, deflate: rigid, start: block(component) });
    expectModes(K, M, modes, rigid);
    expect(modes.lambda.length).toBe(count);
    for (let k = 0; k < count; k++) {
      expect(Math.abs(modes.lambda[k] / usual.lambda[k] - 1)).toBeLessThan(1e-12);
    }
  });

  test.each([0, 7, 4 * n - 1, 5 * n])("%i numbers is refused", (length) => {
    const start = new Float64Array(length);
    expect(() => lowestModes(K, M, { count, deflate: rigid, start })).toThrow(
      new RangeError(`the start block has ${length} numbers instead of ${n} x 4`),
    );
  });
});
