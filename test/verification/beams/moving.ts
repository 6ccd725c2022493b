/** Modes picked out by what moves in them, where others lie between. */

import type { Analysis } from "../../../src/analyse.ts";
import { DOF_NAMES } from "../../../src/frame/schema-fields.ts";
import type { DofName } from "../../../src/frame/types-basic.ts";

/** Motions smaller than this, of a mode's largest, are rounding. */
const STILL = 1e-6;

/** Frequencies, Hz, of the modes in which a named point moves or turns in one direction. */
export function frequenciesMoving(
  { mesh, modes }: Analysis,
  point: string,
  direction: DofName,
): number[] {
  const node = mesh.pointNodes.get(point);
  if (node === undefined) throw new Error(`the mesh has no point "${point}"`);
  const unknown = 6 * node + DOF_NAMES.indexOf(direction);
  return modes.described
    .filter((_, i) => {
      const shape = modes.shapes[i];
      const largest = shape.reduce((most, u) => Math.max(most, Math.abs(u)), 0);
      return Math.abs(shape[unknown]) > STILL * largest;
    })
    .map((mode) => mode.frequency);
}
