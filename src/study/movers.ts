/** The inputs that move one mode, or the noise at one spot, most. */

import type { Input } from "../frame/inputs.ts";
import { wayTo } from "./reach.ts";
import type { Reach, SensitivityRow, SensitivityTable } from "./sensitivity-types.ts";

/** Of a mode in Hz, of a spot in dB. */
export interface Mover {
  readonly input: Input;
  readonly reach: Reach;
  /** what the value does at either end of the reach, against the drawing */
  readonly from: number;
  readonly to: number;
  /** per unit of a bare number in the file (mm, g, ...) */
  readonly perUnit: number;
  /** of a mode % per % of the input, of a spot dB per %; absent for positions */
  readonly perPercent?: number;
}

/**
 * By the larger effect at the ends of the reach, most first; straight from the slopes (in the logarithm of
 * inputs that vary by it). Inputs without a slope are left out.
 *
 * @param mode position in the table's list
 */
export function modeMovers({ modes, rows }: SensitivityTable, mode: number): Mover[] {
  const { frequency } = modes[mode];
  return sorted(
    rows.flatMap(({ input, reach, slopes }): Mover[] => {
      if (!slopes) return [];
      const { kind, value, perSI } = input;
      const effect = (to: number) => slopes[mode] * wayTo(value, reach, to);
      return [
        {
          input,
          reach,
          from: effect(reach.from),
          to: effect(reach.to),
          perUnit: slopes[mode] / perSI,
          ...(kind !== "position" && { perPercent: (slopes[mode] * value) / frequency }),
        },
      ];
    }),
  );
}

/**
 * By the larger effect at the ends of the reach, most first. Slopes are the mean over the reach. Inputs at
 * whose ends the spot or the frame is not there are left out.
 *
 * @param spot position in the table's list
 */
export function spotMovers({ rows }: Pick<SensitivityTable, "rows">, spot: number): Mover[] {
  return sorted(
    rows.flatMap((row): Mover[] => {
      const ends = endsOf(row, spot);
      if (!ends) return [];
      const { input, reach } = row;
      const [from, to] = ends;
      const percent = 0.01 * ((to - from) / Math.log(reach.to / reach.from));
      return [
        {
          input,
          reach,
          from,
          to,
          perUnit: (to - from) / (reach.to - reach.from) / input.perSI,
          ...(input.kind !== "position" && { perPercent: percent }),
        },
      ];
    }),
  );
}

function endsOf({ noise }: SensitivityRow, spot: number): [number, number] | undefined {
  if (!noise || Number.isNaN(noise.from[spot] + noise.to[spot])) return undefined;
  return [noise.from[spot], noise.to[spot]];
}

function sorted(movers: readonly Mover[]): Mover[] {
  return movers.toSorted((a, b) => sizeOf(b) - sizeOf(a));
}

/** Largest effect of a mover, Hz or dB. */
export function sizeOf({ from, to }: Pick<Mover, "from" | "to">): number {
  return Math.max(Math.abs(from), Math.abs(to));
}
