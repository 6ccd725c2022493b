/** Burdens that can be reckoned by hand. */

import { describe, expect, test } from "vitest";
import { burdenTable } from "../../src/filter/burden-table.ts";
import type { BurdenSetup } from "../../src/filter/burden-types.ts";
import { filterBurden } from "../../src/filter/filter-burden.ts";
import { lineOf, PLAIN } from "./burden-setups.ts";

/** One line of the given rms at 2 x 200 Hz. */
function oneLine(rms: number, setup: BurdenSetup = PLAIN) {
  const table = burdenTable(setup, [lineOf(setup, 2, "blade pass")]);
  return filterBurden(table, [Float64Array.of(rms ** 2)]);
}

describe("one line at 400 Hz, low-pass only", () => {
  // Butterworth: (f/f0)^(2n) = ratio^2 - 1, so f0 = 400/(ratio^2 - 1)^(1/2n). Delays of slow motions:
  // 1/(2 pi f0), sqrt(2)/(2 pi f0), 2.6131/(2 pi f0).
  test.each([
    // ratio^2 - 1 = 0.44: 603 Hz and 0.26 ms, 491 Hz and 0.46 ms, 443 Hz and 0.94 ms
    [1.2, 1, 603],
    // 24: 82 Hz and 1.95 ms, 181 Hz and 1.25 ms, 269 Hz and 1.55 ms
    [5, 2, 180.7],
    // 9999: 4 Hz, 40 Hz and 5.6 ms, 126.5 Hz and 3.3 ms
    [100, 4, 126.5],
  ])("%f times the target: order %i at %f Hz", (ratio, order, f0) => {
    const { raw, without } = oneLine(ratio);
    expect(raw).toBeCloseTo(ratio, 12);
    expect(without.attainable).toBe(true);
    expect(without.lowPass!.order).toBe(order);
    const exact = 400 / (ratio ** 2 - 1) ** (1 / (2 * order));
    expect(exact / f0).toBeCloseTo(1, 3);
    // the highest cut-off of a grid in steps of 3 %
    expect(without.lowPass!.cutOff).toBeLessThan(exact * 1.001);
    expect(without.lowPass!.cutOff).toBeGreaterThan(exact / 1.031);
    const u = 400 / without.lowPass!.cutOff;
    expect(without.residual / (ratio / Math.sqrt(1 + u ** (2 * order)))).toBeCloseTo(1, 2);
    expect(without.residualOfLines).toEqual([without.residual]);
    expect(without.mostFrom).toBe("blade pass");
  });

  test("lag in degrees is 360 f delay", () => {
    const { without } = oneLine(5);
    expect((without.lag * 180) / Math.PI).toBeCloseTo(360 * 30 * without.delay, 10);
    // and the second order's lag at 30 Hz is atan2(sqrt(2) u, 1 - u^2)
    const u = 30 / without.lowPass!.cutOff;
    expect(without.lag).toBeCloseTo(Math.atan2(Math.SQRT2 * u, 1 - u * u), 4);
  });

  test("delays slow motions by sqrt(2)/(2 pi f0), and alike at all motor speeds", () => {
    const { without } = oneLine(5);
    const slow = Math.SQRT2 / (2 * Math.PI * without.lowPass!.cutOff);
    expect(without.groupDelay / slow).toBeCloseTo(1, 3);
    expect(without.delayMostOfFlight).toBe(without.delay);
  });
});

describe("one line with a notch", () => {
  test("that sits on it removes it at the price of the notch alone", () => {
    const { with: burden, without } = oneLine(100);
    expect(burden.lowPass).toBeUndefined();
    expect(burden.notches).toEqual([2]);
    expect(burden.residual).toBe(0);
    // 1/(2 pi f0 Q), digital: 1/(2 Q tan(pi f0/fs)) samples
    const samples = 1 / (2 * 3 * Math.tan((Math.PI * 400) / 32000));
    expect(burden.groupDelay * 32000).toBeCloseTo(samples, 9);
    // atan((u/Q)/(1 - u^2)) at u = 30/400
    const u = 30 / 400;
    expect(burden.lag).toBeCloseTo(Math.atan(u / 3 / (1 - u * u)), 4);
    expect(burden.delay).toBeLessThan(without.delay);
    expect(burden.delayMostOfFlight).toBe(burden.delay);
  });

  test("that misses it by 2 % leaves the notch's gain there, high and low", () => {
    const notch = { quality: 3, trackingError: 0.02 };
    const { with: burden } = oneLine(6, { ...PLAIN, notch });
    expect(burden.notches).toEqual([2]);
    expect(burden.lowPass).toBeUndefined();
    const [high, low] = [1 / 1.02, 1 / 0.98].map((u) => {
      return (1 - u * u) ** 2 / ((1 - u * u) ** 2 + (u / 3) ** 2);
    });
    expect(burden.residual / (6 * Math.sqrt((high + low) / 2))).toBeCloseTo(1, 2);
  });

  test("that costs more than a low-pass is left out", () => {
    const notch = { quality: 0.5, trackingError: 0 };
    const { with: burden, without } = oneLine(1.2, { ...PLAIN, notch });
    expect(burden).toEqual(without);
  });
});

