import { describe, expect, test } from "vitest";
import { fixedSeedGenerator } from "../../src/linalg/random.ts";
import { gyroAxes, gyroReading } from "../../src/sensing/gyro-reading.ts";

/** A line as complex amplitudes along x, y, z: [re, im]. */
type Line = readonly (readonly [number, number])[];

/** Directions evenly over the sphere: steps in z and in azimuth; the mean of z^2 is off by 2.5e-5. */
const DIRECTIONS = Array.from({ length: 200 }, (_, i) => {
  const z = (i + 0.5) / 100 - 1;
  return Array.from({ length: 12 }, (_, j) => {
    const r = Math.sqrt(1 - z * z);
    const turn = (2 * Math.PI * (j + 0.5)) / 12;
    return [r * Math.cos(turn), r * Math.sin(turn), z];
  });
}).flat();

const meanSquare = (re: number, im: number) => (re * re + im * im) / 2;

/** Mean over directions of the mean square of rate + s.a, the two with their phases. */
function overDirections(rate: readonly [number, number], a: Line, s: number): number {
  let sum = 0;
  for (const d of DIRECTIONS) {
    const [re, im] = [0, 1].map(
      (part) => rate[part] + s * a.reduce((dot, along, k) => dot + d[k] * along[part], 0),
    );
    sum += meanSquare(re, im);
  }
  return sum / DIRECTIONS.length;
}

describe("a gyro that feels acceleration", () => {
  const random = fixedSeedGenerator(7);
  const amplitude = (size: number) => [size * random(), size * random()] as const;
  const lines = Array.from({ length: 20 }, () => ({
    rates: [amplitude(3), amplitude(3), amplitude(3)],
    acceleration: [amplitude(15), amplitude(15), amplitude(15)],
    s: 0.3 * (1 + random()),
  }));

  test("each axis: the mean over all directions of its sensitivity, whatever the phases", () => {
    for (const { rates, acceleration, s } of lines) {
      const [rate, accel] = [rates, acceleration].map((line) =>
        line.map(([re, im]) => Float64Array.of(meanSquare(re, im))),
      );
      gyroAxes(rate, accel, s).forEach((axis, i) => {
        expect(axis[0] / overDirections(rates[i], acceleration, s)).toBeCloseTo(1, 4);
      });
    }
  });

  test("three axes together are the sum of the axes", () => {
    const power = (seed: number) =>
      [0, 1, 2].map((axis) => Float64Array.from({ length: 5 }, (_, i) => seed + axis + i));
    const total = (axes: Float64Array[]) =>
      axes[0].map((_, i) => axes.reduce((sum, axis) => sum + axis[i], 0));
    const [rate, accel] = [power(1), power(4)];
    const axes = total(gyroAxes(rate, accel, 0.1));
    const sum = gyroReading(total(rate), total(accel), 0.1);
    axes.forEach((value, i) => {
      expect(value).toBeCloseTo(sum[i], 13);
    });
  });

  test("1 g rms through 0.1 deg/s per g is 0.1 deg/s rms; without sensitivity only the rate", () => {
    expect(Math.sqrt(gyroReading(Float64Array.of(0), Float64Array.of(1), 0.1)[0])).toBe(0.1);
    expect([...gyroReading(Float64Array.of(3, 4), Float64Array.of(9, 9), 0)]).toEqual([3, 4]);
  });
});
