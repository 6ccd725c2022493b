/** A place in the stack's own coordinates, made ready for a sum over many frequencies. */

import { leverRows, type Place, sixBy, transposed } from "./place.ts";

export interface Port {
  /** W psi of the elastic modes (6 x elastic, row-major) */
  readonly psi: Float64Array;
  /** W psi of the rigid motions (6 x rigid, row-major) */
  readonly rigid: Float64Array;
  /** products of two rows of psi, as PAIRS (21 x elastic) */
  readonly pairs: Float64Array;
  /** -omega^2 H of the rigid motions, the same at every frequency, as PAIRS (size 21) */
  readonly loose: Float64Array;
  /** flexibility of the modes left out, as PAIRS (size 21) */
  readonly flexibility: Float64Array;
  /** W of the stack, or the identity */
  readonly W: Float64Array;
  /** the chip's motion ux uy uz rx ry rz from the coordinates, 6 x 6 */
  readonly chip: Float64Array;
}

/** The 21 different entries of a symmetric 6 x 6 matrix: row and column. */
export const PAIRS: readonly (readonly [number, number])[] = Array.from({ length: 6 }, (_, i) =>
  Array.from({ length: i + 1 }, (_, j) => [i, j] as const),
).flat();

const IDENTITY = Float64Array.from({ length: 36 }, (_, i) => (i % 7 === 0 ? 1 : 0));

/** @param elastic how many of the place's terms are elastic modes; the others are rigid motions */
export function portOf({ psi, flexibility, stack, chip }: Place, elastic: number): Port {
  const terms = psi.length / 6;
  const W = stack?.W ?? IDENTITY;
  const own = sixBy(W, psi, terms);
  const modes = columns(own, terms, 0, elastic);
  const rigid = columns(own, terms, elastic, terms);
  const pairs = new Float64Array(PAIRS.length * elastic);
  PAIRS.forEach(([i, j], p) => {
    const [a, b, to] = [i * elastic, j * elastic, p * elastic];
    for (let t = 0; t < elastic; t++) pairs[to + t] = modes[a + t] * modes[b + t];
  });
  const half = sixBy(W, flexibility, 6); // W F W', F symmetric
  const F = sixBy(W, transposed(half), 6);
  const count = terms - elastic;
  return {
    psi: modes,
    rigid,
    pairs,
    loose: Float64Array.from(PAIRS, ([i, j]) => {
      let sum = 0;
      for (let r = 0; r < count; r++) sum += rigid[i * count + r] * rigid[j * count + r];
      return sum;
    }),
    flexibility: Float64Array.from(PAIRS, ([i, j]) => F[6 * i + j]),
    W,
    chip: sixBy(leverRows(chip), stack?.back ?? IDENTITY, 6),
  };
}

/** Columns `first` to before `end` of a matrix of 6 rows. */
function columns(A: Float64Array, width: number, first: number, end: number): Float64Array {
  const out = new Float64Array(6 * (end - first));
  for (let i = 0; i < 6; i++) {
    out.set(A.subarray(i * width + first, i * width + end), i * (end - first));
  }
  return out;
}
