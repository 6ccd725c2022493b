/** What the modes left out add at low frequency: residual flexibility. */

import type { Factor } from "../linalg/factorise.ts";
import { dot, multiply } from "../linalg/product.ts";
import { solveInPlace } from "../linalg/solve.ts";
import type { System } from "../matrices/assemble.ts";
import { expand, project } from "../matrices/reduction.ts";
import type { Mesh } from "../mesh/types.ts";
import type { Rotor } from "../model/types.ts";
import type { Modes } from "../modes/types.ts";
import type { ResidualMotion } from "./harmonic.ts";
import { type NodeLoad, rotorLoads } from "./load.ts";

/**
 * Motion of the mesh by the modes left out, for the unit loads of every rotor.
 *
 * With the factor of K - sigma M at hand (sigma below the lowest elastic mode):
 * x = (K - sigma M)^-1 (f - M R R'f) = sum over all elastic modes phi phi'f/(lambda - sigma); taking
 * away the known modes leaves those left out at the frequency sqrt(sigma), which for them is as good
 * as static.
 */
export function residualMotions(
  system: System,
  mesh: Mesh,
  modes: Modes,
  rotors: readonly Rotor[],
  factor: Factor,
  shift: number,
): ResidualMotion[] {
  const n = system.reduction.n;
  const loads = rotors.flatMap((r) => Object.values(rotorLoads(mesh, r)) as NodeLoad[]);
  const x = new Float64Array(n * loads.length);
  const f = loads.map(({ node, force }) =>
    project(
      system.reduction,
      [0, 1, 2, 3, 4, 5].map((d) => 6 * node + d),
      force,
    ),
  );
  const massRigid = modes.rigid.map((r) => {
    const out = new Float64Array(n);
    multiply(out, system.M, r);
    return out;
  });
  f.forEach((load, k) => {
    const b = x.subarray(k * n, (k + 1) * n);
    b.set(load);
    modes.rigid.forEach((r, j) => {
      subtract(b, massRigid[j], dot(r, load));
    });
  });
  solveInPlace(factor, x, loads.length);
  const motions = f.map((load, k) => {
    const u = x.subarray(k * n, (k + 1) * n);
    // With sigma close to zero the solve amplifies what rounding leaves of the rigid-body motions.
    modes.rigid.forEach((r, j) => {
      subtract(u, r, dot(massRigid[j], u));
    });
    modes.lambda.forEach((lambda, j) => {
      const phi = modes.phi.subarray(j * n, (j + 1) * n);
      subtract(u, phi, dot(phi, load) / (lambda - shift));
    });
    return expand(system.reduction, u);
  });
  // in the order of the unit loads in `rotorLoads`
  return rotors.map((_, r) => ({
    sideX: motions[6 * r],
    sideY: motions[6 * r + 1],
    thrust: motions[6 * r + 2],
    torque: motions[6 * r + 3],
    momentX: motions[6 * r + 4],
    momentY: motions[6 * r + 5],
  }));
}

/** out -= c a */
function subtract(out: Float64Array, a: Float64Array, c: number): void {
  for (let i = 0; i < out.length; i++) out[i] -= c * a[i];
}
