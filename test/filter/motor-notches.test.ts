import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { notchBiquad } from "../../src/filter/biquad.ts";
import { biquadResponse } from "../../src/filter/biquad-response.ts";
import { notchDelay, notchDelayBySpeed, rarelyExceeded } from "../../src/filter/burden-delay.ts";
import { entryFrequencies } from "../../src/filter/burden-entries.ts";
import type { BurdenSetup } from "../../src/filter/burden-types.ts";
import { foldedFrequency } from "../../src/filter/fold.ts";
import {
  bankPower,
  followedInHover,
  motorOffsets,
  notchBank,
  squaredSine,
} from "../../src/filter/motor-notches.ts";
import { choicesOf } from "../../src/filter/notch-sets.ts";
import { PLAIN } from "./burden-setups.ts";
import { between, order, RUNS } from "./filter-orders.ts";

const FOUR: BurdenSetup = {
  ...PLAIN,
  fs: 4000,
  speeds: Float64Array.of(150, 200),
  weights: Float64Array.of(0.5, 0.5),
  rotors: 4,
  motorSpread: 0.02,
  notch: { quality: 4, trackingError: 0.01 },
};

describe("motors", () => {
  test("four are 3, 1, 1 and 3 parts of the spread over sqrt(5) apart from their mean", () => {
    const parts = [-3, -1, 1, 3].map((x) => (x * 0.02) / Math.sqrt(5));
    for (const [r, offset] of motorOffsets(FOUR).entries()) {
      expect(offset).toBeCloseTo(parts[r], 15);
    }
  });

  test.each([2, 3, 4, 6, 8])("%i have the mean and the standard deviation asked for", (rotors) => {
    const offsets = [...motorOffsets({ ...FOUR, rotors })];
    expect(offsets.reduce((a, b) => a + b, 0)).toBeCloseTo(0, 15);
    const square = offsets.reduce((a, b) => a + b * b, 0) / rotors;
    expect(Math.sqrt(square)).toBeCloseTo(0.02, 14);
  });

  test("one has no spread", () => {
    expect([...motorOffsets({ ...FOUR, rotors: 1 })].map(Math.abs)).toEqual([0]);
  });
});

describe("notches on motors", () => {
  test("have the gain of the digital filter", () => {
    fc.assert(
      fc.property(order, between(0.001, 0.499), (o, at) => {
        const setup = { ...PLAIN, notch: { quality: o.Q, trackingError: 0 } };
        const centre = Float64Array.of(squaredSine(o.f0, o.fs));
        const power = bankPower(centre, setup, 0, squaredSine(at * o.fs, o.fs));
        const { gain } = biquadResponse(notchBiquad(o), at * o.fs);
        expect(power).toBeCloseTo(gain ** 2, 9);
        expect(power).toBeLessThanOrEqual(1);
      }),
      RUNS,
    );
  });

  test("are one for each motor, all too high or all too low", () => {
    const { high, low } = notchBank(FOUR, 3);
    for (const [centres, miss] of [[high, 1.01] as const, [low, 0.99] as const]) {
      const gains = [...motorOffsets(FOUR)].map((offset) => {
        const f0 = 3 * 200 * (1 + offset) * miss;
        return biquadResponse(notchBiquad({ f0, Q: 4, fs: 4000 }), 570).gain;
      });
      const product = gains.reduce((a, b) => a * b, 1);
      expect(bankPower(centres, FOUR, 1, squaredSine(570, 4000))).toBeCloseTo(product ** 2, 12);
    }
  });

  test("are off within the control bandwidth and above 0.45 of the sampling rate", () => {
    const setup = { ...FOUR, speeds: Float64Array.of(20, 200), motorSpread: 0, rotors: 1 };
    const notch = { quality: 3, trackingError: 0 };
    expect([...notchBank({ ...setup, notch }, 1).high].map((s0) => s0 > 0)).toEqual([false, true]);
    // 9 x 200 Hz = 0.45 x 4 kHz
    expect([...notchBank({ ...setup, notch }, 9).high].map((s0) => s0 > 0)).toEqual([true, true]);
    expect([...notchBank({ ...setup, notch }, 9.1).high].map((s0) => s0 > 0)).toEqual([
      true,
      false,
    ]);
    expect(bankPower(Float64Array.of(0), setup, 0, 0.3)).toBe(1);
  });

  test.each([
    [0.1, false],
    [0.15, false], // 30 Hz, on the control bandwidth
    [0.16, true], // 32 Hz: the lowest at 32 x 0.973 x 0.99 = 30.8
    [8.5, true], // 1700 Hz: the highest at 1763
    [8.9, false], // 1780 Hz: the highest at 1846
    [12, false],
  ])("%f times the speed may be followed in hover: %s", (multiple, may) => {
    expect(followedInHover(FOUR, multiple)).toBe(may);
  });

  // 1/(2 pi f0 Q) to the digits shown
  test.each([
    [100, 2, "0.80"],
    [150, 3, "0.35"],
    [200, 3, "0.27"],
    [300, 4, "0.13"],
  ])("at %i Hz with Q = %i: slow motions %s ms late", (hover, quality, ms) => {
    const setup = { ...PLAIN, hover, notch: { quality, trackingError: 0 } };
    expect((1e3 * notchDelay(setup, 1).slow).toFixed(2)).toBe(ms);
    // four motors: four notches
    const four = notchDelay({ ...setup, rotors: 4 }, 1);
    expect(four.slow / notchDelay(setup, 1).slow).toBeCloseTo(4, 12);
  });

  test("delay more at lower speeds: about as 1/f0", () => {
    const [slow, fast] = notchDelayBySpeed({ ...FOUR, controlBandwidth: 5 }, 1);
    expect(slow / fast).toBeCloseTo(200 / 150, 1);
  });
});

