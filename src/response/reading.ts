/**
 * What the chip of a stack reads, at all speeds, from the bare frame's modal amplitudes.
 *
 * Receptance coupling at the six motions of the seat. The bare frame moves the seat by u0; the stack
 * presses on it with omega^2 M s, so the seat moves by b = u0 + omega^2 H M s with the receptance H of
 * the bare frame there. In the stack's coordinates (`stack.ts`), where M = 1 and s_i = tau_i b_i:
 *
 *   (1 - omega^2 H diag(tau)) b = u0
 *
 * H = sum of psi psi'/(lambda (1 + i eta) - omega^2) over the modes known, plus the flexibility of the
 * modes left out.
 */

import { GRAVITY } from "../excitation/speeds.ts";
import { addProduct, panelsFor } from "../linalg/panels.ts";
import { motionWithoutElastic } from "./bare-motion.ts";
import { coupleStack, couplingRoom } from "./coupling.ts";
import type { Harmonics } from "./harmonic.ts";
import { multiplySix, type Place } from "./place.ts";
import { type Port, portOf } from "./port.ts";
import { addSquares, shareOut } from "./powers.ts";
import type { MultipleMotion } from "./shaken.ts";

const DEGREE = Math.PI / 180;

/** Readings of one place. Rotors never share a phase, so their powers add; so do the orders'. */
export interface Reading {
  /** mean-square readings by order and speed: rotation rate ((deg/s)^2) and acceleration (g^2) */
  readonly gyroPower: readonly Float64Array[];
  readonly accelPower: readonly Float64Array[];
  /** by axis x y z and speed, all orders */
  readonly gyroAxisPower: readonly Float64Array[];
  readonly accelAxisPower: readonly Float64Array[];
  /** mean-square over the flight mix, all orders, by axis x y z */
  readonly gyroAxes: Float64Array;
  readonly accelAxes: Float64Array;
  /** mean-square over the flight mix of order and rotor: gyro at order x rotors + rotor, likewise acceleration */
  readonly gyroShares: Float64Array;
  readonly accelShares: Float64Array;
}

/** Everything of the bare frame that readings need. */
export interface Shaken {
  readonly h: Harmonics;
  readonly motions: readonly MultipleMotion[];
}

/**
 * Measured on the five-inch sample, 40 modes and 300 speeds: 1.3 us for each load at each speed, of which
 * more than half are the sums over the modes. Fewer terms will not do: the receptances of 40 modes over
 * the speeds of one multiple have a rank of 28 to 35 within 1e-12, so that far modes cannot share an
 * expansion, and all speeds of the default flight mixes carry weight.
 *
 * @returns mean-square readings, see Reading
 * @throws SolveError where the frame with its stack is right on a resonance that nothing damps
 */
export function readPlace({ h, motions }: Shaken, place: Place): Reading {
  const { grid, weights } = h.excitation;
  const S = grid.length;
  const rows = () => Array.from({ length: 3 }, () => new Float64Array(S));
  const reading: Reading = {
    gyroPower: h.orders.map(() => new Float64Array(S)),
    accelPower: h.orders.map(() => new Float64Array(S)),
    gyroAxisPower: rows(),
    accelAxisPower: rows(),
    gyroAxes: new Float64Array(3),
    accelAxes: new Float64Array(3),
    gyroShares: new Float64Array(h.orders.length * h.rotors.length),
    accelShares: new Float64Array(h.orders.length * h.rotors.length),
  };
  const port = portOf(place, h.elastic);
  for (const motion of motions) addMultiple(reading, h, motion, port, place);
  const mean = (power: Float64Array) => power.reduce((sum, p, s) => sum + weights[s] * p, 0);
  for (let i = 0; i < 3; i++) {
    reading.gyroAxes[i] = mean(reading.gyroAxisPower[i]);
    reading.accelAxes[i] = mean(reading.accelAxisPower[i]);
  }
  return reading;
}

function addMultiple(out: Reading, h: Harmonics, motion: MultipleMotion, port: Port, place: Place) {
  const { omega, half, amplitude } = motion;
  const { grid } = h.excitation;
  const S = grid.length;
  const width = 2 * half;
  const panels = panelsFor(width);
  const { still, rising } = motionWithoutElastic(h, motion, port, place);
  const room = couplingRoom();
  const u0 = new Float64Array(6 * width);
  const s = place.stack ? new Float64Array(6 * width) : u0;
  const chip = new Float64Array(6 * width);
  // by load and speed
  const gyro = new Float64Array(half * S);
  const accel = new Float64Array(half * S);
  for (let at = 0; at < S; at++) {
    const speed = grid[at];
    for (let k = 0; k < u0.length; k++) u0[k] = still[k] + rising[k] * (speed * speed);
    addProduct(u0, port.psi, amplitude, panels * at, panels);
    if (place.stack) coupleStack(s, u0, room, motion, at, port, place.stack);
    multiplySix(chip, port.chip, s, width);
    // rate = i omega theta, acceleration = -omega^2 u
    const rate = omega[at] / DEGREE;
    const acceleration = (omega[at] * omega[at]) / GRAVITY;
    addSquares(out.accelAxisPower, accel, at, chip, 0, half, acceleration);
    addSquares(out.gyroAxisPower, gyro, at, chip, 3 * width, half, rate);
  }
  shareOut(out.gyroPower, out.gyroShares, h, motion, gyro);
  shareOut(out.accelPower, out.accelShares, h, motion, accel);
}

/** Root mean square over the flight mix and all axes. */
export function rms(powerByAxis: Float64Array): number {
  return Math.sqrt(powerByAxis[0] + powerByAxis[1] + powerByAxis[2]);
}
