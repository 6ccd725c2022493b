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
import { multiplyPanels, productSize } from "../linalg/panels.ts";
import { solveComplexInPlace } from "../linalg/small-complex.ts";
import type { Harmonics } from "./harmonic.ts";
import { ofUnitAmplitude } from "./load.ts";
import { leverRows, type Place, sixBy, transposed } from "./place.ts";
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

/** Numbers of H's 21 different entries: row and column. */
const PAIRS = Array.from({ length: 6 }, (_, i) =>
  Array.from({ length: i + 1 }, (_, j) => [i, j] as const),
).flat();

/** @returns mean-square readings, see Reading */
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
  const port = portOf(place);
  for (const motion of motions) addMultiple(reading, h, motion, port, place);
  const mean = (power: Float64Array) => power.reduce((sum, p, s) => sum + weights[s] * p, 0);
  for (let i = 0; i < 3; i++) {
    reading.gyroAxes[i] = mean(reading.gyroAxisPower[i]);
    reading.accelAxes[i] = mean(reading.accelAxisPower[i]);
  }
  return reading;
}

/** The place in the stack's own coordinates. */
interface Port {
  /** 6 x terms */
  readonly psi: Float64Array;
  /** products of two rows of psi, as PAIRS (21 x terms) */
  readonly pairs: Float64Array;
  /** W of the stack, or the identity */
  readonly W: Float64Array;
  /** flexibility of the modes left out, 6 x 6 */
  readonly flexibility: Float64Array;
  /** the chip's motion ux uy uz rx ry rz from the coordinates, 6 x 6 */
  readonly chip: Float64Array;
}

const IDENTITY = Float64Array.from({ length: 36 }, (_, i) => (i % 7 === 0 ? 1 : 0));

function portOf({ psi, flexibility, stack, chip }: Place): Port {
  const terms = psi.length / 6;
  const W = stack?.W ?? IDENTITY;
  const own = sixBy(W, psi, terms);
  const pairs = new Float64Array(PAIRS.length * terms);
  PAIRS.forEach(([i, j], p) => {
    for (let t = 0; t < terms; t++) pairs[p * terms + t] = own[i * terms + t] * own[j * terms + t];
  });
  const half = sixBy(W, flexibility, 6); // W F W', F symmetric
  return {
    psi: own,
    pairs,
    W,
    flexibility: sixBy(W, transposed(half), 6),
    chip: sixBy(leverRows(chip), stack?.back ?? IDENTITY, 6),
  };
}

/** u0 at every speed of one multiple: 6 x loads at 6 loads s, real and imaginary parts. */
function bareMotion(h: Harmonics, motion: MultipleMotion, port: Port, place: Place) {
  const { grid } = h.excitation;
  const { loads, amplitude } = motion;
  const [S, L] = [grid.length, loads.length];
  const product = new Float64Array(productSize(6, amplitude));
  multiplyPanels(product, port.psi, amplitude);
  const stride = productSize(1, amplitude);
  const rest = loads.map(({ order, rotor }) => restOf(h, place, order, rotor, port.W));
  const re = new Float64Array(6 * S * L);
  const im = new Float64Array(6 * S * L);
  for (let i = 0; i < 6; i++) {
    for (let l = 0; l < L; l++) {
      const { coefficient } = h.orders[loads[l].order];
      const [a, b] = [coefficient * rest[l].re[i], coefficient * rest[l].im[i]];
      for (let s = 0; s < S; s++) {
        const from = i * stride + s * L + l;
        const to = 6 * L * s + i * L + l;
        const square = grid[s] * grid[s];
        re[to] = product[from] + a * square;
        im[to] = product[from + S * L] + b * square;
      }
    }
  }
  return { re, im };
}

/** Static motion by the modes left out, for a unit amplitude of the order's force, in own coordinates. */
function restOf(h: Harmonics, { rest }: Place, order: number, rotor: number, W: Float64Array) {
  const { re, im } = ofUnitAmplitude(
    h.orders[order].kind,
    h.rotors[rotor].spin,
    (name) => rest[rotor][name],
  );
  return { re: sixBy(W, re, 1), im: sixBy(W, im, 1) };
}

