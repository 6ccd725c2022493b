/** Unit forces of a rotor on the mesh. */

import type { OrderKind } from "../excitation/types.ts";
import type { Mesh } from "../mesh/types.ts";
import type { Rotor } from "../model/types.ts";

/** Six generalised forces on one node: Fx Fy Fz Mx My Mz. */
export interface NodeLoad {
  readonly node: number;
  readonly force: Float64Array;
}

/** The six unit loads at the propeller's centre: forces and moments along and about x, y and z. */
export interface RotorLoads {
  readonly sideX: NodeLoad;
  readonly sideY: NodeLoad;
  readonly thrust: NodeLoad;
  readonly torque: NodeLoad;
  readonly momentX: NodeLoad;
  readonly momentY: NodeLoad;
}

export type RotorLoadName = keyof RotorLoads;
export const ROTOR_LOADS: readonly RotorLoadName[] = [
  "sideX",
  "sideY",
  "thrust",
  "torque",
  "momentX",
  "momentY",
];

export function rotorLoads(mesh: Mesh, rotor: Rotor): RotorLoads {
  const node = mesh.armTips[rotor.arm];
  const r = [0, 1, 2].map((i) => rotor.position[i] - mesh.xyz[3 * node + i]);
  const at = (F: readonly number[], M: readonly number[]): NodeLoad => ({
    node,
    // M + r x F
    force: Float64Array.of(
      F[0],
      F[1],
      F[2],
      M[0] + r[1] * F[2] - r[2] * F[1],
      M[1] + r[2] * F[0] - r[0] * F[2],
      M[2] + r[0] * F[1] - r[1] * F[0],
    ),
  });
  const none = [0, 0, 0];
  return {
    sideX: at([1, 0, 0], none),
    sideY: at([0, 1, 0], none),
    thrust: at([0, 0, 1], none),
    torque: at(none, [0, 0, 1]),
    momentX: at(none, [1, 0, 0]),
    momentY: at(none, [0, 1, 0]),
  };
}

/** The unit loads along x and y of what lies in the propeller's plane and turns with it. */
const TURNING = {
  "side force": ["sideX", "sideY"],
  "rotating moment": ["momentX", "momentY"],
} as const;

/**
 * What a unit amplitude of a kind of order does, from what each unit load does (any length), as real
 * and imaginary part. A force or moment turning with the rotor is Re[(x - i s y) e^(i omega t)] with
 * s = +1 anticlockwise: x cos + s y sin.
 */
export function ofUnitAmplitude(
  kind: OrderKind,
  spin: 1 | -1,
  effect: (load: keyof RotorLoads) => Float64Array,
): { re: Float64Array; im: Float64Array } {
  if (kind === "thrust" || kind === "torque") {
    const re = effect(kind);
    return { re, im: new Float64Array(re.length) };
  }
  const [x, y] = TURNING[kind];
  return { re: effect(x), im: effect(y).map((v) => -spin * v) };
}

/** phi' f for a mode shape on the mesh. */
export function modalForce(shape: Float64Array, load: NodeLoad): number {
  let sum = 0;
  for (let i = 0; i < 6; i++) sum += shape[6 * load.node + i] * load.force[i];
  return sum;
}
