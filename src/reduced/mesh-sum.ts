/** Sums of element matrices on nodes of the mesh, before any tie is eliminated. */

import { compressTriplets, type SymmetricSparse, withoutZeros } from "../linalg/sparse.ts";

/** An element matrix with its weight in each of the sums. */
export interface Weighted {
  /** of the mesh, six unknowns each */
  readonly nodes: readonly number[];
  /** row-major, order 6 * nodes.length */
  readonly A: Float64Array;
  readonly weights: readonly number[];
}

export interface MeshSum {
  /** unknowns of the mesh at which there is anything, in the order in which they came (size m) */
  readonly unknowns: Int32Array;
  /** order m */
  readonly sums: readonly SymmetricSparse[];
}

/** @param count of sums */
export function meshSum(elements: readonly Weighted[], count: number): MeshSum {
  const numbers = new Map<number, number>();
  const numberOf = (unknown: number) => {
    const found = numbers.get(unknown) ?? numbers.size;
    numbers.set(unknown, found);
    return found;
  };
  const most = elements.reduce(
    (sum, { nodes: { length } }) => sum + 3 * length * (6 * length + 1),
    0,
  );
  const rows = new Int32Array(most);
  const cols = new Int32Array(most);
  const values = Array.from({ length: count }, () => new Float64Array(most));
  let t = 0;
  for (const { nodes, A, weights } of elements) {
    const order = 6 * nodes.length;
    const own = new Int32Array(order).fill(-1);
    for (let i = 0; i < order; i++) {
      for (let j = 0; j <= i; j++) {
        const a = A[i * order + j];
        if (a === 0) continue;
        if (own[i] < 0) own[i] = numberOf(6 * nodes[Math.floor(i / 6)] + (i % 6));
        if (own[j] < 0) own[j] = numberOf(6 * nodes[Math.floor(j / 6)] + (j % 6));
        rows[t] = own[i];
        cols[t] = own[j];
        for (let s = 0; s < count; s++) values[s][t] = weights[s] * a;
        t++;
      }
    }
  }
  const { pattern, values: sums } = compressTriplets(numbers.size, t, rows, cols, values);
  return {
    unknowns: Int32Array.from(numbers.keys()),
    sums: sums.map((v) => withoutZeros({ pattern, values: v })),
  };
}
