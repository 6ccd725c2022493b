import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { InputError } from "../../src/errors.ts";
import {
  type Biquad,
  lowPassBiquad,
  notchBiquad,
  smootherBiquad,
} from "../../src/filter/biquad.ts";
import { biquadResponse, dcGroupDelay } from "../../src/filter/biquad-response.ts";
import { notch, secondOrderLowPass } from "../../src/filter/lag.ts";
import { between, order, RUNS, slope } from "./filter-orders.ts";

/** No zero on the unit circle and b0 not b2: unlike low-pass and notch. */
const SKEW: Biquad = { b: [0.3, 0.1, -0.05], a: [1, -0.9, 0.5], fs: 1000 };

describe("the frequency response", () => {
  test("is the analogue filter's at the frequency the bilinear transform takes it from", () => {
    // s = i tan(w/2)/tan(w0/2), so omega' = 2 fs tan(pi f/fs) and d omega'/d omega = 1 + tan^2
    fc.assert(
      fc.property(order, between(0, 0.49), (o, share) => {
        const t = Math.tan(Math.PI * share);
        const t0 = Math.tan((Math.PI * o.f0) / o.fs);
        const prototype = { f0: (o.fs * t0) / Math.PI, Q: o.Q };
        for (const [digital, analogue] of [
          [lowPassBiquad(o), secondOrderLowPass],
          [notchBiquad(o), notch],
        ] as const) {
          const ours = biquadResponse(digital, share * o.fs);
          const theirs = analogue(prototype, (o.fs * t) / Math.PI);
          expect(ours.gain).toBeCloseTo(theirs.gain, 10);
          expect(ours.phase).toBeCloseTo(theirs.phase, 9);
          const delay = theirs.groupDelay * (1 + t * t);
          expect(Math.abs(ours.groupDelay / delay - 1)).toBeLessThan(1e-9);
        }
      }),
      RUNS,
    );
  });

  test("is the sum over the coefficients, for any of them", () => {
    const coefficient = between(-2, 2);
    const triple = fc.tuple(coefficient, coefficient, coefficient);
    fc.assert(
      fc.property(
        triple,
        between(-0.6, 0.6),
        between(-0.6, 0.6),
        between(0.01, 0.49),
        (b, p, q, share) => {
          // real poles p and q
          const filter: Biquad = { b, a: [1, -p - q, p * q], fs: 1 };
          const [B, A] = [sums(b, share), sums(filter.a, share)];
          fc.pre(Math.hypot(B.re, B.im) > 1e-3);
          const ours = biquadResponse(filter, share);
          expect(ours.gain).toBeCloseTo(Math.hypot(B.re, B.im) / Math.hypot(A.re, A.im), 11);
          const phase = Math.atan2(B.im, B.re) - Math.atan2(A.im, A.re);
          expect(Math.cos(ours.phase)).toBeCloseTo(Math.cos(phase), 10);
          expect(Math.sin(ours.phase)).toBeCloseTo(Math.sin(phase), 10);
          expect(Math.abs(ours.phase)).toBeLessThanOrEqual(Math.PI);
          expect(ours.groupDelay).toBeCloseTo(B.delay - A.delay, 8);
        },
      ),
      RUNS,
    );
  });

  test("of a sign change is half a turn of lag", () => {
    const { gain, phase } = biquadResponse({ b: [0, -1, 0], a: [1, 0, 0], fs: 1 }, 0);
    expect([gain, phase]).toEqual([1, -Math.PI]);
  });

  test("group delay is the fall of the phase", () => {
    fc.assert(
      fc.property(order, between(0.01, 0.49), (o, share) => {
        const f = share * o.fs;
        fc.pre(Math.abs(f / o.f0 - 1) > 1e-3); // the notch's jump
        for (const filter of [lowPassBiquad(o), notchBiquad(o), { ...SKEW, fs: o.fs }]) {
          const measured = slope((x) => biquadResponse(filter, x).phase, f, 1e-6);
          expect(Math.abs((biquadResponse(filter, f).groupDelay - measured) * o.fs)).toBeLessThan(
            1e-6,
          );
        }
      }),
      RUNS,
    );
  });

  test("tends to the analogue filter as the square of the time step", () => {
    const prototype = { f0: 100, Q: 0.8 };
    for (const [digital, analogue] of [
      [lowPassBiquad, secondOrderLowPass],
      [notchBiquad, notch],
    ] as const) {
      const exact = analogue(prototype, 60);
      const errors = [4000, 8000, 16000].map((fs) => {
        const ours = biquadResponse(digital({ ...prototype, fs }), 60);
        return [
          ours.gain - exact.gain,
          ours.phase - exact.phase,
          ours.groupDelay - exact.groupDelay,
        ];
      });
      for (const i of [0, 1, 2]) {
        expect(Math.log2(errors[0][i] / errors[1][i])).toBeCloseTo(2, 1);
        expect(Math.log2(errors[1][i] / errors[2][i])).toBeCloseTo(2, 2);
      }
    }
  });
});

