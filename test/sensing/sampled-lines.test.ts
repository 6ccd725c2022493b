import { describe, expect, test } from "vitest";
import { lowPassBiquad } from "../../src/filter/biquad.ts";
import { secondOrderLowPass } from "../../src/filter/lag.ts";
import { ownLowPass, ownPowerGain } from "../../src/sensing/own-low-pass.ts";
import { sampleLines } from "../../src/sensing/sampled-lines.ts";

describe("the chip's own low-pass", () => {
  test("takes half the power at its bandwidth, and 1/(1 + (f/fb)^4) anywhere", () => {
    expect(ownPowerGain(500, 500)).toBeCloseTo(0.5, 15);
    for (const f of [0, 20, 499, 1600, 26000]) {
      expect(ownPowerGain(500, f) * (1 + (f / 500) ** 4)).toBeCloseTo(1, 13);
    }
  });

  test("delays slow signals by sqrt(2)/(2 pi fc): 0.90 ms at 250 Hz", () => {
    const { groupDelay } = secondOrderLowPass(ownLowPass(250), 0);
    expect(groupDelay).toBeCloseTo(Math.SQRT2 / (2 * Math.PI * 250), 15);
    expect((groupDelay * 1e3).toFixed(2)).toBe("0.90");
  });
});

describe("lines in the samples", () => {
  const grid = Float64Array.of(700, 900, 2600);
  const lines = [
    { name: "unbalance", order: 1, power: Float64Array.of(1, 2, 3) },
    { name: "blade pass", order: 3, power: Float64Array.of(4, 5, 6) },
  ];

  test("keep name and order, and are given anew", () => {
    const out = sampleLines(lines, grid, { sampling: 1000, bandwidth: 250 });
    expect(out.map(({ name, order }) => [name, order])).toEqual([
      ["unbalance", 1],
      ["blade pass", 3],
    ]);
    expect([...lines[1].power]).toEqual([4, 5, 6]);
    expect(sampleLines([], grid, { sampling: 1000, bandwidth: 250 })).toEqual([]);
  });

  test("in time: a sine through a low-pass, sampled, has that power at that frequency", () => {
    const sampling = 1000;
    const bandwidth = 250;
    const out = sampleLines(lines, grid, { sampling, bandwidth });
    lines.forEach((line, i) => {
      grid.forEach((speed, s) => {
        const f = (line.order * speed) / (2 * Math.PI);
        expect(out[i].trueFrequency[s]).toBeCloseTo(f, 10);
        const samples = chip(f, line.power[s], sampling, bandwidth);
        const shown = out[i].frequency[s];
        // a sine of mean square p has |sum x e^-jwn|^2 2/N^2 = p at its own frequency
        expect(powerAt(samples, shown / sampling) / out[i].power[s]).toBeCloseTo(1, 2);
        // and next to nothing elsewhere
        const elsewhere = shown > sampling / 4 ? shown - 100 : shown + 100;
        expect(powerAt(samples, elsewhere / sampling) / out[i].power[s]).toBeLessThan(0.01);
      });
    });
  });

  test("fold the fourteenfold of 2600 rad/s, and little of it is left", () => {
    const [{ frequency, trueFrequency, power }] = sampleLines(
      [{ name: "x", order: 14, power: Float64Array.of(1) }],
      Float64Array.of(2600),
      { sampling: 8000, bandwidth: 500 },
    );
    expect(trueFrequency[0]).toBeCloseTo(5793.2, 1);
    expect(frequency[0]).toBeCloseTo(8000 - 5793.2, 1);
    expect(power[0]).toBeCloseTo((500 / 5793.2) ** 4, 6);
  });
});

const STEPS = 250;

/** Samples of a sine of mean square `power` behind a low-pass that runs 250 times as fast (size 400). */
function chip(f: number, power: number, sampling: number, bandwidth: number): Float64Array {
  const fine = sampling * STEPS;
  const { a, b } = lowPassBiquad({ f0: bandwidth, Q: Math.SQRT1_2, fs: fine });
  const out = new Float64Array(400);
  const settled = 50 * STEPS;
  let [x1, x2, y1, y2] = [0, 0, 0, 0];
  for (let n = 0; n < settled + STEPS * out.length; n++) {
    const x = Math.sqrt(2 * power) * Math.cos((2 * Math.PI * f * n) / fine);
    const y = b[0] * x + b[1] * x1 + b[2] * x2 - a[1] * y1 - a[2] * y2;
    [x1, x2, y1, y2] = [x, x1, y, y1];
    if (n >= settled && (n - settled) % STEPS === 0) out[(n - settled) / STEPS] = y;
  }
  return out;
}

/** Under a Hann window, so that lines do not spill far. @param share frequency over sampling rate */
function powerAt(x: Float64Array, share: number): number {
  let [re, im, sum] = [0, 0, 0];
  x.forEach((value, n) => {
    const window = 1 - Math.cos((2 * Math.PI * (n + 0.5)) / x.length);
    re += window * value * Math.cos(2 * Math.PI * share * n);
    im += window * value * Math.sin(2 * Math.PI * share * n);
    sum += window;
  });
  return (2 * (re * re + im * im)) / sum ** 2;
}