function addMultiple(out: Reading, h: Harmonics, motion: MultipleMotion, port: Port, place: Place) {
  const { grid, weights } = h.excitation;
  const { loads, omega, receptance } = motion;
  const [S, L, R] = [grid.length, loads.length, h.rotors.length];
  const u0 = bareMotion(h, motion, port, place);
  const coupled = place.stack !== undefined;
  const H = new Float64Array(coupled ? productSize(PAIRS.length, receptance) : 0);
  if (coupled) multiplyPanels(H, port.pairs, receptance);
  const stride = productSize(1, receptance);
  const Ar = new Float64Array(36);
  const Ai = new Float64Array(36);
  const tau = { re: new Float64Array(6).fill(1), im: new Float64Array(6) };
  for (let s = 0; s < S; s++) {
    const b = {
      re: u0.re.subarray(6 * L * s, 6 * L * (s + 1)),
      im: u0.im.subarray(6 * L * s, 6 * L * (s + 1)),
    };
    const square = omega[s] * omega[s];
    if (place.stack) {
      transmission(tau, place.stack, square);
      for (let p = 0; p < PAIRS.length; p++) {
        const [i, j] = PAIRS[p];
        const re = -square * (H[p * stride + s] + port.flexibility[6 * i + j]);
        const im = -square * H[p * stride + S + s];
        Ar[6 * i + j] = re * tau.re[j] - im * tau.im[j];
        Ai[6 * i + j] = re * tau.im[j] + im * tau.re[j];
        Ar[6 * j + i] = re * tau.re[i] - im * tau.im[i];
        Ai[6 * j + i] = re * tau.im[i] + im * tau.re[i];
      }
      for (let i = 0; i < 6; i++) Ar[7 * i] += 1;
      solveComplexInPlace(Ar, Ai, 6, b.re, b.im, L);
      if (place.stack.kappa[0] < Number.POSITIVE_INFINITY) applyTransmission(b, tau, L);
    }
    for (let l = 0; l < L; l++) {
      const { order, rotor } = loads[l];
      let gyro = 0;
      let accel = 0;
      for (let axis = 0; axis < 6; axis++) {
        let re = 0;
        let im = 0;
        for (let k = 0; k < 6; k++) {
          const c = port.chip[6 * axis + k];
          re += c * b.re[k * L + l];
          im += c * b.im[k * L + l];
        }
        // rate = i omega theta, acceleration = -omega^2 u; a line of amplitude a has mean square a^2/2
        const gain = axis < 3 ? square / GRAVITY : omega[s] / DEGREE;
        const power = (gain * gain * (re * re + im * im)) / 2;
        if (axis < 3) {
          accel += power;
          out.accelAxisPower[axis][s] += power;
        } else {
          gyro += power;
          out.gyroAxisPower[axis - 3][s] += power;
        }
      }
      out.gyroPower[order][s] += gyro;
      out.accelPower[order][s] += accel;
      out.gyroShares[order * R + rotor] += weights[s] * gyro;
      out.accelShares[order * R + rotor] += weights[s] * accel;
    }
  }
}

/** tau = kappa (1 + i eta)/(kappa (1 + i eta) - omega^2); 1 where screwed down. */
function transmission(
  tau: { re: Float64Array; im: Float64Array },
  { kappa, lossFactor }: NonNullable<Place["stack"]>,
  square: number,
): void {
  if (kappa[0] === Number.POSITIVE_INFINITY) return;
  for (let i = 0; i < 6; i++) {
    const [kr, ki] = [kappa[i], kappa[i] * lossFactor];
    const [dr, di] = [kr - square, ki];
    const d = dr * dr + di * di;
    tau.re[i] = (kr * dr + ki * di) / d;
    tau.im[i] = (ki * dr - kr * di) / d;
  }
}

/** b := diag(tau) b, 6 x columns */
function applyTransmission(
  b: { re: Float64Array; im: Float64Array },
  tau: { re: Float64Array; im: Float64Array },
  columns: number,
): void {
  for (let i = 0; i < 6; i++) {
    for (let l = i * columns; l < (i + 1) * columns; l++) {
      const [re, im] = [b.re[l], b.im[l]];
      b.re[l] = tau.re[i] * re - tau.im[i] * im;
      b.im[l] = tau.re[i] * im + tau.im[i] * re;
    }
  }
}

/** Root mean square over the flight mix and all axes. */
export function rms(powerByAxis: Float64Array): number {
  return Math.sqrt(powerByAxis[0] + powerByAxis[1] + powerByAxis[2]);
}