describe("a value rarely exceeded", () => {
  const values = Float64Array.of(3, 9, 5, 7);
  test.each([
    [[0.97, 0.01, 0.01, 0.01], 7],
    [[0.98, 0.01, 0.01, 0], 5],
    [[0.99, 0.01, 0, 0], 3],
    [[0.9, 0.1, 0, 0], 9],
    [[1, 0, 0, 0], 3],
  ])("with shares of the flight %j is %f", (weights, value) => {
    expect(rarelyExceeded(values, Float64Array.from(weights))).toBe(value);
  });
});

test("frequencies fold to the nearest multiple of the sampling rate", () => {
  // 1130 Hz sampled at 1 kHz shows at 130 Hz: |f - k fs|
  expect(foldedFrequency(1130, 1000)).toBe(130);
  expect([0, 400, 500, 600, 1900, 930].map((f) => foldedFrequency(f, 1000))).toEqual([
    0, 400, 500, 400, 100, 70,
  ]);
  // samples of both are the same
  for (const n of [1, 2, 3, 7]) {
    expect(Math.cos((2 * Math.PI * 1130 * n) / 1000)).toBeCloseTo(
      Math.cos((2 * Math.PI * foldedFrequency(1130, 1000) * n) / 1000),
      12,
    );
  }
});

test("motors on both sides of half the sampling rate are both seen below it", () => {
  const setup = { ...FOUR, fs: 400, speeds: Float64Array.of(200), rotors: 2 };
  const line = { name: "", order: 1, frequency: Float64Array.of(200) };
  // 196 and 204 Hz: the latter folds to 196
  for (const f of entryFrequencies(setup, [line])) expect(f).toBeCloseTo(196, 10);
  // and about twice the rate, where the line folds to 0
  const twice = { ...line, order: 2, frequency: Float64Array.of(0) };
  for (const f of entryFrequencies(setup, [twice])) expect(f).toBeCloseTo(8, 10);
});

test("choices: fewest first, then in order", () => {
  expect(choicesOf(["a", "b", "c"], 2).map((choice) => choice.join(""))).toEqual([
    "",
    "a",
    "b",
    "c",
    "ab",
    "ac",
    "bc",
  ]);
  expect(choicesOf([1, 2, 3, 4, 5], 3)).toHaveLength(1 + 5 + 10 + 10);
  expect(choicesOf([1, 2], 3)).toEqual([[], [1], [2], [1, 2]]);
  expect(choicesOf([1], 0)).toEqual([[]]);
});
