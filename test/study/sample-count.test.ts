/** The rule that ends the sampling. */

import { describe, expect, test } from "vitest";
import { InputError } from "../../src/errors.ts";
import { fixedSeedGenerator } from "../../src/linalg/random.ts";
import { bandOf } from "../../src/study/bands.ts";
import { chance } from "../../src/study/chance.ts";
import { normalQuantile } from "../../src/study/normal.ts";
import {
  BATCH,
  checkSampleCount,
  enough,
  sampleCountText,
  WANTED_ERROR,
} from "../../src/study/sample-count.ts";

const { POSITIVE_INFINITY: ENDLESS } = Number;
const known = (error: number) => ({
  low: { value: -1, error: error / 2 },
  high: { value: 2, error },
});
const asked = (samples: number, share: number, level = 0) =>
  enough({ samples, chances: [chance(share * samples, samples)], levels: [known(level)] });

describe("enough", () => {
  test("when every chance and every edge is known as well as wanted", () => {
    // one standard error of an even chance is 1/(2 sqrt(n + 1)) by Wilson: 5 points from 99 on
    expect(asked(98, 0.5).enough).toBe(false);
    expect(asked(99, 0.5)).toMatchObject({ enough: true, met: true, needed: 99 });
    expect(asked(128, 0.5, 0.51).enough).toBe(false);
    expect(asked(128, 0.5, 0.5).enough).toBe(true);
  });

  test("not while either edge is known worse", () => {
    const { low, high } = known(0.6);
    for (const band of [
      { low, high },
      { low: high, high: low },
    ]) {
      expect(enough({ samples: 64, chances: [], levels: [known(0.1), band] }).enough).toBe(false);
    }
  });

  test("never before 32 samples", () => {
    expect(asked(31, 1, 0.01)).toMatchObject({ enough: false, needed: 32 });
    expect(asked(32, 1, 0.01).enough).toBe(true);
    expect(enough({ samples: 8, chances: [], levels: [] }).enough).toBe(false);
  });

  test("at 4096 samples, but then it says that the errors are larger", () => {
    expect(asked(4096, 1, 0.8)).toMatchObject({ enough: true, met: false, needed: 4096 });
    expect(asked(64, 1, ENDLESS)).toMatchObject({ enough: false, needed: 4096 });
  });

  test("the number needed follows the square of the largest error, in whole batches", () => {
    expect(asked(64, 0.5).needed).toBe(128);
    expect(asked(64, 1, 1).needed).toBe(4 * 64);
    expect(asked(64, 1, 0.7).needed).toBe(128);
    const both = enough(
      { samples: 64, chances: [chance(32, 64), chance(1, 64)], levels: [known(0.1), known(1)] },
      { chance: 0.05, level: 0.5 },
    );
    expect(both.errorNow).toEqual({ chance: chance(32, 64).error, level: 1 });
    expect(both.needed).toBe(256);
  });

  test("is what the number needed foretold, on random samples", () => {
    const next = fixedSeedGenerator(4711);
    const values: number[] = [];
    let told = 0;
    for (;;) {
      for (let i = 0; i < BATCH; i++) values.push(3 * normalQuantile((next() + 1) / 2 + 1e-12));
      const levels = [bandOf(values)].filter((b) => b !== undefined);
      const state = enough({ samples: values.length, chances: [], levels });
      if (values.length === 64) told = state.needed;
      if (state.enough) break;
      expect(values.length).toBeLessThan(1000);
    }
    // 3 dB x sqrt(0.05 x 0.95)/0.103 (the density at the edge) / sqrt(n) = 0.5 dB: n = 161
    expect(values.length).toBeGreaterThan(80);
    expect(values.length).toBeLessThan(320);
    expect(told / values.length).toBeGreaterThan(0.4);
    expect(told / values.length).toBeLessThan(2.5);
  });
});

describe("in words", () => {
  const text = (samples: number, share: number, level: number) =>
    sampleCountText(samples, asked(samples, share, level));

  test("the number and both errors, rounded up", () => {
    expect(text(128, 0.5, 0.3)).toBe(
      "128 samples: chances known to within 4.5 percentage points, bands to 0.3 dB (one standard error).",
    );
    expect(text(512, 0.5, 0.123)).toMatch(/2\.3 percentage points, bands to 0\.13 dB/);
  });

  test("that more are needed, or not taken", () => {
    expect(text(64, 0.5, 0.3)).toMatch(/; more are needed\.$/);
    expect(text(4096, 0.5, 0.9)).toMatch(/bands to 0\.9 dB.*; more are not taken\.$/);
    expect(text(64, 0.5, ENDLESS)).toContain("edges of bands not known");
  });

  test("only what was asked", () => {
    const alone = (levels: ReturnType<typeof known>[]) =>
      sampleCountText(64, enough({ samples: 64, chances: [], levels }));
    expect(alone([known(0.25)])).toBe(
      "64 samples: edges of bands known to 0.25 dB (one standard error).",
    );
    expect(alone([])).toBe("64 samples.");
  });
});

describe("the number a user asks for", () => {
  test.each([32, 100, 4096])("%d is taken", (n) => {
    expect(checkSampleCount(n)).toBe(n);
  });

  test.each([0, -5, 12.5, 31, 4097, Number.NaN, ENDLESS])("%d is refused", (n) => {
    expect(() => checkSampleCount(n)).toThrow(InputError);
    expect(() => checkSampleCount(n)).toThrow(
      `samples: The number of samples must be a whole number from 32 to 4096, but is ${n}.`,
    );
  });

  test.each([0, -1, 2.5, 5000])("%d so far is refused", (samples) => {
    expect(() => enough({ samples, chances: [], levels: [] })).toThrow(InputError);
  });

  test.each([
    { chance: 0, level: 0.5 },
    { chance: 0.05, level: Number.NaN },
  ])("wanted errors %o are refused", (wanted) => {
    expect(() => enough({ samples: 32, chances: [], levels: [] }, wanted)).toThrow(/above 0/);
  });

  test("the default is 5 points and 0.5 dB", () => {
    expect(WANTED_ERROR).toEqual({ chance: 0.05, level: 0.5 });
  });
});
