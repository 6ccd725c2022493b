/**
 * Steady vibration of the frame under the rotors' harmonic forces, by modal superposition.
 *
 * x(omega) = sum over elastic modes phi phi'f / (lambda (1 + i eta) - omega^2)
 *          + sum over rigid motions r r'f / (-omega^2)
 *          + residual flexibility of the modes left out (static).
 *
 * The modal amplitudes do not depend on where the sensor sits, so they are found once and serve every
 * candidate.
 */

import { multiplesOf } from "../excitation/multiples.ts";
import type { Excitation, OrderForce } from "../excitation/types.ts";
import type { Mesh } from "../mesh/types.ts";
import type { Rotor } from "../model/types.ts";
import type { Modes } from "../modes/types.ts";
import {
  modalForce,
  ofUnitAmplitude,
  ROTOR_LOADS,
  type RotorLoadName,
  type RotorLoads,
  rotorLoads,
} from "./load.ts";
import type { ResidualMotion } from "./residual.ts";

/** Modal amplitudes of one order of one rotor over all speeds. */
export interface ModalResponse {
  readonly order: number;
  readonly rotor: number;
  /** speeds x terms, real and imaginary part; terms = elastic modes, then rigid motions */
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** 1/(lambda (1 + i eta) - omega^2) at one multiple of the motors' speed. */
export interface Receptance {
  /** speeds x terms, real and imaginary part */
  readonly re: Float64Array;
  readonly im: Float64Array;
}

export interface Harmonics {
  /** elastic modes, then rigid motions, as motions of the mesh */
  readonly shapes: readonly Float64Array[];
  readonly elastic: number;
  readonly responses: readonly ModalResponse[];
  readonly orders: readonly OrderForce[];
  readonly rotors: readonly Rotor[];
  readonly residuals: readonly ResidualMotion[];
  /** modal force of each rotor's unit loads on every term */
  readonly loads: readonly Readonly<Record<RotorLoadName, Float64Array>>[];
  readonly excitation: Excitation;
  /** by multiple of the motors' speed */
  readonly receptances: ReadonlyMap<number, Receptance>;
}

export function harmonics(
  mesh: Mesh,
  modes: Modes,
  rigidShapes: readonly Float64Array[],
  rotors: readonly Rotor[],
  residuals: readonly ResidualMotion[],
  excitation: Excitation,
): Harmonics {
  const shapes = [...modes.shapes, ...rigidShapes];
  const receptances = new Map(
    multiplesOf(excitation.orders).map(({ multiple }) => [
      multiple,
      receptanceOf(modes, shapes.length, multiple, excitation.grid),
    ]),
  );
  const loads = rotors.map((r) => modalLoads(shapes, rotorLoads(mesh, r)));
  const responses = excitation.orders.flatMap((force, order) =>
    rotors.map((rotor, r) => ({
      order,
      rotor: r,
      ...amplitudes(
        receptances.get(force.order) as Receptance,
        ofUnitAmplitude(force.kind, rotor.spin, (name) => loads[r][name]),
        force,
        excitation.grid,
      ),
    })),
  );
  return {
    shapes,
    elastic: modes.lambda.length,
    responses,
    orders: excitation.orders,
    rotors,
    residuals,
    loads,
    excitation,
    receptances,
  };
}

/** Modal forces of the rotor's unit loads. */
function modalLoads(shapes: readonly Float64Array[], loads: RotorLoads) {
  return Object.fromEntries(
    ROTOR_LOADS.map((name) => [name, Float64Array.from(shapes, (s) => modalForce(s, loads[name]))]),
  ) as Record<RotorLoadName, Float64Array>;
}

function receptanceOf(
  { lambda, described }: Modes,
  terms: number,
  multiple: number,
  grid: Float64Array,
): Receptance {
  const re = new Float64Array(grid.length * terms);
  const im = new Float64Array(grid.length * terms);
  for (let s = 0; s < grid.length; s++) {
    const square = (multiple * grid[s]) ** 2;
    for (let t = 0; t < terms; t++) {
      const elastic = t < lambda.length;
      const dr = (elastic ? lambda[t] : 0) - square;
      const di = elastic ? lambda[t] * described[t].lossFactor : 0;
      const d = dr * dr + di * di;
      re[s * terms + t] = dr / d;
      im[s * terms + t] = -di / d;
    }
  }
  return { re, im };
}

function amplitudes(
  receptance: Receptance,
  f: { readonly re: Float64Array; readonly im: Float64Array },
  { coefficient }: OrderForce,
  grid: Float64Array,
) {
  const terms = f.re.length;
  const re = new Float64Array(grid.length * terms);
  const im = new Float64Array(grid.length * terms);
  for (let s = 0; s < grid.length; s++) {
    const A = coefficient * grid[s] * grid[s];
    for (let t = 0, k = s * terms; t < terms; t++, k++) {
      const gr = A * receptance.re[k];
      const gi = A * receptance.im[k];
      re[k] = f.re[t] * gr - f.im[t] * gi;
      im[k] = f.im[t] * gr + f.re[t] * gi;
    }
  }
  return { re, im };
}
