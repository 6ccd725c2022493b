/** Symmetric sparse matrices: the lower triangle with its diagonal, in compressed columns. */

/** Where the entries are. Several matrices (K, M, K - sigma M) share one pattern. */
export interface SymmetricPattern {
  readonly n: number;
  /** Column j holds entries colPtr[j] .. colPtr[j + 1] - 1 (size n + 1). */
  readonly colPtr: Int32Array;
  /** Row of each entry, ascending within a column, the diagonal first (size nnz). */
  readonly rowIdx: Int32Array;
}

export interface SymmetricSparse {
  readonly pattern: SymmetricPattern;
  /** One value per entry of the pattern (size nnz). */
  readonly values: Float64Array;
}

/**
 * Triplets in, compressed columns out, in linear time.
 *
 * Each off-diagonal pair is given once, in either triangle; duplicates are summed in the order
 * given, so the result is the same to the last bit whenever the input is. Several value arrays
 * may share the triplets. Every diagonal entry is present, even when nobody gave it.
 *
 * @param count number of triplets; the arrays may be longer
 * @throws RangeError for an index outside 0 .. n - 1
 */
export function compressTriplets(
  n: number,
  count: number,
  rows: Int32Array,
  cols: Int32Array,
  values: readonly Float64Array[],
): { readonly pattern: SymmetricPattern; readonly values: Float64Array[] } {
  // The n diagonal entries come first, with value zero: triplet t < n is (t, t).
  const total = n + count;
  const row = new Int32Array(total);
  const col = new Int32Array(total);
  for (let j = 0; j < n; j++) row[j] = col[j] = j;
  for (let t = 0; t < count; t++) {
    const i = rows[t];
    const j = cols[t];
    if (!(i >= 0 && i < n && j >= 0 && j < n)) {
      throw new RangeError(`triplet ${t} is at (${i}, ${j}), outside a matrix of order ${n}`);
    }
    row[n + t] = Math.max(i, j);
    col[n + t] = Math.min(i, j);
  }
  // Two stable counting sorts, rows then columns, leave rows ascending within each column.
  const byRow = countingSort(n, row, undefined);
  const byCol = countingSort(n, col, byRow);

  const colPtr = new Int32Array(n + 1);
  const rowIdx = new Int32Array(total);
  const slot = new Int32Array(total); // entry of the pattern that triplet t is added to
  let nnz = 0;
  let lastRow = -1;
  let lastCol = -1;
  for (let q = 0; q < total; q++) {
    const t = byCol[q];
    if (row[t] !== lastRow || col[t] !== lastCol) {
      lastRow = row[t];
      lastCol = col[t];
      rowIdx[nnz++] = lastRow;
      colPtr[lastCol + 1] = nnz;
    }
    slot[t] = nnz - 1;
  }
  const summed = values.map((given) => {
    const out = new Float64Array(nnz);
    for (let t = 0; t < count; t++) out[slot[n + t]] += given[t];
    return out;
  });
  return { pattern: { n, colPtr, rowIdx: rowIdx.slice(0, nnz) }, values: summed };
}

/** The order that sorts `key` (values 0 .. n - 1), stable with respect to `order`. */
export function countingSort(
  n: number,
  key: Int32Array,
  order: Int32Array | undefined,
): Int32Array {
  const next = new Int32Array(n + 1);
  for (let t = 0; t < key.length; t++) next[key[t] + 1]++;
  for (let j = 0; j < n; j++) next[j + 1] += next[j];
  const sorted = new Int32Array(key.length);
  for (let q = 0; q < key.length; q++) {
    const t = order === undefined ? q : order[q];
    sorted[next[key[t]]++] = t;
  }
  return sorted;
}

/** alpha A + beta B on their common pattern. */
export function combine(
  alpha: number,
  A: SymmetricSparse,
  beta: number,
  B: SymmetricSparse,
): SymmetricSparse {
  requireSamePattern(A, B);
  const a = A.values;
  const b = B.values;
  const values = new Float64Array(a.length);
  for (let p = 0; p < a.length; p++) values[p] = alpha * a[p] + beta * b[p];
  return { pattern: A.pattern, values };
}

/** @throws RangeError when A and B were not compressed together */
export function requireSamePattern(A: SymmetricSparse, B: SymmetricSparse): void {
  if (A.pattern !== B.pattern) {
    throw new RangeError(
      "the two matrices must share one pattern: compress their triplets together",
    );
  }
}

/**
 * A on a pattern of its own, without the entries that are zero (the diagonal stays).
 *
 * Beams along the axes fill a third of the blocks that couple their nodes; products with such a
 * copy take half the time.
 */
export function withoutZeros({ pattern, values }: SymmetricSparse): SymmetricSparse {
  const { n, colPtr, rowIdx } = pattern;
  const ptr = new Int32Array(n + 1);
  const idx = new Int32Array(values.length);
  const kept = new Float64Array(values.length);
  let nnz = 0;
  for (let j = 0; j < n; j++) {
    for (let p = colPtr[j]; p < colPtr[j + 1]; p++) {
      if (values[p] === 0 && p > colPtr[j]) continue;
      idx[nnz] = rowIdx[p];
      kept[nnz++] = values[p];
    }
    ptr[j + 1] = nnz;
  }
  return {
    pattern: { n, colPtr: ptr, rowIdx: idx.slice(0, nnz) },
    values: kept.slice(0, nnz),
  };
}

/** The diagonal of A (size n). */
export function diagonal(A: SymmetricSparse): Float64Array {
  const { n, colPtr } = A.pattern;
  const out = new Float64Array(n);
  for (let j = 0; j < n; j++) out[j] = A.values[colPtr[j]];
  return out;
}

/** A as a full n x n matrix, row by row (size n n). */
export function toDense(A: SymmetricSparse): Float64Array {
  const { n, colPtr, rowIdx } = A.pattern;
  const out = new Float64Array(n * n);
  for (let j = 0; j < n; j++) {
    for (let p = colPtr[j]; p < colPtr[j + 1]; p++) {
      out[rowIdx[p] * n + j] = A.values[p];
      out[j * n + rowIdx[p]] = A.values[p];
    }
  }
  return out;
}