describe("a notch", () => {
  test("passes a constant and half the sampling rate unchanged, and nothing at f0", () => {
    fc.assert(
      fc.property(order, (o) => {
        const filter = notchBiquad(o);
        const [dc, top] = [0, o.fs / 2].map((f) => biquadResponse(filter, f));
        expect(dc.gain).toBeCloseTo(1, 12);
        expect(dc.phase).toBe(0);
        expect(top.gain).toBeCloseTo(1, 12);
        expect(top.phase).toBeCloseTo(0, 12);
        expect(biquadResponse(filter, o.f0).gain).toBe(0);
      }),
      RUNS,
    );
  });

  test("lags by a quarter turn at f0, leads by one just above, and delays alike on both sides", () => {
    fc.assert(
      fc.property(order, (o) => {
        const [below, at, above] = [1 - 1e-7, 1, 1 + 1e-7].map((share) =>
          biquadResponse(notchBiquad(o), share * o.f0),
        );
        expect(at.phase).toBeCloseTo(-Math.PI / 2, 11);
        expect(below.phase).toBeCloseTo(-Math.PI / 2, 4);
        expect(above.phase).toBeCloseTo(Math.PI / 2, 4);
        expect(at.groupDelay / below.groupDelay).toBeCloseTo(1, 4);
        expect(at.groupDelay / above.groupDelay).toBeCloseTo(1, 4);
      }),
      RUNS,
    );
  });
});

describe("a low-pass", () => {
  test("has gain Q and a quarter turn at f0, -3 dB for Q = 1/sqrt(2), and nothing at fs/2", () => {
    fc.assert(
      fc.property(order, (o) => {
        const { gain, phase } = biquadResponse(lowPassBiquad(o), o.f0);
        expect(gain / o.Q).toBeCloseTo(1, 11);
        expect(phase).toBeCloseTo(-Math.PI / 2, 10);
        const flattest = biquadResponse(lowPassBiquad({ ...o, Q: Math.SQRT1_2 }), o.f0);
        expect(20 * Math.log10(flattest.gain)).toBeCloseTo(10 * Math.log10(0.5), 10);
        const top = biquadResponse(lowPassBiquad(o), o.fs / 2);
        expect(top.gain).toBe(0);
        expect(top.phase).toBeCloseTo(-Math.PI, 10);
      }),
      RUNS,
    );
  });
});

describe("the delay of slow signals", () => {
  test("is 1/(2 Q tan(w0/2)) samples for low-pass and notch", () => {
    fc.assert(
      fc.property(order, (o) => {
        const expected = 1 / (2 * o.Q * Math.tan((Math.PI * o.f0) / o.fs)) / o.fs;
        expect(dcGroupDelay(lowPassBiquad(o)) / expected).toBeCloseTo(1, 11);
        expect(dcGroupDelay(notchBiquad(o)) / expected).toBeCloseTo(1, 11);
      }),
      RUNS,
    );
  });

  test("is (1 - k)/k samples for a smoother", () => {
    fc.assert(
      fc.property(between(1e-3, 1), between(100, 32000), (k, fs) => {
        expect(dcGroupDelay(smootherBiquad(k, fs)) * fs).toBeCloseTo((1 - k) / k, 8);
      }),
      RUNS,
    );
  });
});

describe("refused", () => {
  const filter = notchBiquad({ f0: 200, Q: 3, fs: 4000 });
  test.each([
    [-1, "f: the frequency must be 0 or more, but is -1 Hz."],
    [Number.NaN, "f: the frequency must be 0 or more, but is NaN Hz."],
    [
      2500,
      "f: the frequency must not lie above half the sampling rate, 2000 Hz, but is 2500 Hz: give the frequency it folds back to.",
    ],
    [Number.POSITIVE_INFINITY, "f: the frequency must be a finite number"],
  ])("a frequency of %f Hz", (f, message) => {
    expect(() => biquadResponse(filter, f)).toThrow(InputError);
    expect(() => biquadResponse(filter, f)).toThrow(message);
  });
});

/** sum c_k e^(-jkw) and Re[sum k c_k e^(-jkw) / that], as printed, w = 2 pi share. */
function sums(c: readonly number[], share: number) {
  let [re, im, kre, kim] = [0, 0, 0, 0];
  c.forEach((value, k) => {
    const [x, y] = [Math.cos(2 * Math.PI * share * k), -Math.sin(2 * Math.PI * share * k)];
    re += value * x;
    im += value * y;
    kre += k * value * x;
    kim += k * value * y;
  });
  return { re, im, delay: (kre * re + kim * im) / (re * re + im * im) };
}
