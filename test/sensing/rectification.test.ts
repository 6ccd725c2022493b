import { describe, expect, test } from "vitest";
import { apparentTilt } from "../../src/attitude/tilt.ts";
import { falseTilt, rectifiedOffset } from "../../src/sensing/rectification.ts";

describe("the offset that vibration leaves", () => {
  test("in time: the mean of x + c x^2 over a beat of three sines", () => {
    const c = 0.0018;
    const sines = [
      [4, 7],
      [2.5, 11],
      [6, 3],
    ] as const; // amplitude in g, periods in the window
    const power = sines.reduce((sum, [a]) => sum + (a * a) / 2, 0);
    const steps = 360;
    let mean = 0;
    for (let n = 0; n < steps; n++) {
      const x = sines.reduce(
        (sum, [a, k]) => sum + a * Math.cos((2 * Math.PI * k * n) / steps + k),
        0,
      );
      mean += (x + c * x * x) / steps;
    }
    expect(rectifiedOffset(c, Float64Array.of(power))[0]).toBeCloseTo(mean, 13);
  });

  test("the rows of datasheets: under 0.1 g at 7.5 g rms, 0.01 deg/s at 5 g rms", () => {
    const [offset] = rectifiedOffset(0.0018, Float64Array.of(7.5 ** 2));
    expect(offset).toBeCloseTo(0.1, 2);
    const [drift] = rectifiedOffset(0.0004, Float64Array.of(5 ** 2));
    expect(drift).toBeCloseTo(0.01, 15);
  });

  test("each speed has its own", () => {
    expect([...rectifiedOffset(0.5, Float64Array.of(0, 2, 8))]).toEqual([0, 1, 4]);
  });
});

describe("false tilt", () => {
  test("is the angle of gravity with the offset across it", () => {
    for (const offset of [0, 0.001, 0.1, -0.1, 0.7]) {
      expect(falseTilt(offset)).toBeCloseTo(apparentTilt([offset, 0, 1]), 15);
    }
  });

  test("0.1 g reads 5.7 degrees", () => {
    expect((falseTilt(0.1) * 180) / Math.PI).toBeCloseTo(5.7106, 4);
  });
});
