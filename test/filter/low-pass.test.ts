import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { InputError } from "../../src/errors.ts";
import { isStable } from "../../src/filter/biquad.ts";
import { biquadResponse, dcGroupDelay } from "../../src/filter/biquad-response.ts";
import { lowPassDelay } from "../../src/filter/burden-delay.ts";
import { inSeries } from "../../src/filter/frequency-response.ts";
import { firstOrderLag, secondOrderLowPass } from "../../src/filter/lag.ts";
import {
  cutOffGrid,
  firstOrderBiquad,
  LOW_PASS_ORDERS,
  lowPassPower,
  lowPassSections,
} from "../../src/filter/low-pass.ts";
import { PLAIN } from "./burden-setups.ts";
import { between, RUNS } from "./filter-orders.ts";

const fs = between(500, 32000);
const share = between(0.005, 0.45);
const gainOf = (order: 1 | 2 | 4, cutOff: number, rate: number, f: number) =>
  inSeries(lowPassSections({ order, cutOff }, rate).map((s) => biquadResponse(s, f))).gain;

describe("low-passes of order 1, 2 and 4", () => {
  test("by hand at a quarter of the sampling rate, t0 = 1", () => {
    expect(firstOrderBiquad(1000, 4000).b[0]).toBeCloseTo(0.5, 15);
    expect(firstOrderBiquad(1000, 4000).a[1]).toBeCloseTo(0, 15);
    // t0 = 1/sqrt(3) at a sixth: b = 1/(1 + sqrt(3)), a1 = (1 - sqrt(3))/(1 + sqrt(3))
    const { b, a } = firstOrderBiquad(500, 3000);
    expect(b[0]).toBeCloseTo(1 / (1 + Math.sqrt(3)), 15);
    expect(a[1]).toBeCloseTo((1 - Math.sqrt(3)) / (1 + Math.sqrt(3)), 15);
  });

  test("the four-pole has the quality factors 0.5412 and 1.3066 of the handbooks", () => {
    // gain at f0 is Q
    const sections = lowPassSections({ order: 4, cutOff: 100 }, 8000);
    const Q = sections.map((section) => biquadResponse(section, 100).gain);
    expect(Q[0]).toBeCloseTo(0.5412, 4);
    expect(Q[1]).toBeCloseTo(1.3066, 4);
  });

  test("are as flat as can be: the power gain in closed form is that of the filters", () => {
    fc.assert(
      fc.property(fs, share, between(0, 0.499), (rate, cut, at) => {
        const [t, t0] = [Math.tan(Math.PI * at), Math.tan(Math.PI * cut)];
        for (const order of LOW_PASS_ORDERS) {
          const gain = gainOf(order, cut * rate, rate, at * rate);
          expect(gain ** 2).toBeCloseTo(lowPassPower(order, (t / t0) ** 2), 10);
        }
      }),
      RUNS,
    );
  });

  test("pass a constant, half the power at the cut-off, nothing at fs/2, and are stable", () => {
    fc.assert(
      fc.property(fs, share, (rate, cut) => {
        for (const order of LOW_PASS_ORDERS) {
          expect(gainOf(order, cut * rate, rate, 0)).toBeCloseTo(1, 11);
          expect(gainOf(order, cut * rate, rate, cut * rate) ** 2).toBeCloseTo(0.5, 10);
          expect(gainOf(order, cut * rate, rate, rate / 2)).toBeCloseTo(0, 15);
          const sections = lowPassSections({ order, cutOff: cut * rate }, rate);
          expect(sections.every(isStable)).toBe(true);
        }
      }),
      RUNS,
    );
    expect(lowPassPower(4, Number.POSITIVE_INFINITY)).toBe(0);
  });

  test("with a higher cut-off let more pass at every frequency, and delay less", () => {
    fc.assert(
      fc.property(fs, share, between(1.001, 2), between(0, 0.499), (rate, cut, up, at) => {
        fc.pre(cut * up < 0.45);
        for (const order of LOW_PASS_ORDERS) {
          const [low, high] = [cut, up * cut].map((c) => gainOf(order, c * rate, rate, at * rate));
          expect(high).toBeGreaterThanOrEqual(low - 1e-12);
          const setup = { ...PLAIN, fs: rate, controlBandwidth: 0.9 * cut * rate };
          const [slow, fast] = [cut, up * cut].map((c) =>
            lowPassDelay(setup, { order, cutOff: c * rate }),
          );
          expect(fast.atControl).toBeLessThan(slow.atControl);
          expect(fast.slow).toBeLessThan(slow.slow);
        }
      }),
      RUNS,
    );
  });
});

describe("delays", () => {
  // 1/(2 pi fc), sqrt(2)/(2 pi fc) to the digits shown
  test.each([
    [1, 100, "1.6"],
    [1, 150, "1.1"],
    [1, 250, "0.64"],
    [2, 100, "2.3"],
    [2, 150, "1.5"],
    [2, 250, "0.90"],
  ] as const)("order %i at %i Hz: slow motions %s ms late", (order, cutOff, ms) => {
    const { slow } = lowPassDelay(PLAIN, { order, cutOff });
    expect((1e3 * slow).toFixed(ms.length - 2)).toBe(ms);
  });

  test("of the four-pole: 1/Q of both sections over 2 pi fc", () => {
    const slow = (1 / 0.541196 + 1 / 1.306563) / (2 * Math.PI * 150);
    expect(lowPassDelay(PLAIN, { order: 4, cutOff: 150 }).slow / slow).toBeCloseTo(1, 3);
  });

  test("at the control bandwidth: the analogue lags far below the sampling rate", () => {
    const f = PLAIN.controlBandwidth;
    const seconds = ({ phase }: { phase: number }) => -phase / (2 * Math.PI * f);
    const first = lowPassDelay(PLAIN, { order: 1, cutOff: 100 }).atControl;
    expect(first / seconds(firstOrderLag(100, f))).toBeCloseTo(1, 3);
    const second = lowPassDelay(PLAIN, { order: 2, cutOff: 100 }).atControl;
    expect(second / seconds(secondOrderLowPass({ f0: 100, Q: Math.SQRT1_2 }, f))).toBeCloseTo(1, 3);
  });

  test("of the first order: 1/(2 t0) samples", () => {
    const t0 = Math.tan(Math.PI * 0.2);
    expect(dcGroupDelay(firstOrderBiquad(800, 4000)) * 4000).toBeCloseTo(1 / (2 * t0), 12);
  });
});

test("cut-offs begin one step above the control bandwidth and end at 0.45 fs", () => {
  fc.assert(
    fc.property(between(5, 200), between(1000, 32000), (above, rate) => {
      const grid = cutOffGrid(above, rate);
      const ratios = [...grid].map((f, i) => f / (i === 0 ? above : grid[i - 1]));
      expect(Math.min(...ratios)).toBeGreaterThan(1.02);
      expect(Math.max(...ratios)).toBeLessThan(1.03 + 1e-12);
      expect(grid[grid.length - 1] / rate).toBeCloseTo(0.45, 12);
    }),
    { ...RUNS, numRuns: 20 },
  );
});

test.each([
  [0, 4000, "f0: the cut-off frequency must be above 0, but is 0 Hz."],
  [100, -1, "fs: the sampling rate must be above 0, but is -1 Hz."],
  [2000, 4000, "f0: the cut-off frequency must lie below half the sampling rate, 2000 Hz"],
])("refused: a first order with %f Hz at %f Hz", (f0, rate, message) => {
  expect(() => firstOrderBiquad(f0, rate)).toThrow(InputError);
  expect(() => firstOrderBiquad(f0, rate)).toThrow(message);
});
