/** Modes followed over grids of uncoupled oscillators: each sheet must be one oscillator. */

import { describe, expect, test } from "vitest";
import { trackGrid } from "../../src/study/track-grid.ts";
import { madeOutcome, massesOnSprings, square, turned } from "./made-outcomes.ts";

/** Every oscillator's frequency is known at every place, whatever its number among the others. */
const OSCILLATORS: readonly ((p: number, q: number, r: number) => number)[] = [
  (p) => 100 + 30 * p,
  (_, q) => 210 - 25 * q,
  (p, q) => 120 + 5 * p + 6 * q,
  (p, q, r) => 160 - 11 * p + 9 * q - 40 * r,
];
const outcome = (p: number, q: number, r: number) =>
  massesOnSprings(
    OSCILLATORS.map((f, i) => OSCILLATORS.map((_, j) => (i === j ? square(f(p, q, r)) : 0))),
  );
const range = (n: number) => Array.from({ length: n }, (_, k) => k);

describe("modes over a grid", () => {
  test.each([[[4, 5, 3]], [[5, 6, 1]], [[1, 1, 4]]])("are found at every place of %j", (shape) => {
    const places = range(shape[0]).flatMap((p) =>
      range(shape[1]).flatMap((q) => range(shape[2]).map((r) => [p, q, r] as const)),
    );
    const { sheets, lines } = trackGrid(
      places.map((at) => outcome(...at)),
      shape,
    );
    expect(lines.length).toBe(shape[0] * shape[1]);
    expect(sheets.length).toBe(OSCILLATORS.length);
    for (const f of OSCILLATORS) {
      const sheet = sheets.find((s) => Math.abs(s.frequencies[0]! - f(0, 0, 0)) < 1e-9)!;
      places.forEach((at, k) => {
        expect(sheet.frequencies[k]).toBeCloseTo(f(...at), 6);
      });
    }
  });

  test("points between are asked for by the number of the outcome before them", () => {
    const c = 0.03 * square(150);
    const made = (p: number, q: number) =>
      massesOnSprings([
        [square(100 + 2 * p + 20 * q), c],
        [c, square(200 + 2 * p - 20 * q)],
      ]);
    const places = range(2).flatMap((p) => range(6).map((q) => [p, q] as const));
    const asked = new Set<number>();
    const { sheets, lines } = trackGrid(
      places.map((at) => made(...at)),
      [2, 6],
      (i, f) => {
        asked.add(i);
        return made(places[i][0], places[i][1] + f);
      },
    );
    // each line veers between its third and its fourth value
    expect([...asked].sort((a, b) => a - b)).toEqual([2, 8]);
    expect(sheets.map((s) => s.modes)).toEqual([new Array(12).fill(1), new Array(12).fill(2)]);
    expect(lines.map((l) => l.veerings.length)).toEqual([1, 1]);
  });

  test("another part on the next line is another sheet", () => {
    const shapes = turned(4, []);
    const line = (first: number) =>
      [0, 1, 2].map((q) => madeOutcome([100, 150 + q], [shapes[first], shapes[3]]));
    const { sheets } = trackGrid([...line(0), ...line(1)], [2, 3]);
    const none = [undefined, undefined, undefined];
    expect(sheets.map((s) => s.modes)).toEqual([
      [1, 1, 1, ...none],
      [2, 2, 2, 2, 2, 2],
      [...none, 1, 1, 1],
    ]);
  });

  test("alike at one place of five only is another sheet too", () => {
    const line = (degrees: readonly number[]) =>
      degrees.map((d) => {
        const [lower] = turned(4, [[0, 1, (d * Math.PI) / 180]]);
        return madeOutcome([100, 150], [lower, [0, 0, 0, 1]]);
      });
    const { sheets } = trackGrid(
      [...line([0, 0, 0, 0, 0]), ...line([0, 55, 55, 55, 55])],
      [2, 5],
      // half way between, so that the second line is followed
      () => line([27])[0],
    );
    expect(sheets.length).toBe(3);
    expect(sheets.filter((s) => s.modes.every((m) => m !== undefined)).length).toBe(1);
  });

  test("is refused when the outcomes do not fill it", () => {
    expect(() => trackGrid([outcome(0, 0, 0)], [2, 1])).toThrow("1 outcomes are no grid of 2 x 1");
  });
});
