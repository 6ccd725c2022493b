import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { InputError } from "../../src/errors.ts";
import { lowPassBiquad, notchBiquad } from "../../src/filter/biquad.ts";
import { biquadResponse } from "../../src/filter/biquad-response.ts";
import { complexGain, inSeries, phaseDelay } from "../../src/filter/frequency-response.ts";
import { firstOrderLag, notch, secondOrderLowPass } from "../../src/filter/lag.ts";
import { between, order, RUNS, slope } from "./filter-orders.ts";

describe("filters in series", () => {
  test("multiply as complex numbers, and delay as their sum", () => {
    fc.assert(
      fc.property(order, order, between(0.01, 0.49), (one, two, share) => {
        const f = share * one.fs;
        const [a, b] = [
          lowPassBiquad(one),
          notchBiquad({ ...two, f0: two.f0 * (one.fs / two.fs), fs: one.fs }),
        ].map((filter) => biquadResponse(filter, f));
        const both = inSeries([a, b]);
        const [x, y] = [complexGain(a), complexGain(b)];
        const [re, im] = complexGain(both);
        expect(re).toBeCloseTo(x[0] * y[0] - x[1] * y[1], 12);
        expect(im).toBeCloseTo(x[0] * y[1] + x[1] * y[0], 12);
        expect(both.groupDelay).toBe(a.groupDelay + b.groupDelay);
      }),
      RUNS,
    );
  });

  test("two equal first-order lags are one of second order with Q = 1/2", () => {
    for (const f of [0, 20, 80, 300]) {
      const two = inSeries([firstOrderLag(80, f), firstOrderLag(80, f)]);
      const one = secondOrderLowPass({ f0: 80, Q: 0.5 }, f);
      expect(two.gain).toBeCloseTo(one.gain, 14);
      expect(two.phase).toBeCloseTo(one.phase, 14);
      expect(two.groupDelay).toBeCloseTo(one.groupDelay, 16);
    }
  });

  test("the phase runs on beyond half a turn, and falls as the summed delay says", () => {
    const chain = (f: number) =>
      inSeries([
        secondOrderLowPass({ f0: 90, Q: 0.7 }, f),
        secondOrderLowPass({ f0: 150, Q: 1.2 }, f),
        firstOrderLag(250, f),
        notch({ f0: 70, Q: 3 }, f),
      ]);
    expect(chain(400).phase).toBeLessThan(-1.5 * Math.PI);
    for (const f of [5, 40, 120, 400]) {
      const measured = slope((x) => chain(x).phase, f);
      expect(Math.abs(chain(f).groupDelay / measured - 1)).toBeLessThan(1e-7);
    }
  });

  test("none changes nothing", () => {
    expect(inSeries([])).toEqual({ gain: 1, phase: 0, groupDelay: 0 });
  });
});

describe("phase delay", () => {
  test("of a pure delay is that delay at any frequency", () => {
    for (const f of [0, 1, 50]) {
      const pure = { gain: 1, phase: -2 * Math.PI * f * 3e-3, groupDelay: 3e-3 };
      expect(phaseDelay(pure, f)).toBeCloseTo(3e-3, 17);
    }
  });

  test("starts from the group delay at f = 0", () => {
    const at = (f: number) => phaseDelay(firstOrderLag(100, f), f);
    expect(at(0)).toBe(1 / (2 * Math.PI * 100));
    expect(at(1e-4) / at(0)).toBeCloseTo(1, 11);
  });

  test("refuses a negative frequency", () => {
    expect(() => phaseDelay(firstOrderLag(100, 1), -1)).toThrow(InputError);
    expect(() => phaseDelay(firstOrderLag(100, 1), Number.NaN)).toThrow("f: the frequency must be");
  });
});
