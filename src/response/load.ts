/** Unit forces of a rotor on the mesh. */

import type { Mesh } from "../mesh/types.ts";
import type { Rotor } from "../model/types.ts";

/** Six generalised forces on one node: Fx Fy Fz Mx My Mz. */
export interface NodeLoad {
  readonly node: number;
  readonly force: Float64Array;
}

/** Unit side forces along x and y, unit thrust, unit torque about z, at the propeller's centre. */
export interface RotorLoads {
  readonly sideX: NodeLoad;
  readonly sideY: NodeLoad;
  readonly thrust: NodeLoad;
  readonly torque: NodeLoad;
}

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
  };
}

/** phi' f for a mode shape on the mesh. */
export function modalForce(shape: Float64Array, load: NodeLoad): number {
  let sum = 0;
  for (let i = 0; i < 6; i++) sum += shape[6 * load.node + i] * load.force[i];
  return sum;
}