test("a signal that meets the target as it is needs no filter", () => {
  const { raw, without, with: notched } = oneLine(1);
  expect(raw).toBe(1);
  expect(without).toEqual({
    attainable: true,
    lowPass: undefined,
    notches: [],
    delay: 0,
    lag: 0,
    groupDelay: 0,
    delayMostOfFlight: 0,
    residual: 1,
    residualOfLines: [1],
    residualOfNoise: 0,
    mostFrom: "blade pass",
  });
  expect(notched).toBe(without);
});

describe("out of reach", () => {
  test("the chain that leaves least: the lowest cut-off of the steepest low-pass", () => {
    const { without, with: notched } = oneLine(1e6, {
      ...PLAIN,
      notch: { quality: 3, trackingError: 0.02 },
    });
    expect(without.attainable).toBe(false);
    expect(without.lowPass!.order).toBe(4);
    expect(without.lowPass!.cutOff).toBeLessThan(30 * 1.031);
    const u = 400 / without.lowPass!.cutOff;
    expect(without.residual / (1e6 / u ** 4)).toBeCloseTo(1, 2);
    expect(without.delay).toBeGreaterThan(0.01);
    expect(notched.attainable).toBe(false);
    expect(notched.notches).toEqual([2]);
    expect(notched.residual).toBeLessThan(without.residual);
  });

  test("because of noise, which is named", () => {
    const { without } = oneLine(0, { ...PLAIN, noiseDensity: 1 });
    expect(without.attainable).toBe(false);
    expect(without.mostFrom).toBe("noise");
    expect(without.residual).toBe(without.residualOfNoise);
    // four-pole: pi/(8 sin(pi/8)) = 1.026 of the cut-off
    const { cutOff } = without.lowPass!;
    expect(without.residual / Math.sqrt(3 * 1.026 * cutOff)).toBeCloseTo(1, 2);
  });
});

describe("which multiples are followed", () => {
  const setup = { ...PLAIN, fs: 8000, target: 0.05 };
  const followed = (orders: readonly number[], powers: readonly number[], of = setup) =>
    filterBurden(
      burdenTable(
        of,
        orders.map((order) => lineOf(of, order)),
      ),
      powers.map((power) => Float64Array.of(power)),
    ).with.notches;

  test("none that has nothing to remove", () => {
    expect(followed([1, 3], [1, 0])).toEqual([1]);
    expect(followed([1, 3], [0, 1])).toEqual([3]);
    expect(followed([1, 3], [1, 1])).toEqual([1, 3]);
  });

  test("the three with the most power, two lines of one multiple together", () => {
    expect(followed([1, 2, 3, 4], [3, 2, 0.5, 1])).toEqual([1, 2, 4]);
    expect(followed([1, 2, 3, 3, 4], [3, 2, 0.8, 0.8, 1])).toEqual([1, 2, 3]);
  });

  test("none within the control bandwidth or folded in hover", () => {
    expect(followed([0.125, 1], [1e-6, 1])).toEqual([1]);
    expect(followed([1, 25], [1, 1])).toEqual([1]); // 5 kHz shows at 3 kHz
  });

  test("the lower one of two that do the same", () => {
    // lines so close that either notch removes both
    const near = { ...setup, notch: { quality: 0.6, trackingError: 0 } };
    const lines = [1, 1 + 1e-14].map((order) => lineOf(near, order));
    const burden = filterBurden(
      burdenTable(near, lines),
      lines.map(() => Float64Array.of(1)),
    );
    expect(burden.with.notches).toEqual([1]);
  });
});

test("the delay of most of the flight is that of its slow motors", () => {
  const setup: BurdenSetup = {
    ...PLAIN,
    speeds: Float64Array.of(100, 150, 200),
    weights: Float64Array.of(0.009, 0.191, 0.8),
  };
  const table = burdenTable(setup, [lineOf(setup, 1)]);
  const burden = filterBurden(table, [Float64Array.of(100, 100, 100)]).with;
  expect(burden.notches).toEqual([1]);
  const delay = (f0: number) => Math.atan(30 / f0 / 3 / (1 - (30 / f0) ** 2)) / (2 * Math.PI * 30);
  expect(burden.delay / delay(200)).toBeCloseTo(1, 3);
  expect(burden.delayMostOfFlight / delay(150)).toBeCloseTo(1, 3);
});
