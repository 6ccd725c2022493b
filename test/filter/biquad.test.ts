import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { InputError } from "../../src/errors.ts";
import {
  type Biquad,
  isStable,
  lowPassBiquad,
  notchBiquad,
  qOfBandwidth,
  smootherBiquad,
} from "../../src/filter/biquad.ts";
import { biquadResponse } from "../../src/filter/biquad-response.ts";
import { order, RUNS } from "./filter-orders.ts";

describe("coefficients", () => {
  test("at a quarter of the sampling rate, by hand: cos w0 = 0, alpha = 1/(2 Q)", () => {
    const at = { f0: 1000, Q: 0.5, fs: 4000 };
    expectTriples(lowPassBiquad(at), [0.25, 0.5, 0.25], [1, 0, 0]);
    expectTriples(notchBiquad({ ...at, Q: 1 }), [2 / 3, 0, 2 / 3], [1, 0, 1 / 3]);
  });

  test("at a sixth of it: cos w0 = 1/2, sin w0 = sqrt(3)/2", () => {
    // alpha = 1/2 for Q = sqrt(3)/2
    const at = { f0: 500, Q: Math.sqrt(3) / 2, fs: 3000 };
    expectTriples(lowPassBiquad(at), [1 / 6, 1 / 3, 1 / 6], [1, -2 / 3, 1 / 3]);
    expectTriples(notchBiquad(at), [2 / 3, -2 / 3, 2 / 3], [1, -2 / 3, 1 / 3]);
  });

  test("every filter that can be ordered is stable, with its sampling rate", () => {
    fc.assert(
      fc.property(order, (o) => {
        for (const filter of [lowPassBiquad(o), notchBiquad(o)]) {
          expect(isStable(filter)).toBe(true);
          expect(filter.fs).toBe(o.fs);
        }
      }),
      RUNS,
    );
  });

  test("a smoother of 1 passes all", () => {
    expect(smootherBiquad(1, 1000)).toEqual({ b: [1, 0, 0], a: [1, 0, 0], fs: 1000 });
  });

  test.each<readonly [string, number, number, boolean]>([
    ["poles at +-0.9 i", 0, 0.81, true],
    ["poles on the circle", 0, 1, false],
    ["a pole at 1", -1.5, 0.5, false],
    ["a pole at -1.1", 0.6, -0.55, false],
    ["poles of 0.5 and 0.9", -1.4, 0.45, true],
  ])("stability: %s", (_, a1, a2, stable) => {
    expect(isStable({ b: [1, 0, 0], a: [1, a1, a2], fs: 1 })).toBe(stable);
  });
});

describe("bandwidth", () => {
  test("one octave far below the sampling rate is Q = sqrt(2)", () => {
    // 1/(2 sinh(ln 2/2)) = 1/(sqrt(2) - 1/sqrt(2))
    expect(qOfBandwidth(1, 1, 1e5)).toBeCloseTo(Math.SQRT2, 8);
  });

  test.each([
    // width, largest relative error up to fs/4
    [0.1, 1.3e-4],
    [1 / 3, 1.5e-3],
    [1, 1.3e-2],
  ])("%f octaves between the -3 dB points", (BW, error) => {
    const fs = 8000;
    for (const f0 of [80, 400, 800, 1000, 1600, 2000]) {
      const filter = notchBiquad({ f0, Q: qOfBandwidth(BW, f0, fs), fs });
      const [low, high] = [halfPower(filter, f0, 1), halfPower(filter, f0, fs / 2)];
      expect(Math.abs(Math.log2(high / low) / BW - 1), `${f0} Hz`).toBeLessThan(error);
    }
  });
});

describe("refused", () => {
  const nan = Number.NaN;
  test.each<readonly [string, () => unknown, string]>([
    [
      "frequency of zero",
      () => lowPassBiquad({ f0: 0, Q: 1, fs: 8000 }),
      "f0: the frequency of the filter must be above 0, but is 0 Hz.",
    ],
    [
      "half the sampling rate",
      () => notchBiquad({ f0: 4000, Q: 1, fs: 8000 }),
      "f0: the frequency of the filter must lie below half the sampling rate, 4000 Hz, but is 4000 Hz: choose a lower frequency or sample faster.",
    ],
    [
      "everything at once",
      () => lowPassBiquad({ f0: nan, Q: -1, fs: Number.POSITIVE_INFINITY }),
      [
        "Q: the quality factor must be above 0, but is -1.",
        "f0: the frequency of the filter must be above 0, but is NaN Hz.",
        "fs: the sampling rate must be a finite number, but is Infinity Hz.",
      ].join("\n"),
    ],
    [
      "f0 lost in rounding",
      () => lowPassBiquad({ f0: 1e-6, Q: 1, fs: 8000 }),
      "f0 = 0.000001 Hz and Q = 1 at 8000 Hz is not stable in double precision",
    ],
    [
      "Q without any width",
      () => notchBiquad({ f0: 100, Q: 1e16, fs: 8000 }),
      "is not stable in double precision: choose an f0 farther from 0 and fs/2, or a more moderate Q.",
    ],
    [
      "Q without any selectivity",
      () => notchBiquad({ f0: 100, Q: 1e-310, fs: 8000 }),
      "is not stable in double precision",
    ],
    ["smoother of zero", () => smootherBiquad(0, 8000), "k: the smoothing factor must be above 0"],
    [
      "smoother that overshoots",
      () => smootherBiquad(1.5, 8000),
      "k: the smoothing factor must lie above 0 and not above 1, but is 1.5.",
    ],
    ["smoother that stands still", () => smootherBiquad(1e-17, 8000), "k: the smoothing factor"],
    ["smoother without a rate", () => smootherBiquad(0.5, 0), "fs: the sampling rate must be"],
    ["bandwidth of zero", () => qOfBandwidth(0, 100, 8000), "BW: the bandwidth must be above 0"],
    ["bandwidth without a centre", () => qOfBandwidth(1, nan, 8000), "f0: the frequency"],
    ["endless bandwidth", () => qOfBandwidth(1e4, 100, 8000), "BW: a bandwidth of 10000 octaves"],
  ])("%s", (_, order, message) => {
    expect(order).toThrow(InputError);
    expect(order).toThrow(message);
  });
});

function expectTriples(filter: Biquad, b: readonly number[], a: readonly number[]) {
  b.forEach((value, k) => {
    expect(filter.b[k]).toBeCloseTo(value, 15);
  });
  a.forEach((value, k) => {
    expect(filter.a[k]).toBeCloseTo(value, 15);
  });
}

/** Where the gain is 1/sqrt(2) between a frequency inside the notch and one outside, by bisection. */
function halfPower(filter: Biquad, inside: number, outside: number): number {
  let [removed, passed] = [inside, outside];
  for (let i = 0; i < 60; i++) {
    const middle = (removed + passed) / 2;
    if (biquadResponse(filter, middle).gain < Math.SQRT1_2) removed = middle;
    else passed = middle;
  }
  return passed;
}
