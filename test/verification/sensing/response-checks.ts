/** Rows of a filter's frequency response as checks. */

import type { FrequencyResponse } from "../../../src/filter/frequency-response.ts";
import { type Check, lastDigit } from "../case.ts";

/** Frequency (Hz), gain, phase (deg) and group delay (ms), as printed. */
export type ResponseRow = readonly [string, string, string, string];

export const NOTE =
  "R. Bristow-Johnson, Cookbook formulae for audio EQ biquad filter coefficients, " +
  "W3C Working Group Note (8 June 2021)";

export const WHY_DIGITS =
  "One unit of the last digit given; the error is the rounding of the reference.";

const COLUMNS = [
  { name: "gain", unit: "" },
  { name: "phase", unit: "deg" },
  { name: "group delay", unit: "ms" },
] as const;

export function responseChecks(rows: readonly ResponseRow[]): Check[] {
  return rows.flatMap(([f, ...references]) =>
    COLUMNS.map(({ name, unit }, i) => digits(`${name} at ${f} Hz`, unit, references[i])),
  );
}

/** Gain, phase and group delay of every row, in its units. */
export function responses(
  rows: readonly ResponseRow[],
  at: (f: number) => FrequencyResponse,
): number[] {
  return rows.flatMap(([f]) => {
    const { gain, phase, groupDelay } = at(Number(f));
    return [gain, inDegrees(phase), groupDelay * 1e3];
  });
}

/** A check to the last digit printed. */
export function digits(quantity: string, unit: string, reference: string): Check {
  return { quantity, unit, reference, tolerance: lastDigit(reference) };
}

export const inDegrees = (angle: number) => (angle * 180) / Math.PI;
