import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { InputError } from "../../src/errors.ts";
import { firstOrderLag, notch, secondOrderLowPass } from "../../src/filter/lag.ts";
import { between, RUNS, slope } from "./filter-orders.ts";

const filter = fc.record({ f0: between(1, 5000), Q: between(0.3, 12) });
const ratio = between(0.01, 20);

describe("the transfer functions", () => {
  test("first order: H = 1/(1 + iu)", () => {
    fc.assert(
      fc.property(between(1, 5000), ratio, (fc0, u) => {
        const { gain, phase } = firstOrderLag(fc0, u * fc0);
        // H (1 + iu) = 1
        const [re, im] = [gain * Math.cos(phase), gain * Math.sin(phase)];
        expect(re - u * im).toBeCloseTo(1, 12);
        expect(im + u * re).toBeCloseTo(0, 12);
      }),
      RUNS,
    );
  });

  test("second order: H (1 - u^2 + iu/Q) = 1 for a low-pass, 1 - u^2 for a notch", () => {
    fc.assert(
      fc.property(filter, ratio, (of, u) => {
        for (const [kind, numerator] of [
          [secondOrderLowPass, 1],
          [notch, 1 - u * u],
        ] as const) {
          const { gain, phase } = kind(of, u * of.f0);
          const [re, im] = [gain * Math.cos(phase), gain * Math.sin(phase)];
          expect(re * (1 - u * u) - (im * u) / of.Q).toBeCloseTo(numerator, 9);
          expect(im * (1 - u * u) + (re * u) / of.Q).toBeCloseTo(0, 9);
        }
      }),
      RUNS,
    );
  });

  test("group delay is the fall of the phase", () => {
    fc.assert(
      fc.property(filter, ratio, (of, u) => {
        fc.pre(Math.abs(u - 1) > 1e-3); // the notch's jump
        const f = u * of.f0;
        const unit = 1 / (2 * Math.PI * of.f0);
        for (const at of [
          (x: number) => firstOrderLag(of.f0, x),
          (x: number) => secondOrderLowPass(of, x),
          (x: number) => notch(of, x),
        ]) {
          const measured = slope((x) => at(x).phase, f);
          expect(Math.abs(at(f).groupDelay - measured) / unit).toBeLessThan(1e-6);
        }
      }),
      RUNS,
    );
  });
});

test("a constant passes unchanged, late by 1/(2 pi fc) or 1/(2 pi f0 Q)", () => {
  const lag = firstOrderLag(100, 0);
  expect(lag).toEqual({ gain: 1, phase: -0, groupDelay: 1 / (2 * Math.PI * 100) });
  for (const kind of [secondOrderLowPass, notch]) {
    const { gain, phase, groupDelay } = kind({ f0: 150, Q: 5 }, 0);
    expect([gain, Math.abs(phase)]).toEqual([1, 0]);
    expect(groupDelay).toBeCloseTo(1 / (2 * Math.PI * 150 * 5), 18);
  }
});

test("the first-order lag is at -3 dB and an eighth of a turn at its cut-off", () => {
  expect(firstOrderLag(80, 80).gain).toBeCloseTo(Math.SQRT1_2, 15);
  expect(firstOrderLag(80, 80).phase).toBeCloseTo(-Math.PI / 4, 15);
});

test("a low-pass has gain Q and a quarter turn at f0, and comes to half a turn", () => {
  const at = secondOrderLowPass({ f0: 90, Q: 1.7 }, 90);
  expect(at.gain).toBeCloseTo(1.7, 14);
  expect(at.phase).toBeCloseTo(-Math.PI / 2, 14);
  expect(secondOrderLowPass({ f0: 90, Q: 1.7 }, 9e8).phase).toBeCloseTo(-Math.PI, 6);
});

describe("a notch", () => {
  const order = { f0: 200, Q: 3 };

  test("removes f0; there the phase is the one just below, and jumps by half a turn", () => {
    const [below, at, above] = [200 - 1e-9, 200, 200 + 1e-9].map((f) => notch(order, f));
    expect(at.gain).toBe(0);
    expect(at.phase).toBe(-Math.PI / 2);
    expect(below.phase).toBeCloseTo(-Math.PI / 2, 8);
    expect(above.phase).toBeCloseTo(Math.PI / 2, 8);
  });

  test("is f0/Q wide at -3 dB", () => {
    fc.assert(
      fc.property(filter, (of) => {
        // |1 - u^2| = u/Q
        const half = 1 / (2 * of.Q);
        const middle = Math.hypot(1, half);
        expect(notch(of, (middle - half) * of.f0).gain).toBeCloseTo(Math.SQRT1_2, 12);
        expect(notch(of, (middle + half) * of.f0).gain).toBeCloseTo(Math.SQRT1_2, 12);
      }),
      RUNS,
    );
  });

  test("delays as the low-pass of the same f0 and Q", () => {
    for (const f of [0, 50, 200, 900]) {
      expect(notch(order, f).groupDelay).toBe(secondOrderLowPass(order, f).groupDelay);
    }
  });
});

describe("refused", () => {
  const good = { f0: 100, Q: 1 };
  test.each<readonly [string, () => unknown, string]>([
    ["no cut-off", () => firstOrderLag(0, 10), "fc: the cut-off frequency must be above 0"],
    [
      "no number",
      () => firstOrderLag(Number.NaN, Number.NaN),
      "fc: the cut-off frequency must be above 0, but is NaN Hz.\nf: the frequency must be 0 or more, but is NaN Hz.",
    ],
    ["negative f", () => notch(good, -1), "f: the frequency must be 0 or more, but is -1 Hz."],
    ["endless f", () => notch(good, Number.POSITIVE_INFINITY), "f: the frequency must be a finite"],
    ["negative f0", () => notch({ f0: -1, Q: 1 }, 1), "f0: the frequency of the filter must be"],
    ["no Q", () => secondOrderLowPass({ f0: 1, Q: 0 }, 1), "Q: the quality factor must be above 0"],
  ])("%s", (_, call, message) => {
    expect(call).toThrow(InputError);
    expect(call).toThrow(message);
  });
});
