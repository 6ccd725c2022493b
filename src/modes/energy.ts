/** Where a mode's energy sits: by part and by kind of motion. */

import {
  type BeamEnergy,
  type BeamTheory,
  beamEnergy,
  beamMatrices,
  omittedShearEnergy,
} from "../element/beam.ts";
import { toLocal } from "../element/rotation.ts";
import type { System } from "../matrices/assemble.ts";
import type { Mesh } from "../mesh/types.ts";

/** Energies of one mode, J for unit modal amplitude. */
export interface ModeEnergy {
  /** per part of the mesh */
  readonly strain: Float64Array;
  readonly kinetic: Float64Array;
  /** of arms and members together, by kind */
  readonly beams: BeamEnergy;
  /** of plates: bending (uz rx ry) and in their plane (ux uy rz) */
  readonly plateBending: number;
  readonly plateInPlane: number;
  /** shear energy of the beams that Euler-Bernoulli theory leaves out */
  readonly omittedShear: number;
}

const IN_PLANE = [0, 1, 5];

function gather(nodes: readonly number[], shape: Float64Array, out: Float64Array) {
  nodes.forEach((n, i) => {
    for (let d = 0; d < 6; d++) out[6 * i + d] = shape[6 * n + d];
  });
}

function quadratic(A: Float64Array, n: number, u: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < n; i++) {
    const ui = u[i];
    if (ui === 0) continue;
    let row = 0;
    for (let j = 0; j < n; j++) row += A[n * i + j] * u[j];
    sum += ui * row;
  }
  return sum / 2;
}

/** Only the given directions of each node. */
function masked(u: Float64Array, directions: readonly number[]): Float64Array {
  const out = new Float64Array(u.length);
  for (let i = 0; i < u.length; i += 6) for (const d of directions) out[i + d] = u[i + d];
  return out;
}

/**
 * Energies of several modes at once.
 *
 * @param shapes motions of the mesh, 6 per node
 */
export function modeEnergies(
  mesh: Mesh,
  system: System,
  shapes: readonly Float64Array[],
  theory: BeamTheory,
): ModeEnergy[] {
  const parts = mesh.parts.length;
  const localK = mesh.beams.map((b) => beamMatrices(b.length, b.sections, theory).K);
  const standing = mesh.beams.map((b) => mesh.parts[b.part].kind === "standoff");
  return shapes.map((shape) => {
    const strain = new Float64Array(parts);
    const kinetic = new Float64Array(parts);
    const beams = { axial: 0, torsion: 0, flat: 0, edge: 0 };
    let plateBending = 0;
    let plateInPlane = 0;
    let omittedShear = 0;
    const firstCell = mesh.beams.length;
    const lastCell = firstCell + mesh.cells.length;
    system.elements.forEach((e, index) => {
      const n = 6 * e.nodes.length;
      const u = new Float64Array(n);
      gather(e.nodes, shape, u);
      if (e.M) kinetic[e.part] += quadratic(e.M, n, u);
      if (!e.K) return;
      if (index < firstCell) {
        const b = mesh.beams[index];
        const local = toLocal(u, b.axes);
        const energy = beamEnergy(localK[index], local);
        for (const k of ["axial", "torsion", "flat", "edge"] as const) {
          if (!standing[index]) beams[k] += energy[k];
          strain[e.part] += energy[k];
        }
        if (theory !== "timoshenko")
          omittedShear += omittedShearEnergy(b.length, b.sections[0], local);
      } else if (index < lastCell) {
        const total = quadratic(e.K, n, u);
        const inPlane = quadratic(e.K, n, masked(u, IN_PLANE));
        strain[e.part] += total;
        plateInPlane += inPlane;
        plateBending += total - inPlane;
      } else strain[e.part] += quadratic(e.K, n, u);
    });
    return { strain, kinetic, beams, plateBending, plateInPlane, omittedShear };
  });
}
