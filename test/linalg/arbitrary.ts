/** fast-check generators of symmetric sparse matrices. */

import fc from "fast-check";
import { compressTriplets, type SymmetricSparse } from "../../src/linalg/sparse.ts";

export interface Triplets {
  readonly n: number;
  readonly entries: readonly { readonly i: number; readonly j: number; readonly value: number }[];
}

/** Up to `most` unknowns with a handful of couplings each, given once per pair. */
export function triplets(most: number): fc.Arbitrary<Triplets> {
  return fc.integer({ min: 1, max: most }).chain((n) => {
    const index = fc.integer({ min: 0, max: n - 1 });
    const entry = fc.record({ i: index, j: index, value: fc.integer({ min: -8, max: 8 }) });
    const entries = fc.uniqueArray(entry, {
      maxLength: 4 * n,
      selector: ({ i, j }) => Math.max(i, j) * n + Math.min(i, j),
    });
    return entries.map((list) => ({ n, entries: list }));
  });
}

export function compress({ n, entries }: Triplets): SymmetricSparse {
  const { pattern, values } = compressTriplets(
    n,
    entries.length,
    Int32Array.from(entries, (e) => e.i),
    Int32Array.from(entries, (e) => e.j),
    [Float64Array.from(entries, (e) => e.value)],
  );
  return { pattern, values: values[0] };
}

/**
 * The same matrix with its diagonal raised above the sum of its row, times the given signs:
 * factorisable in any order, with as many negative eigenvalues as there are negative signs.
 */
export function withDominantDiagonal(
  A: SymmetricSparse,
  negative: (i: number) => boolean,
): SymmetricSparse {
  const { n, colPtr, rowIdx } = A.pattern;
  const values = A.values.slice();
  const sum = new Float64Array(n);
  for (let j = 0; j < n; j++) {
    for (let p = colPtr[j] + 1; p < colPtr[j + 1]; p++) {
      sum[j] += Math.abs(values[p]);
      sum[rowIdx[p]] += Math.abs(values[p]);
    }
  }
  for (let j = 0; j < n; j++) values[colPtr[j]] = (negative(j) ? -1 : 1) * (1 + 1.5 * sum[j]);
  return { pattern: A.pattern, values };
}
