/** What a sensor reads over all speeds, from the frame's modal amplitudes. */

import { GRAVITY } from "../excitation/speeds.ts";
import type { Harmonics, ModalResponse, ResidualMotion } from "./harmonic.ts";
import { ofUnitAmplitude } from "./load.ts";
import { type Sensor, sense } from "./sensor.ts";

const DEGREE = Math.PI / 180;
/** Speeds that weigh less than this in the flight mix do not show in its mean. */
const NO_WEIGHT = 1e-6;

/** Readings of one sensor. Rotors never share a phase, so their powers add; so do the orders'. */
export interface Reading {
  /** mean-square readings by order and speed: rotation rate ((deg/s)^2) and acceleration (g^2) */
  readonly gyroPower: readonly Float64Array[];
  readonly accelPower: readonly Float64Array[];
  /** the same over the flight mix and all orders, by axis x y z */
  readonly gyroAxes: Float64Array;
  readonly accelAxes: Float64Array;
  /** gyro power over the mix by order and term (elastic modes, then all rigid motions as one) */
  readonly termPower: readonly Float64Array[];
}

/** A sensor's rows on the terms of the response; the same for every shift of the frequencies. */
export interface SensorTerms {
  /** psi[axis * terms + t] (size 6 x terms) */
  readonly psi: Float64Array;
  /** static readings of the modes left out, per rotor and unit load */
  readonly residuals: readonly Record<keyof ResidualMotion, Float64Array>[];
}

export function sensorTerms(h: Harmonics, sensor: Sensor): SensorTerms {
  const terms = h.shapes.length;
  const psi = new Float64Array(6 * terms);
  h.shapes.forEach((shape, t) => {
    sense(sensor, shape).forEach((v, axis) => {
      psi[axis * terms + t] = v;
    });
  });
  const residuals = h.residuals.map((r) => ({
    sideX: sense(sensor, r.sideX),
    sideY: sense(sensor, r.sideY),
    thrust: sense(sensor, r.thrust),
    torque: sense(sensor, r.torque),
    momentX: sense(sensor, r.momentX),
    momentY: sense(sensor, r.momentY),
  }));
  return { psi, residuals };
}

export function readSensor(h: Harmonics, sensor: Sensor): Reading {
  return readTerms(h, sensorTerms(h, sensor));
}

export function readTerms(h: Harmonics, { psi, residuals }: SensorTerms): Reading {
  const S = h.excitation.grid.length;
  const perOrder = () => h.orders.map(() => new Float64Array(S));
  const reading = {
    gyroPower: perOrder(),
    accelPower: perOrder(),
    gyroAxes: new Float64Array(3),
    accelAxes: new Float64Array(3),
    termPower: h.orders.map(() => new Float64Array(h.elastic + 1)),
  };
  for (const response of h.responses)
    addResponse(reading, h, response, psi, residuals[response.rotor]);
  return reading;
}

/**
 * |sum of psi q + rest|^2 over the terms at one speed.
 *
 * @param row where the axis' row of psi begins
 * @param q where the speed's amplitudes begin
 */
function superpose(
  psi: Float64Array,
  row: number,
  response: ModalResponse,
  q: number,
  terms: number,
  restRe: number,
  restIm: number,
): number {
  let re = restRe;
  let im = restIm;
  for (let t = 0; t < terms; t++) {
    re += psi[row + t] * response.re[q + t];
    im += psi[row + t] * response.im[q + t];
  }
  return re * re + im * im;
}

/** Static reading of the modes left out, for a unit amplitude of the order's force. */
function residualReading(
  residual: Record<keyof ResidualMotion, Float64Array>,
  h: Harmonics,
  { order, rotor }: ModalResponse,
) {
  return ofUnitAmplitude(h.orders[order].kind, h.rotors[rotor].spin, (load) => residual[load]);
}

function addResponse(
  out: Reading,
  h: Harmonics,
  response: ModalResponse,
  psi: Float64Array,
  residual: Record<keyof ResidualMotion, Float64Array>,
) {
  const terms = h.shapes.length;
  const { grid, weights } = h.excitation;
  const force = h.orders[response.order];
  const rest = residualReading(residual, h, response);
  const gyroPower = out.gyroPower[response.order];
  const accelPower = out.accelPower[response.order];
  const termPower = out.termPower[response.order];
  for (let s = 0; s < grid.length; s++) {
    const omega = force.order * grid[s];
    const A = force.coefficient * grid[s] ** 2;
    const q = s * terms;
    for (let axis = 0; axis < 6; axis++) {
      const size = superpose(
        psi,
        axis * terms,
        response,
        q,
        terms,
        A * rest.re[axis],
        A * rest.im[axis],
      );
      // rate = i omega theta, acceleration = -omega^2 u; a line of amplitude a has mean square a^2/2
      const gain = axis < 3 ? omega / DEGREE : (omega * omega) / GRAVITY;
      const power = (gain * gain * size) / 2;
      if (axis < 3) {
        gyroPower[s] += power;
        out.gyroAxes[axis] += weights[s] * power;
      } else {
        accelPower[s] += power;
        out.accelAxes[axis - 3] += weights[s] * power;
      }
    }
    if (weights[s] >= NO_WEIGHT) {
      addTermPower(termPower, h, response, psi, q, (weights[s] * (omega / DEGREE) ** 2) / 2);
    }
  }
}

/** Each term's own gyro power, as if it acted alone; the rigid motions as one. */
function addTermPower(
  out: Float64Array,
  h: Harmonics,
  response: ModalResponse,
  psi: Float64Array,
  q: number,
  gain: number,
) {
  const terms = h.shapes.length;
  for (let axis = 0; axis < 3; axis++) {
    let rigidRe = 0;
    let rigidIm = 0;
    for (let t = 0; t < terms; t++) {
      const re = psi[axis * terms + t] * response.re[q + t];
      const im = psi[axis * terms + t] * response.im[q + t];
      if (t < h.elastic) out[t] += gain * (re * re + im * im);
      else {
        rigidRe += re;
        rigidIm += im;
      }
    }
    out[h.elastic] += gain * (rigidRe * rigidRe + rigidIm * rigidIm);
  }
}

/** Root mean square over the flight mix and all axes. */
export function rms(powerByAxis: Float64Array): number {
  return Math.sqrt(powerByAxis[0] + powerByAxis[1] + powerByAxis[2]);
}

/** The gyro's rms over the flight mix alone, deg/s: the same as from readSensor, for less work. */
export function gyroLevel(h: Harmonics, { psi, residuals }: SensorTerms): number {
  const terms = h.shapes.length;
  const { grid, weights } = h.excitation;
  let power = 0;
  for (const response of h.responses) {
    const force = h.orders[response.order];
    const rest = residualReading(residuals[response.rotor], h, response);
    for (let s = 0; s < grid.length; s++) {
      if (weights[s] < NO_WEIGHT) continue;
      const A = force.coefficient * grid[s] ** 2;
      const gain = (force.order * grid[s]) / DEGREE;
      const q = s * terms;
      for (let axis = 0; axis < 3; axis++) {
        const size = superpose(
          psi,
          axis * terms,
          response,
          q,
          terms,
          A * rest.re[axis],
          A * rest.im[axis],
        );
        power += (weights[s] * gain * gain * size) / 2;
      }
    }
  }
  return Math.sqrt(power);
}
