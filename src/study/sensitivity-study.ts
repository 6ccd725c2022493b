/** What moves a frame, with the suggestions that follow, as one record for terminal, JSON and report. */

import type { Outcome } from "../variants/types.ts";
import type { SensitiveMode, SensitivityTable } from "./sensitivity-types.ts";
import type { Suggestions } from "./suggest-types.ts";

export interface SensitivityStudy {
  readonly table: SensitivityTable;
  /** number of the spot in the table's list whose noise is told; undefined where there is none */
  readonly spot?: number;
  readonly suggested?: Suggestions;
  /** modes told in full, numbers from 1 */
  readonly telling: readonly number[];
}

/**
 * The spot that is told: the one that is wanted where the file names it, else the best, else, where all are
 * ruled out, the first. Suggestions are for the one wanted or for the best, and for no other.
 *
 * @returns numbers of spots; undefined where there is none
 */
export function spotTold(
  { spots, best }: Pick<Outcome, "spots" | "best">,
  wanted?: { readonly name: string; readonly plate: string },
): { readonly spot?: number; readonly suggestFor?: number } {
  const named = spots.findIndex((s) => s.name === wanted?.name && s.plate === wanted.plate);
  if (named >= 0) return { spot: named, suggestFor: named };
  if (best !== undefined) return { spot: best, suggestFor: best };
  return spots.length > 0 ? { spot: 0 } : {};
}

/**
 * The modes that the motors' forces come nearest to in hover, lowest first: a small move of such a mode
 * does much. The lowest ones where nothing turns.
 *
 * @returns numbers from 1
 */
export function tellingModesOf(
  modes: readonly SensitiveMode[],
  { hover, meetings }: Pick<Outcome, "hover" | "meetings">,
  most = 6,
): number[] {
  const multiples = [...new Set(meetings.map((m) => m.multiple))];
  const off = ({ frequency }: SensitiveMode) =>
    Math.min(...multiples.map((n) => Math.abs(Math.log((2 * Math.PI * frequency) / (n * hover)))));
  const known = hover > 0 && multiples.length > 0;
  const sorted = known ? modes.toSorted((a, b) => off(a) - off(b)) : modes;
  return sorted
    .slice(0, most)
    .map((m) => m.number)
    .sort((a, b) => a - b);
}
