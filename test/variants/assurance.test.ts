/** The modal assurance criterion against its formula. */

import { describe, expect, test } from "vitest";
import { assurance } from "../../src/variants/assurance.ts";
import type { ShapeSamples } from "../../src/variants/types.ts";

const N = 14;
const names = Array.from({ length: N }, (_, i) => `place ${i}`);
const made = (f: (mode: number, i: number) => number, modes: number): ShapeSamples => ({
  names,
  values: Float64Array.from({ length: modes * N }, (_, k) => f(Math.floor(k / N), k % N)),
});
const a = made((mode, i) => Math.sin((mode + 1) * (i + 0.4)), 3);
const b = made((mode, i) => Math.cos((mode + 0.7) * (i + 0.1)), 2);

/** (x'y)^2/((x'x)(y'y)) */
function byHand(x: ArrayLike<number>, y: ArrayLike<number>): number {
  let [xy, xx, yy] = [0, 0, 0];
  for (let i = 0; i < x.length; i++) {
    xy += x[i] * y[i];
    xx += x[i] ** 2;
    yy += y[i] ** 2;
  }
  return xy ** 2 / (xx * yy);
}

describe("assurance", () => {
  test("is the formula, row after row", () => {
    const mac = assurance(a, b)!;
    expect([mac.rows, mac.columns, mac.shared]).toEqual([3, 2, N]);
    for (let i = 0; i < 3; i++) {
      for (let j = 0; j < 2; j++) {
        const [x, y] = [a.values.slice(i * N, (i + 1) * N), b.values.slice(j * N, (j + 1) * N)];
        expect(mac.values[i * 2 + j]).toBeCloseTo(byHand(x, y), 12);
      }
    }
  });

  test("looks at the places that both have only, in whatever order", () => {
    const other: ShapeSamples = {
      names: ["elsewhere", ...names.slice(2).reverse()],
      values: Float64Array.of(99, ...a.values.slice(N + 2, 2 * N).reverse()),
    };
    const mac = assurance(a, other)!;
    expect(mac.shared).toBe(N - 2);
    expect(mac.values[1]).toBeCloseTo(1, 12);
    expect(mac.values[0]).toBeCloseTo(
      byHand(a.values.slice(2, N), a.values.slice(N + 2, 2 * N)),
      12,
    );
  });

  test("a shape that does not move where both look is like none", () => {
    const still = made(() => 0, 1);
    expect([...assurance(a, still)!.values]).toEqual([0, 0, 0]);
  });

  test("is not given for fewer than twelve places", () => {
    const few = (n: number): ShapeSamples => ({
      names: names.slice(0, n),
      values: new Float64Array(n).fill(1),
    });
    expect(assurance(a, few(11))).toBeUndefined();
    expect(assurance(a, few(12))?.shared).toBe(12);
    expect(assurance({ names: [], values: new Float64Array(0) }, a)).toBeUndefined();
  });
});
