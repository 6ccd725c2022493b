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
  /** lambda (1 + i eta) - omega^2 of a term, real and imaginary part */
  readonly dynamic: (term: number, omega2: number) => readonly [re: number, im: number];
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
  const dynamic = (term: number, omega2: number): readonly [number, number] => {
    if (term >= modes.lambda.length) return [-omega2, 0];
    const lambda = modes.lambda[term];
    return [lambda - omega2, lambda * modes.described[term].lossFactor];
  };
  const loads = rotors.map((r) => modalLoads(shapes, rotorLoads(mesh, r)));
  const responses = excitation.orders.flatMap((force, order) =>
    rotors.map((rotor, r) => ({
      order,
      rotor: r,
      ...amplitudes(
        dynamic,
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
    dynamic,
  };
}

/** Modal forces of the rotor's unit loads. */
function modalLoads(shapes: readonly Float64Array[], loads: RotorLoads) {
  return Object.fromEntries(
    ROTOR_LOADS.map((name) => [name, Float64Array.from(shapes, (s) => modalForce(s, loads[name]))]),
  ) as Record<RotorLoadName, Float64Array>;
}

function amplitudes(
  dynamic: Harmonics["dynamic"],
  f: { readonly re: Float64Array; readonly im: Float64Array },
  force: OrderForce,
  grid: Float64Array,
) {
  const terms = f.re.length;
  const re = new Float64Array(grid.length * terms);
  const im = new Float64Array(grid.length * terms);
  for (let s = 0; s < grid.length; s++) {
    const omega = force.order * grid[s];
    const A = force.coefficient * grid[s] ** 2;
    for (let t = 0; t < terms; t++) {
      const [dr, di] = dynamic(t, omega * omega);
      const scale = A / (dr * dr + di * di);
      re[s * terms + t] = scale * (f.re[t] * dr + f.im[t] * di); // f / (dr + i di)
      im[s * terms + t] = scale * (f.im[t] * dr - f.re[t] * di);
    }
  }
  return { re, im };
}
