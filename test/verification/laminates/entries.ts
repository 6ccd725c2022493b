/** Checks on the entries of A, B, D and of their inverses, as tables print them. */

import { type Check, type Tolerance, unitOfLastDigit, withinAbsolute } from "../case.ts";

/** Row-major places of the entries that a symmetric 3 x 3 matrix has. */
const PLACE = { "11": 0, "12": 1, "16": 2, "22": 4, "26": 5, "66": 8 } as const;
export type Entry = keyof typeof PLACE;

/** The order of the upper triangle, row by row. */
export const UPPER: readonly Entry[] = ["11", "12", "16", "22", "26", "66"];

/** Half a unit of the last digit, and the rounding of ours: for sources that round. */
export function rounded(reference: string): Tolerance {
  return withinAbsolute(0.5001 * unitOfLastDigit(reference));
}

/** The quantity's name has "#" where the entry's number goes: "D# of [0/90]s". */
export function entryChecks(
  quantity: string,
  entries: readonly Entry[],
  printed: string,
  unit: string,
  tolerance: (reference: string) => Tolerance,
): Check[] {
  return printed.split(" ").map((reference, i) => ({
    quantity: quantity.replace("#", entries[i]),
    unit,
    reference,
    // A zero has no last digit: it is meant to be exact.
    tolerance: Number(reference) === 0 ? withinAbsolute(1e-9) : tolerance(reference),
  }));
}

/** Those entries of a matrix times `factor`. */
export function pick(matrix: Float64Array, entries: readonly Entry[], factor: number): number[] {
  return entries.map((entry) => matrix[PLACE[entry]] * factor);
}
