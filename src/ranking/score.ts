/** What each candidate reads over the flight mix, and what causes it. */

import type { Candidate } from "../model/types.ts";
import type { Modes } from "../modes/types.ts";
import type { Harmonics } from "../response/harmonic.ts";
import {
  type Reading,
  readTerms,
  rms,
  type SensorTerms,
  sensorTerms,
} from "../response/reading.ts";
import { type Sensor, sense } from "../response/sensor.ts";
import type { Cause, ModalMotion, OrderSpectrum } from "./types.ts";

/** Causes listed per candidate. */
const CAUSES = 3;

export interface Scored {
  readonly candidate: Candidate;
  readonly sensor: Sensor;
  readonly terms: SensorTerms;
  readonly reading: Reading;
  readonly gyro: number;
  readonly accel: number;
}

export function scoreCandidate(h: Harmonics, candidate: Candidate, sensor: Sensor): Scored {
  const terms = sensorTerms(h, sensor);
  const reading = readTerms(h, terms);
  return {
    candidate,
    sensor,
    terms,
    reading,
    gyro: rms(reading.gyroAxes),
    accel: rms(reading.accelAxes),
  };
}

/** The modes and orders with the largest shares of the gyro's noise power, each taken alone. */
export function causesOf(h: Harmonics, modes: Modes, reading: Reading): Cause[] {
  const all = reading.termPower.flatMap((power, order) =>
    Array.from(power, (p, term) => ({ order, term, p })),
  );
  const total = all.reduce((s, c) => s + c.p, 0);
  return all
    .sort((a, b) => b.p - a.p)
    .slice(0, CAUSES)
    .filter((c) => c.p > 0)
    .map(({ order, term, p }) => {
      const force = h.orders[order];
      const mode = modes.described[term];
      const frequency = mode?.frequency ?? 0;
      const speed = (2 * Math.PI * frequency) / force.order;
      const { low, full } = h.excitation.speeds;
      return {
        mode: mode?.number ?? 0,
        frequency,
        modeName: mode?.name ?? "the whole craft moves as one",
        order: force.name,
        share: p / total,
        met: speed >= low && speed <= full,
        rpm: (frequency * 60) / force.order,
      };
    });
}

/** How much each mode turns and moves the chip, and the share of the liveliest candidate. */
export function modalMotions(modes: Modes, sensors: readonly Sensor[]): ModalMotion[][] {
  const motions = sensors.map((sensor) =>
    modes.shapes.map((shape) => {
      const s = sense(sensor, shape);
      return { rotation: Math.hypot(s[0], s[1], s[2]), displacement: Math.hypot(s[3], s[4], s[5]) };
    }),
  );
  const largest = modes.shapes.map((_, k) => ({
    rotation: Math.max(...motions.map((m) => m[k].rotation)) || 1,
    displacement: Math.max(...motions.map((m) => m[k].displacement)) || 1,
  }));
  const calmest = modes.shapes.map((_, k) => Math.min(...motions.map((m) => m[k].rotation)));
  return motions.map((m) =>
    m.map(({ rotation, displacement }, k) => ({
      mode: modes.described[k].number,
      frequency: modes.described[k].frequency,
      rotation,
      displacement,
      rotationShare: rotation / largest[k].rotation,
      displacementShare: displacement / largest[k].displacement,
      calmestShare: calmest[k] / largest[k].rotation,
    })),
  );
}

/** Levels against speed: rms of each order, and of all together. */
export function spectraOf(h: Harmonics, reading: Reading) {
  const root = (power: Float64Array) => power.map(Math.sqrt);
  const spectra: OrderSpectrum[] = h.orders.map((o, i) => ({
    order: o.name,
    gyro: root(reading.gyroPower[i]),
    accel: root(reading.accelPower[i]),
  }));
  const sum = (powers: readonly Float64Array[]) =>
    powers[0].map((_, s) => powers.reduce((t, p) => t + p[s], 0));
  return {
    spectra,
    gyroTotal: root(sum(reading.gyroPower)),
    accelTotal: root(sum(reading.accelPower)),
  };
}

/** Speeds above this multiple of hover count as fast. */
const FAST = 1.5;

/** The gyro's level at hover, and how much of flight and noise belong to fast speeds. */
export function atSpeeds(h: Harmonics, gyroTotal: Float64Array) {
  const { grid, weights, speeds } = h.excitation;
  const above = grid.findIndex((w) => w >= speeds.hover);
  const i = Math.max(1, above);
  const t = (speeds.hover - grid[i - 1]) / (grid[i] - grid[i - 1]);
  const gyroAtHover = gyroTotal[i - 1] + t * (gyroTotal[i] - gyroTotal[i - 1]);
  let [flight, fast, all] = [0, 0, 0];
  for (let s = 0; s < grid.length; s++) {
    const power = weights[s] * gyroTotal[s] ** 2;
    all += power;
    if (grid[s] <= FAST * speeds.hover) continue;
    flight += weights[s];
    fast += power;
  }
  return { gyroAtHover, fast: { flight, power: all > 0 ? fast / all : 0 } };
}
