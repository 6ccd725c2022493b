/** What chips make of the motion at a place, and what is told beside the figures. */

import { describe, expect, test } from "vitest";
import { detailsOf } from "../../src/ranking/detail.ts";
import { instrumentsOf } from "../../src/ranking/instruments.ts";
import { smallCross } from "../response/joined.ts";
import { assessed, type Judged, judged, withInstruments } from "./judged.ts";

const IDEAL = { gyro: { accelerationSensitivity: 0, bandwidth: "1 MHz", noiseDensity: 0 } };
const plain = judged(smallCross({}, {}, { sensors: IDEAL }), 20, 4);
const under = (more: object): Judged =>
  withInstruments({ ...plain, file: smallCross({}, {}, more) });
const ideal = assessed(plain);

const mix = ({ excitation }: Judged, power: (order: number, s: number) => number) =>
  excitation.orders.reduce(
    (sum, _, o) => sum + excitation.weights.reduce((t, w, s) => t + w * power(o, s), 0),
    0,
  );

describe("what the chips pass on", () => {
  test("is the true motion where they do nothing to it", () => {
    for (const p of ideal) {
      expect(p.sensed.gyro / p.gyro).toBeCloseTo(1, 9);
      expect(p.filter.raw / p.gyro).toBeCloseTo(1, 9);
    }
  });

  test("is less by a second-order Butterworth low-pass: 1/(1 + (f/fb)^4) of each line's power", () => {
    const frame = under({ sensors: { gyro: { ...IDEAL.gyro, bandwidth: "150 Hz" } } });
    const { orders, grid } = frame.excitation;
    assessed(frame).forEach((p, i) => {
      const expected = mix(frame, (o, s) => {
        const f = (orders[o].order * grid[s]) / (2 * Math.PI);
        return ideal[i].reading.gyroPower[o][s] / (1 + (f / 150) ** 4);
      });
      expect(p.sensed.gyro ** 2 / expected).toBeCloseTo(1, 9);
      expect(p.sensed.gyro).toBeLessThan(0.7 * p.gyro);
    });
  });

  test("is more by acceleration, which each of three axes feels along a direction of its own", () => {
    const gyro = { ...IDEAL.gyro, accelerationSensitivity: 0.5 };
    const frame = under({ sensors: { gyro } });
    assessed(frame).forEach((p, i) => {
      const expected = mix(frame, (o, s) => {
        const { gyroPower, accelPower } = ideal[i].reading;
        // three axes, each with the mean over directions of cos^2: a third
        return gyroPower[o][s] + ((3 * 0.5 ** 2) / 3) * accelPower[o][s];
      });
      expect(p.sensed.gyro ** 2 / expected).toBeCloseTo(1, 9);
    });
  });

  test("together with the chip's noise is what filters get", () => {
    const density = 0.005;
    const gyro = { ...IDEAL.gyro, noiseDensity: density, sampling: "8 kHz", bandwidth: "500 Hz" };
    const frame = under({ sensors: { gyro } });
    // of a second-order Butterworth low-pass: pi/(2 sqrt 2) times its bandwidth
    const noise = 3 * density ** 2 * 500 * (Math.PI / (2 * Math.SQRT2));
    for (const p of assessed(frame)) {
      expect((p.filter.raw ** 2 - p.sensed.gyro ** 2) / noise).toBeCloseTo(1, 1);
    }
  });
});

describe("lines", () => {
  const more = { excitation: { orders: [{ order: 2, of: "thrust", fraction: 0.02 }] } };
  const sensors = { gyro: { sampling: "600 Hz" } };
  const frame = judged(smallCross({}, {}, { ...more, sensors }), 10, 20);
  const { groups, filters } = instrumentsOf(frame.file, frame.excitation, 4);

  test("of one multiple are one, with a name", () => {
    expect(groups.map((g) => [g.multiple, g.name, g.orders.length])).toEqual([
      [1, "once per turn", 2],
      [2, "order 2", 1],
      [3, "blade pass", 2],
      [6, "twice blade pass", 2],
    ]);
  });

  test("above half the sampling rate are marked as folded, and show within it", () => {
    filters().lines.forEach(({ order, frequency, folded }) => {
      frame.excitation.grid.forEach((speed, s) => {
        const f = (order * speed) / (2 * Math.PI);
        expect(folded?.[s]).toBe(f > 300 ? 1 : 0);
        // cos(2 pi f n/fs) has the same samples as the line that shows
        for (const n of [1, 2, 3, 7]) {
          const sample = (v: number) => Math.cos((2 * Math.PI * v * n) / 600);
          expect(sample(frequency[s])).toBeCloseTo(sample(f), 6);
        }
        expect(frequency[s]).toBeLessThanOrEqual(300);
      });
    });
  });
});

describe("beside the figures", () => {
  const frame = under({});
  const places = assessed(frame);
  const details = detailsOf(frame.bare, frame.instruments, places);
  const { grid, weights, speeds } = frame.excitation;
  const flown = Array.from(weights, (w) => w > 1e-4);

  test("the chips' nearest approach to the ends of their ranges: three times rms, thrust on top", () => {
    places.forEach(({ reading }, i) => {
      const { gyro, accelerometer, levelling } = details[i].clipping;
      const peaks = (powers: readonly Float64Array[], upTo: number, steady: boolean) =>
        powers.flatMap((power, axis) =>
          Array.from(power, (p, s) => {
            if (!flown[s] || grid[s] > upTo) return 0;
            const thrust = steady && axis === 2 ? (grid[s] / speeds.hover) ** 2 : 0;
            return 3 * Math.sqrt(p) + thrust;
          }),
        );
      const { gyroAxisPower, accelAxisPower } = reading;
      const most = (of: readonly number[]) => Math.max(...of);
      const full = speeds.full;
      expect(gyro?.peak).toBeCloseTo(most(peaks(gyroAxisPower, full, false)), 9);
      expect(accelerometer?.peak).toBeCloseTo(most(peaks(accelAxisPower, full, true)), 9);
      const slow = most(peaks(accelAxisPower, 1.5 * speeds.hover, true));
      expect(levelling?.peak).toBeCloseTo(slow, 9);
      expect([gyro?.range, accelerometer?.range]).toEqual([2000, 16]);
    });
  });

  test("offsets by rectification: of the gyro at all speeds, of the accelerometer in self-level flight", () => {
    places.forEach(({ reading }, i) => {
      const square = (upTo: number) =>
        Math.max(
          ...Array.from(grid, (speed, s) =>
            flown[s] && speed <= upTo
              ? reading.accelAxisPower.reduce((sum, axis) => sum + axis[s], 0)
              : 0,
          ),
        );
      const { gyro, accelerometer, tilt } = details[i].rectified;
      expect(gyro / (0.0004 * square(speeds.full))).toBeCloseTo(1, 9);
      expect(accelerometer / (0.0018 * square(1.5 * speeds.hover))).toBeCloseTo(1, 9);
      expect(Math.tan(tilt)).toBeCloseTo(accelerometer, 9);
    });
  });
});
