import { describe, expect, test } from "vitest";
import { InputError } from "../../src/errors.ts";
import { firstOrderLag, secondOrderLowPass } from "../../src/filter/lag.ts";
import { axisNoise, noiseBandwidth, noiseFloor } from "../../src/sensing/noise.ts";

/** Integral of |H|^2 over all f, by f = f0 tan(t) and the midpoint rule. */
function bandwidthOf(gain: (f: number) => number, f0: number): number {
  const steps = 20000;
  let sum = 0;
  for (let i = 0; i < steps; i++) {
    const t = ((i + 0.5) / steps) * (Math.PI / 2);
    sum += (gain(f0 * Math.tan(t)) / Math.cos(t)) ** 2;
  }
  return (f0 * sum * (Math.PI / 2)) / steps;
}

/** Q of the second-order sections of a Butterworth low-pass of even order: 1/(2 cos(pi (2k+1)/2n)). */
const sections = (n: number) =>
  Array.from({ length: n / 2 }, (_, k) => 1 / (2 * Math.cos((Math.PI * (2 * k + 1)) / (2 * n))));

describe("equivalent noise bandwidth", () => {
  test("first order: the integral of |H|^2", () => {
    const measured = bandwidthOf((f) => firstOrderLag(120, f).gain, 120);
    expect(noiseBandwidth(120, 1) / measured).toBeCloseTo(1, 8);
    expect(noiseBandwidth(120, 1)).toBeCloseTo(60 * Math.PI, 12);
  });

  test.each([2, 4, 6, 8])("order %i: the integral of |H|^2 of its sections in series", (n) => {
    const gain = (f: number) =>
      sections(n).reduce((product, Q) => product * secondOrderLowPass({ f0: 250, Q }, f).gain, 1);
    expect(noiseBandwidth(250, n) / bandwidthOf(gain, 250)).toBeCloseTo(1, 6);
  });

  test("order 3 is pi/3 f0; a very steep filter is f0 wide", () => {
    expect(noiseBandwidth(300, 3)).toBeCloseTo(100 * Math.PI, 11);
    expect(noiseBandwidth(300, 10_000)).toBeCloseTo(300, 5);
  });

  test.each<[number, number, string]>([
    [0, 2, "f0: the bandwidth must be above 0, but is 0 Hz."],
    [100, 0, "n: the order of the filter must be a whole number from 1, but is 0."],
    [100, 1.5, "n: the order of the filter must be a whole number from 1, but is 1.5."],
    [100, Number.NaN, "n: the order of the filter must be a whole number from 1, but is NaN."],
  ])("%d Hz, order %d: refused", (f0, n, message) => {
    expect(() => noiseBandwidth(f0, n)).toThrow(InputError);
    expect(() => noiseBandwidth(f0, n)).toThrow(message);
  });
});

describe("noise", () => {
  test("the row of a consumer 6-axis part: 0.0028 deg/s per sqrt(Hz), 0.028 deg/s rms in 100 Hz", () => {
    // as printed; that is one axis behind an ideal filter of 100 Hz
    expect(axisNoise(0.0028, 100)).toBeCloseTo(0.028, 15);
    // behind a second-order low-pass at 100 Hz 5 % more
    expect(axisNoise(0.0028, noiseBandwidth(100, 2)) / 0.028).toBeCloseTo(
      Math.sqrt(Math.PI / 4 / Math.sin(Math.PI / 4)),
      14,
    );
  });

  test("three axes have the power of each three times", () => {
    expect(noiseFloor(0.005, 200) ** 2).toBeCloseTo(3 * axisNoise(0.005, 200) ** 2, 15);
    expect(noiseFloor(0, 200)).toBe(0);
  });

  test("figures that are none are refused", () => {
    expect(() => axisNoise(-1, 100)).toThrow("density: the noise density must be 0 or more");
    expect(() => noiseFloor(1, Number.NaN)).toThrow(
      "bandwidth: the noise bandwidth must be 0 or more",
    );
  });
});
