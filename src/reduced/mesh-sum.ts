/** Sums of element matrices on nodes of the mesh, before any tie is eliminated. */

import { compressTriplets, type SymmetricSparse, withoutZeros } from "../linalg/sparse.ts";

/** An element matrix with its weight in each of the sums. */
export interface Weighted {
  /** six unknowns each, in this order; any numbers from 0 on */
  readonly places: readonly number[];
  /** row-major, order 6 * places.length */
  readonly A: Float64Array;
  readonly weights: readonly number[];
}

export interface MeshSum {
  /** those that were named, in the order in which they came */
  readonly places: Int32Array;
  /** six unknowns for each place */
  readonly sums: readonly SymmetricSparse[];
}

/** @param count of sums */
export function meshSum(elements: readonly Weighted[], count: number): MeshSum {
  const numbers = new Map<number, number>();
  for (const { places } of elements) {
    for (const p of places) if (!numbers.has(p)) numbers.set(p, numbers.size);
  }
  const most = elements.reduce(
    (sum, { places: { length } }) => sum + 3 * length * (6 * length + 1),
    0,
  );
  const rows = new Int32Array(most);
  const cols = new Int32Array(most);
  const values = Array.from({ length: count }, () => new Float64Array(most));
  let t = 0;
  for (const { places, A, weights } of elements) {
    const first = places.map((p) => 6 * (numbers.get(p) as number));
    const order = 6 * places.length;
    for (let i = 0; i < order; i++) {
      for (let j = 0; j <= i; j++) {
        const a = A[i * order + j];
        if (a === 0) continue;
        rows[t] = first[Math.floor(i / 6)] + (i % 6);
        cols[t] = first[Math.floor(j / 6)] + (j % 6);
        for (let s = 0; s < count; s++) values[s][t] = weights[s] * a;
        t++;
      }
    }
  }
  const { pattern, values: sums } = compressTriplets(6 * numbers.size, t, rows, cols, values);
  return {
    places: Int32Array.from(numbers.keys()),
    sums: sums.map((v) => withoutZeros({ pattern, values: v })),
  };
}
