/** How alike the modes of two variants look. */

import type { ShapeSamples } from "./types.ts";

/** With fewer places in common two shapes say nothing about each other. */
export const LEAST_SHARED = 12;

/** The modal assurance criterion of every mode of one against every mode of another. */
export interface Assurance {
  readonly rows: number;
  readonly columns: number;
  /** 0..1, row after row */
  readonly values: Float64Array;
  /** numbers of a shape that both have */
  readonly shared: number;
}

/** Two sets of shapes on the numbers they share, each shape of length 1 (0 where nothing shared moves). */
export interface SharedShapes {
  readonly a: readonly Float64Array[];
  readonly b: readonly Float64Array[];
  readonly shared: number;
}

/** @returns undefined with fewer than LEAST_SHARED names in common */
export function sharedShapes(a: ShapeSamples, b: ShapeSamples): SharedShapes | undefined {
  const inB = new Map(b.names.map((name, i) => [name, i]));
  const mine: number[] = [];
  const theirs: number[] = [];
  a.names.forEach((name, i) => {
    const j = inB.get(name);
    if (j === undefined) return;
    mine.push(i);
    theirs.push(j);
  });
  if (mine.length < LEAST_SHARED) return undefined;
  return { a: unitShapes(a, mine), b: unitShapes(b, theirs), shared: mine.length };
}

/**
 * A mode is M-normalised, so the numbers of one that the places see well have a length near 1 (0.6 and
 * more on the samples). Below this it is not seen: what is left may be rounding.
 */
const SEEN = 0.3;

/** The chosen numbers of every shape, at length 1; all zeros for one that is not seen. */
function unitShapes({ names, values }: ShapeSamples, chosen: readonly number[]): Float64Array[] {
  const n = names.length;
  return Array.from({ length: values.length / n }, (_, k) => {
    const v = new Float64Array(chosen.length);
    for (let i = 0; i < v.length; i++) v[i] = values[k * n + chosen[i]];
    const length = Math.sqrt(dot(v, v));
    return length > SEEN ? v.map((x) => x / length) : new Float64Array(v.length);
  });
}

/**
 * MAC_ij = (a_i'b_j)^2 / ((a_i'a_i)(b_j'b_j)) over the names that both share: 1 for the same shape at any
 * size, near 0 for different modes of one frame, because the samples are weighed by mass. R. J. Allemang &
 * D. L. Brown, "A correlation coefficient for modal vector analysis", IMAC 1982, from memory.
 *
 * @returns undefined with fewer than LEAST_SHARED names in common
 */
export function assurance(a: ShapeSamples, b: ShapeSamples): Assurance | undefined {
  const both = sharedShapes(a, b);
  return both && assuranceOf(both);
}

/** The same from shapes that are on common names already. */
export function assuranceOf({ a, b, shared }: SharedShapes): Assurance {
  const values = new Float64Array(a.length * b.length);
  a.forEach((u, i) => {
    b.forEach((v, j) => {
      const c = dot(u, v);
      values[i * b.length + j] = Math.min(1, c * c);
    });
  });
  return { rows: a.length, columns: b.length, values, shared };
}

export function dot(u: Float64Array, v: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < u.length; i++) sum += u[i] * v[i];
  return sum;
}
