/** What a place is scored by. */

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type Figures,
  score,
  scoreParts,
  USE_WEIGHTS,
  type Use,
  weightsText,
} from "../../src/ranking/use.ts";

const USES = Object.keys(USE_WEIGHTS) as Use[];
const level = fc.integer({ min: 1, max: 100_000 }).map((v) => v / 100);
const figures = fc.record({ gyro: level, accelerometer: level, tilt: level });
const NONE: Figures = { gyro: 1, accelerometer: 1, tilt: 0 };

const scoreOf = (use: Use, f: Figures, quietest = NONE) =>
  score(scoreParts(f, quietest), USE_WEIGHTS[use]);

test("there are weights for three uses, and each use's sum to 1", () => {
  expect(USES.sort()).toEqual(["both", "rate", "self-level"]);
  for (const use of USES) {
    const { gyro, accelerometer, tilt } = USE_WEIGHTS[use];
    expect(gyro + accelerometer + tilt).toBeCloseTo(1, 15);
    expect(Math.min(gyro, accelerometer, tilt)).toBeGreaterThanOrEqual(0);
    expect(Math.max(accelerometer, tilt)).toBeLessThanOrEqual(gyro);
  }
});

describe.each(USES)("%s", (use) => {
  test("the quietest of all at the centre of gravity scores nothing", () => {
    expect(scoreOf(use, NONE)).toBe(0);
  });

  test("ten times the noise in both chips is 20 dB by their weights", () => {
    const { gyro, accelerometer } = USE_WEIGHTS[use];
    expect(scoreOf(use, { gyro: 10, accelerometer: 10, tilt: 0 })).toBeCloseTo(
      20 * (gyro + accelerometer),
      12,
    );
  });

  test("what it is measured against changes no difference between places", () => {
    fc.assert(
      fc.property(figures, figures, figures, figures, (a, b, p, q) => {
        const by = (quietest: Figures) => scoreOf(use, a, quietest) - scoreOf(use, b, quietest);
        expect(by(p)).toBeCloseTo(by(q), 9);
      }),
      { seed: 41, numRuns: 100 },
    );
  });

  test("more of anything is never better", () => {
    fc.assert(
      fc.property(figures, fc.constantFrom("gyro", "accelerometer", "tilt"), (a, what) => {
        expect(scoreOf(use, { ...a, [what]: 1.5 * a[what] })).toBeGreaterThanOrEqual(
          scoreOf(use, a),
        );
      }),
      { seed: 43, numRuns: 100 },
    );
  });
});

describe("false tilt", () => {
  const part = (tilt: number) => scoreParts({ ...NONE, tilt }, NONE).tilt;

  test("is 3.01 dB where it reaches what is put up with, nothing at the centre of gravity", () => {
    expect(part(1)).toBeCloseTo(3.0103, 4);
    expect(part(0)).toBe(0);
  });

  test("far out is a level: 20 dB for ten times as much", () => {
    expect(part(1000) - part(100)).toBeCloseTo(20, 3);
    expect(part(100)).toBeCloseTo(40, 3);
  });

  test("and the accelerometer do not count in rate flight", () => {
    fc.assert(
      fc.property(figures, level, level, (a, accelerometer, tilt) => {
        expect(scoreOf("rate", { ...a, accelerometer, tilt })).toBe(scoreOf("rate", a));
      }),
      { seed: 47, numRuns: 50 },
    );
    expect(scoreOf("self-level", { ...NONE, tilt: 1 })).toBeCloseTo(0.3 * 3.0103, 4);
  });
});

test("the weights in words leave out what does not count", () => {
  expect(weightsText("rate")).toBe("gyro noise 100 %");
  expect(weightsText("both")).toBe("gyro noise 70 %, accelerometer 10 %, false tilt 20 %");
});
