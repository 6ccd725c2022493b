/** Where a mode's energy sits: by part and by kind of motion. */

import {
  type BeamConstants,
  type BeamEnergy,
  type BeamTheory,
  beamEnergy,
  beamMatrices,
  omittedShearEnergy,
} from "../element/beam.ts";
import { toLocal } from "../element/rotation.ts";
import type { System } from "../matrices/assemble.ts";
import type { BeamElement, Mesh } from "../mesh/types.ts";

/** Energies of one mode, J for unit modal amplitude. */
export interface ModeEnergy {
  /** per part of the mesh */
  readonly strain: Float64Array;
  readonly kinetic: Float64Array;
  /** of the arms together, and of the members, by kind */
  readonly arms: BeamEnergy;
  readonly members: BeamEnergy;
  /** of plates: bending (uz rx ry) and in their plane (ux uy rz) */
  readonly plateBending: number;
  readonly plateInPlane: number;
  /** shear energy of the beams that Euler-Bernoulli theory leaves out */
  readonly omittedShear: number;
}

/** Numbers of the unknowns of a four-node cell that move it in its plane: ux uy rz. */
const IN_PLANE = [0, 1, 5].flatMap((d) => [d, d + 6, d + 12, d + 18]);

/** out = the element's unknowns in a motion of the mesh. */
function gather(out: Float64Array, nodes: readonly number[], shape: Float64Array): void {
  for (let i = 0; i < nodes.length; i++) {
    for (let d = 0; d < 6; d++) out[6 * i + d] = shape[6 * nodes[i] + d];
  }
}

/** u'Au/2 of a symmetric A of order n, from its lower triangle. */
function quadratic(A: Float64Array, n: number, u: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < n; i++) {
    let row = (A[n * i + i] * u[i]) / 2;
    for (let j = 0; j < i; j++) row += A[n * i + j] * u[j];
    sum += u[i] * row;
  }
  return sum;
}

/** The same on some of the unknowns only. */
function partialQuadratic(A: Float64Array, n: number, u: Float64Array, of: readonly number[]) {
  let sum = 0;
  for (let a = 0; a < of.length; a++) {
    const i = of[a];
    let row = (A[n * i + i] * u[i]) / 2;
    for (let b = 0; b < a; b++) row += A[n * i + of[b]] * u[of[b]];
    sum += u[i] * row;
  }
  return sum;
}

/** A ModeEnergy while it is summed up. */
type Mutable<T> = { -readonly [K in keyof T]: T[K] };
type Growing = Mutable<Omit<ModeEnergy, "arms" | "members">> & {
  readonly arms: Mutable<BeamEnergy>;
  readonly members: Mutable<BeamEnergy>;
};

/**
 * Energies of several modes at once, element by element.
 *
 * @param shapes motions of the mesh, 6 per node
 */
export function modeEnergies(
  mesh: Mesh,
  system: System,
  shapes: readonly Float64Array[],
  theory: BeamTheory,
): ModeEnergy[] {
  const energies = shapes.map(
    (): Growing => ({
      strain: new Float64Array(mesh.parts.length),
      kinetic: new Float64Array(mesh.parts.length),
      arms: { axial: 0, torsion: 0, flat: 0, edge: 0 },
      members: { axial: 0, torsion: 0, flat: 0, edge: 0 },
      plateBending: 0,
      plateInPlane: 0,
      omittedShear: 0,
    }),
  );
  const firstCell = mesh.beams.length;
  const lastCell = firstCell + mesh.cells.length;
  const u = new Float64Array(30);
  system.elements.forEach((e, index) => {
    const n = 6 * e.nodes.length;
    const beam = index < firstCell ? beamSharer(mesh.beams[index], mesh, theory) : undefined;
    const cell = index >= firstCell && index < lastCell;
    shapes.forEach((shape, k) => {
      const energy = energies[k];
      gather(u, e.nodes, shape);
      if (e.M) energy.kinetic[e.part] += quadratic(e.M, n, u);
      if (!e.K) return;
      const total = quadratic(e.K, n, u);
      energy.strain[e.part] += total;
      if (beam) beam(energy, u.subarray(0, 12));
      if (!cell) return;
      const inPlane = partialQuadratic(e.K, n, u, IN_PLANE);
      energy.plateInPlane += inPlane;
      energy.plateBending += total - inPlane;
    });
  });
  return energies;
}

/** Shares out an arm's or a member's energy by kind, and the shear that is left out. */
function beamSharer(element: BeamElement, mesh: Mesh, theory: BeamTheory) {
  const { length, sections, axes, part } = element;
  const { kind } = mesh.parts[part];
  if (kind === "standoff") return undefined;
  const { K } = beamMatrices(length, sections, theory);
  // Flexibilities add along the element: the mean of 1/kGA.
  const mean = (f: (c: BeamConstants) => number) =>
    sections.length / sections.reduce((sum, c) => sum + 1 / f(c), 0);
  const kGAy = mean((c) => c.kGAy);
  const kGAz = mean((c) => c.kGAz);
  return (energy: Growing, u: Float64Array) => {
    const local = toLocal(u, axes);
    const own = beamEnergy(K, local);
    const sum = kind === "arm" ? energy.arms : energy.members;
    for (const k of ["axial", "torsion", "flat", "edge"] as const) sum[k] += own[k];
    if (theory !== "timoshenko") {
      energy.omittedShear += omittedShearEnergy(K, length, { kGAy, kGAz }, local);
    }
  };
}
