/** How the properties here are tried: the same random cases every time, few of them. */

import fc from "fast-check";

/** Runs a property on `numRuns` random values that are the same on every run of the tests. */
export function forAll<T>(values: fc.Arbitrary<T>, numRuns: number, property: (value: T) => void) {
  fc.assert(fc.property(values, property), { seed: 1906, numRuns });
}

/** A whole number, which shrinks towards the one nearest to zero. */
export function whole(min: number, max: number): fc.Arbitrary<number> {
  return fc.integer({ min, max });
}

/** One of the numbers 0, 1, ... below `count`. */
export function index(count: number): fc.Arbitrary<number> {
  return fc.nat({ max: count - 1 });
}

/** "p0": ..., "p1": ... in the order of the list. */
export function numbered<T>(letter: string, list: readonly T[]): Record<string, T> {
  return Object.fromEntries(list.map((value, i) => [`${letter}${i}`, value]));
}

/** The same record with every value changed. */
export function mapValues<T, U>(
  record: Readonly<Record<string, T>>,
  change: (value: T, name: string) => U,
): Record<string, U> {
  return Object.fromEntries(Object.entries(record).map(([k, v]) => [k, change(v, k)]));
}
