/** Sparse matrices with entries at few unknowns, brought to these. */

import type { SymmetricSparse } from "../linalg/sparse.ts";

/**
 * @param matrices of one order
 * @returns the unknowns at which any of them has an entry that is not zero, and the matrices on these
 */
export function compact(matrices: readonly SymmetricSparse[]): {
  readonly unknowns: Int32Array;
  readonly matrices: readonly SymmetricSparse[];
} {
  const { n } = matrices[0].pattern;
  const touched = new Uint8Array(n);
  for (const { pattern, values } of matrices) {
    for (let j = 0; j < n; j++) {
      for (let p = pattern.colPtr[j]; p < pattern.colPtr[j + 1]; p++) {
        if (values[p] !== 0) touched[j] = touched[pattern.rowIdx[p]] = 1;
      }
    }
  }
  const place = new Int32Array(n).fill(-1);
  let m = 0;
  for (let i = 0; i < n; i++) if (touched[i]) place[i] = m++;
  const unknowns = new Int32Array(m);
  for (let i = 0; i < n; i++) if (touched[i]) unknowns[place[i]] = i;
  return { unknowns, matrices: matrices.map((A) => onUnknowns(A, unknowns, place)) };
}

function onUnknowns(
  { pattern, values }: SymmetricSparse,
  unknowns: Int32Array,
  place: Int32Array,
): SymmetricSparse {
  const m = unknowns.length;
  const colPtr = new Int32Array(m + 1);
  const rowIdx: number[] = [];
  const kept: number[] = [];
  for (let k = 0; k < m; k++) {
    const j = unknowns[k];
    const start = pattern.colPtr[j];
    rowIdx.push(k);
    kept.push(values[start]);
    for (let p = start + 1; p < pattern.colPtr[j + 1]; p++) {
      if (values[p] === 0) continue;
      rowIdx.push(place[pattern.rowIdx[p]]);
      kept.push(values[p]);
    }
    colPtr[k + 1] = rowIdx.length;
  }
  return {
    pattern: { n: m, colPtr, rowIdx: Int32Array.from(rowIdx) },
    values: Float64Array.from(kept),
  };
}
