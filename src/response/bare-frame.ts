/** The frame without its stack, shaken at every motor speed: what all places have in common. */

import type { Excitation } from "../excitation/types.ts";
import type { System } from "../matrices/assemble.ts";
import type { Mesh } from "../mesh/types.ts";
import type { Rotor } from "../model/types.ts";
import type { SolvedModes } from "../modes/solve.ts";
import { type Harmonics, harmonics } from "./harmonic.ts";
import { residualMotions } from "./residual.ts";
import { type MultipleMotion, packHarmonics } from "./shaken.ts";

export interface BareFrame {
  readonly mesh: Mesh;
  readonly system: System;
  readonly solved: SolvedModes;
  readonly h: Harmonics;
  readonly motions: readonly MultipleMotion[];
}

export function shakeBare(
  mesh: Mesh,
  system: System,
  solved: SolvedModes,
  rotors: readonly Rotor[],
  excitation: Excitation,
): BareFrame {
  const { modes, rigidShapes, factor, shift } = solved;
  const residuals = residualMotions(system, mesh, modes, rotors, factor, shift);
  const h = harmonics(mesh, modes, rigidShapes, rotors, residuals, excitation);
  return { mesh, system, solved, h, motions: packHarmonics(h) };
}

/**
 * The same frame if all its natural frequencies were higher by this factor. Places go with it: see
 * `shiftedPlace`.
 */
export function shiftedFrame({ mesh, system, solved, h }: BareFrame, factor: number): BareFrame {
  const lambda = solved.modes.lambda.map((l) => l * factor * factor);
  const modes = { ...solved.modes, lambda };
  const other = harmonics(mesh, modes, solved.rigidShapes, h.rotors, h.residuals, h.excitation);
  return { mesh, system, solved: { ...solved, modes }, h: other, motions: packHarmonics(other) };
}
