/** Everything that shakes the frame, from the file's propulsion and the frame's mass. */

import { inputError } from "../errors.ts";
import type { FrameFile } from "../frame/types.ts";
import type { Rotor } from "../model/types.ts";
import { mixRows, mixWeights, outsideBand, speedGrid } from "./mix.ts";
import { orderForces } from "./orders.ts";
import { motorSpeeds } from "./speeds.ts";
import type { Excitation } from "./types.ts";

/** undefined for a frame without propulsion. @throws InputError when every force is zero */
export function excite(
  file: FrameFile,
  rotors: readonly Rotor[],
  mass: number,
): Excitation | undefined {
  if (!file.propulsion || rotors.length === 0) return undefined;
  const speeds = motorSpeeds(file.propulsion, mass, rotors.length);
  const orders = orderForces(file.propulsion, file.excitation, speeds, rotors[0].rotatingMass);
  if (orders.length === 0) {
    throw inputError(
      "excitation",
      "every force is set to zero, so nothing shakes the frame; leave out the fields you do not know",
    );
  }
  const { name, rows } = mixRows(file.flightMix, speeds);
  const grid = speedGrid(speeds);
  const weights = mixWeights(rows, grid);
  const warnings = [...speeds.warnings, ...outsideBand(rows, grid)];
  return { speeds, orders, mixName: name, mix: rows, grid, weights, warnings };
}

/** The highest frequency at which anything shakes, Hz. */
export function highestFrequency({ orders, speeds }: Excitation): number {
  return (Math.max(...orders.map((o) => o.order)) * speeds.full) / (2 * Math.PI);
}
