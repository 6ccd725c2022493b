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
import { modalForce, ofUnitAmplitude, type RotorLoads, rotorLoads } from "./load.ts";

/** Static motion of the mesh by the modes left out, for the unit loads of one rotor. */
export type ResidualMotion = Readonly<Record<keyof RotorLoads, Float64Array>>;

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
  readonly excitation: Excitation;
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
  const loads = rotors.map((r) => rotorLoads(mesh, r));
  const responses = excitation.orders.flatMap((force, order) =>
    rotors.map((rotor, r) => ({
      order,
      rotor: r,
      ...amplitudes(
        modes,
        shapes,
        complexLoad(shapes, loads[r], force, rotor.spin),
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
    excitation,
  };
}

/** Modal forces of a unit amplitude of an order. */
function complexLoad(
  shapes: readonly Float64Array[],
  loads: RotorLoads,
  { kind }: OrderForce,
  spin: 1 | -1,
) {
  return ofUnitAmplitude(kind, spin, (load) =>
    Float64Array.from(shapes, (s) => modalForce(s, loads[load])),
  );
}

function amplitudes(
  modes: Modes,
  shapes: readonly Float64Array[],
  f: { re: Float64Array; im: Float64Array },
  force: OrderForce,
  grid: Float64Array,
) {
  const terms = shapes.length;
  const elastic = modes.lambda.length;
  const re = new Float64Array(grid.length * terms);
  const im = new Float64Array(grid.length * terms);
  for (let s = 0; s < grid.length; s++) {
    const omega = force.order * grid[s];
    const A = force.coefficient * grid[s] ** 2;
    for (let t = 0; t < terms; t++) {
      const lambda = t < elastic ? modes.lambda[t] : 0;
      const eta = t < elastic ? modes.described[t].lossFactor : 0;
      const [dr, di] = [lambda - omega * omega, lambda * eta];
      const scale = A / (dr * dr + di * di);
      re[s * terms + t] = scale * (f.re[t] * dr + f.im[t] * di); // f / (dr + i di)
      im[s * terms + t] = scale * (f.im[t] * dr - f.re[t] * di);
    }
  }
  return { re, im };
}
