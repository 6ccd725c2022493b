/** The filters run sample by sample: what comes out of a sine is what the response says. */

import { describe, expect, test } from "vitest";
import {
  type Biquad,
  lowPassBiquad,
  notchBiquad,
  smootherBiquad,
} from "../../src/filter/biquad.ts";
import { biquadResponse } from "../../src/filter/biquad-response.ts";

const fs = 4000;
const FILTERS: readonly (readonly [string, Biquad])[] = [
  ["notch at 200 Hz, Q 3", notchBiquad({ f0: 200, Q: 3, fs })],
  ["notch at 1300 Hz, Q 1", notchBiquad({ f0: 1300, Q: 1, fs })],
  ["low-pass at 100 Hz", lowPassBiquad({ f0: 100, Q: Math.SQRT1_2, fs })],
  ["low-pass at 900 Hz, Q 2", lowPassBiquad({ f0: 900, Q: 2, fs })],
  ["smoother of 0.2", smootherBiquad(0.2, fs)],
];

/** Long enough for every transient here to fall below rounding (poles within 0.98). */
const SETTLED = 4000;
/** A whole number of periods of every frequency below: 1 s/20. */
const WINDOW = 200;

describe.each(FILTERS)("%s", (_, filter) => {
  test.each([20, 100, 180, 200, 640, 1900])("a sine of %i Hz", (f) => {
    const w = (2 * Math.PI * f) / fs;
    const y = run(filter, (n) => Math.cos(w * n));
    // y = Re[H e^(iwn)], so H = (2/N) sum y e^(-iwn) over whole periods
    let [re, im] = [0, 0];
    for (let n = SETTLED; n < SETTLED + WINDOW; n++) {
      re += (2 / WINDOW) * y[n] * Math.cos(w * n);
      im -= (2 / WINDOW) * y[n] * Math.sin(w * n);
    }
    const { gain, phase } = biquadResponse(filter, f);
    expect(Math.hypot(re, im)).toBeCloseTo(gain, 12);
    expect(re).toBeCloseTo(gain * Math.cos(phase), 12);
    expect(im).toBeCloseTo(gain * Math.sin(phase), 12);
  });

  test("a ramp comes out late by the delay of slow signals", () => {
    const y = run(filter, (n) => n);
    const late = SETTLED - y[SETTLED];
    expect(late / fs).toBeCloseTo(biquadResponse(filter, 0).groupDelay, 12);
  });
});

/** y[n] = sum b_k x[n-k] - sum a_k y[n-k] from rest (size SETTLED + WINDOW). */
function run({ b, a }: Biquad, x: (n: number) => number): Float64Array {
  const y = new Float64Array(SETTLED + WINDOW);
  for (let n = 0; n < y.length; n++) {
    for (let k = 0; k <= Math.min(n, 2); k++) {
      y[n] += b[k] * x(n - k) - (k > 0 ? a[k] * y[n - k] : 0);
    }
  }
  return y;
}
