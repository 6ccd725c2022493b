/** Modes in words: where the energy is, how it moves, how well it is damped. */

import type { System } from "../matrices/assemble.ts";
import type { Mesh, MeshPart } from "../mesh/types.ts";
import type { Model } from "../model/types.ts";
import { type ModeEnergy, modeEnergies } from "./energy.ts";
import { modeName } from "./name.ts";
import { leftRightSymmetry, mirrorPairs } from "./symmetry.ts";
import type { ModeDescription, MotionShares, Share } from "./types.ts";

/** Parts with less than this share of both energies are not listed. */
const LISTED = 0.01;

export function describeModes(
  model: Model,
  mesh: Mesh,
  system: System,
  lambda: Float64Array,
  shapes: readonly Float64Array[],
): ModeDescription[] {
  const energies = modeEnergies(mesh, system, shapes, model.theory);
  const pairs = mirrorPairs(mesh, model.centre[1]);
  return energies.map((energy, i) => {
    const shares = partShares(mesh, energy);
    const motion = motionShares(mesh, energy);
    const lossFactor = lossOf(model, mesh, energy);
    return {
      number: i + 1,
      frequency: Math.sqrt(Math.max(0, lambda[i])) / (2 * Math.PI),
      name: modeName(model, mesh, shapes[i], motion, shares, energy.members),
      symmetry: leftRightSymmetry(shapes[i], pairs),
      shares,
      motion,
      lossFactor,
      damping: lossFactor / 2,
      // Flexibilities add: d(omega)/omega = -U_shear/(2 U).
      shearEffect: energy.omittedShear / (2 * total(energy.strain) || 1),
    };
  });
}

const total = (a: Float64Array) => a.reduce((s, v) => s + v, 0);

function partShares(mesh: Mesh, e: ModeEnergy): Share[] {
  const [U, T] = [total(e.strain) || 1, total(e.kinetic) || 1];
  return mesh.parts
    .map((p, i) => ({
      part: p.name,
      kind: p.kind,
      strain: e.strain[i] / U,
      kinetic: e.kinetic[i] / T,
    }))
    .filter((s) => s.strain > LISTED || s.kinetic > LISTED)
    .sort((a, b) => b.strain + b.kinetic - a.strain - a.kinetic);
}

function motionShares(mesh: Mesh, e: ModeEnergy): MotionShares {
  const U = total(e.strain) || 1;
  const of = (...kinds: string[]) =>
    mesh.parts.reduce((s, p, i) => (kinds.includes(p.kind) ? s + e.strain[i] : s), 0) / U;
  return {
    armFlat: e.arms.flat / U,
    armEdge: e.arms.edge / U,
    armTorsion: e.arms.torsion / U,
    plateBending: e.plateBending / U,
    plateInPlane: e.plateInPlane / U,
    member: of("member"),
    standoff: of("standoff"),
    joint: of("arm root", "joint"),
    softMount: of("mount"),
    other: of("spring", "body") + e.arms.axial / U,
  };
}

/**
 * Modal strain energy: eta = sum of eta_part U_part / U (C. D. Johnson & D. A. Kienholz, AIAA Journal
 * 20, 1982; from memory), plus one factor for screws, wires and straps on all but soft mounts; all of it times the damping factor.
 */
function lossOf(model: Model, mesh: Mesh, e: ModeEnergy): number {
  const weighed = mesh.parts.reduce((s, p, i) => s + lossWeight(p, model) * e.strain[i], 0);
  return (model.dampingFactor * weighed) / (total(e.strain) || 1);
}

/** How much a part's share of the strain energy adds to a mode's loss factor, before the damping factor. */
export function lossWeight(
  { kind, lossFactor }: MeshPart,
  { assemblyLossFactor }: Pick<Model, "assemblyLossFactor">,
): number {
  return kind === "mount" ? lossFactor : lossFactor + assemblyLossFactor;
}
