/** The frame without its stack, shaken at every motor speed: what all places have in common. */

import type { Excitation } from "../excitation/types.ts";
import type { System } from "../matrices/assemble.ts";
import type { Mesh } from "../mesh/types.ts";
import type { Rotor } from "../model/types.ts";
import type { SolvedModes } from "../modes/solve.ts";
import type { Modes } from "../modes/types.ts";
import { type Harmonics, harmonics } from "./harmonic.ts";
import { residualMotions, type SeatFlexibility, seatFlexibility } from "./residual.ts";
import { type MultipleMotion, packHarmonics } from "./shaken.ts";

/** What places are read from, however its modes were found. */
export interface ShakenFrame {
  readonly mesh: Mesh;
  readonly modes: Modes;
  readonly h: Harmonics;
  readonly motions: readonly MultipleMotion[];
  readonly flexibility: SeatFlexibility;
}

export interface BareFrame extends ShakenFrame {
  readonly system: System;
  readonly rigidShapes: readonly Float64Array[];
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
  const flexibility: SeatFlexibility = (seats, psi) => seatFlexibility(system, solved, seats, psi);
  return { mesh, system, modes, rigidShapes, h, motions: packHarmonics(h), flexibility };
}

/**
 * The same frame if all its natural frequencies were higher by this factor. Places go with it: see
 * `shiftedPlace`.
 */
export function shiftedFrame(bare: BareFrame, factor: number): BareFrame {
  const { mesh, h, rigidShapes } = bare;
  const lambda = bare.modes.lambda.map((l) => l * factor * factor);
  const modes = { ...bare.modes, lambda };
  const other = harmonics(mesh, modes, rigidShapes, h.rotors, h.residuals, h.excitation);
  return { ...bare, modes, h: other, motions: packHarmonics(other) };
}
