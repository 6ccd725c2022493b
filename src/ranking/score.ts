/** How the modes move each place, and its levels against speed. */

import { spreadPower } from "../excitation/spread.ts";
import { type Seat, seatMotion } from "../mesh/seat.ts";
import type { Modes } from "../modes/types.ts";
import type { Harmonics } from "../response/harmonic.ts";
import type { Reading } from "../response/reading.ts";
import type { ModalMotion, OrderSpectrum } from "./types.ts";

/**
 * How much each mode turns and moves the chip, and the share of the liveliest candidate.
 *
 * @param seats of the chips
 */
export function modalMotions(modes: Modes, seats: readonly Seat[]): ModalMotion[][] {
  const motions = seats.map((seat) =>
    modes.shapes.map((shape) => {
      const u = seatMotion(seat, shape);
      return { rotation: Math.hypot(u[3], u[4], u[5]), displacement: Math.hypot(u[0], u[1], u[2]) };
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

/** Levels against nominal speed, the motors' spread in them: rms of each order, and of all together. */
export function spectraOf(h: Harmonics, reading: Reading) {
  const { grid, motorSpread } = h.excitation;
  const spread = (power: Float64Array) => spreadPower(grid, power, motorSpread);
  const gyro = reading.gyroPower.map(spread);
  const accel = reading.accelPower.map(spread);
  const root = (power: Float64Array) => power.map(Math.sqrt);
  const sum = (powers: readonly Float64Array[]) =>
    powers[0].map((_, s) => powers.reduce((t, p) => t + p[s], 0));
  const spectra: OrderSpectrum[] = h.orders.map((o, i) => ({
    order: o.name,
    gyro: root(gyro[i]),
    accel: root(accel[i]),
  }));
  return { spectra, gyroTotal: root(sum(gyro)), accelTotal: root(sum(accel)) };
}

/** A curve against the grid's speeds, between two of them, at a speed (rad/s). */
export function levelAt(h: Harmonics, curve: Float64Array, speed: number): number {
  const { grid } = h.excitation;
  const above = grid.findIndex((w) => w >= speed);
  const i = Math.max(1, above);
  const t = (speed - grid[i - 1]) / (grid[i] - grid[i - 1]);
  return curve[i - 1] + t * (curve[i] - curve[i - 1]);
}

/** Speeds above this multiple of hover count as fast. */
export const FAST = 1.5;

/** How much of flight and noise belong to fast speeds. */
export function fastShare(h: Harmonics, gyroTotal: Float64Array) {
  // The curve has the motors' spread in it already, so each of its speeds counts as it is meant to be flown.
  const { grid, nominalWeights: weights, speeds } = h.excitation;
  let [flight, fast, all] = [0, 0, 0];
  for (let s = 0; s < grid.length; s++) {
    const power = weights[s] * gyroTotal[s] ** 2;
    all += power;
    if (grid[s] <= FAST * speeds.hover) continue;
    flight += weights[s];
    fast += power;
  }
  return { flight, power: all > 0 ? fast / all : 0 };
}
