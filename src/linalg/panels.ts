/**
 * Product of a matrix of few rows with a wide one that many such products share.
 *
 * The wide one is packed four columns at a time, so that the inner loop reads it in the order in which
 * it lies in memory.
 */

/** Columns side by side in a panel. */
const WIDE = 4;
/**
 * Rows taken together: twelve sums are as many as stay in registers. Measured for 6 rows and 40 terms:
 * 4.7 Gflop/s; 2 x 4, 3 x 3 or 6 x 2 sums, or two terms in a step, are no faster.
 */
const ROWS = 3;

/** A matrix of `terms` x `columns` in panels: entry (t, c) at WIDE (terms floor(c / WIDE) + t) + c mod WIDE. */
export interface Panels {
  readonly terms: number;
  readonly columns: number;
  readonly values: Float64Array;
}

export function zeroPanels(terms: number, columns: number): Panels {
  return { terms, columns, values: new Float64Array(panelsFor(columns) * terms * WIDE) };
}

/** Sets a column to as many numbers of a list, from `first` on, as there are terms. */
export function setColumn(
  { terms, values }: Panels,
  column: number,
  from: Float64Array,
  first: number,
): void {
  const start = Math.floor(column / WIDE) * terms * WIDE + (column % WIDE);
  for (let t = 0, k = start; t < terms; t++, k += WIDE) values[k] = from[first + t];
}

/** How many panels so many columns take. */
export function panelsFor(columns: number): number {
  return Math.ceil(columns / WIDE);
}

/** So many columns brought to a whole number of panels. */
export function wholePanels(columns: number): number {
  return WIDE * panelsFor(columns);
}

/**
 * out += A B, for `count` panels of B from panel `first` on: WIDE count columns, of which the last few
 * may be beyond those of B.
 *
 * @param out rows x WIDE count, row-major
 * @param A rows x terms, row-major; rows a multiple of three
 * @throws RangeError for any other number of rows
 */
export function addProduct(
  out: Float64Array,
  A: Float64Array,
  B: Panels,
  first: number,
  count: number,
): void {
  const { terms, values } = B;
  const width = WIDE * count;
  if (out.length % (ROWS * width) !== 0) {
    throw new RangeError(`${out.length / width} rows, not a multiple of ${ROWS}`);
  }
  for (let p = 0; p < count; p++) {
    const panel = (first + p) * WIDE * terms;
    for (let o = WIDE * p, a = 0; o < out.length; o += ROWS * width, a += ROWS * terms)
      addThreeRows(out, o, width, A, a, values, panel, terms);
  }
}

/** Three rows times four columns. */
function addThreeRows(
  out: Float64Array,
  o: number,
  stride: number,
  A: Float64Array,
  a: number,
  B: Float64Array,
  b: number,
  terms: number,
): void {
  let p0 = 0;
  let p1 = 0;
  let p2 = 0;
  let p3 = 0;
  let q0 = 0;
  let q1 = 0;
  let q2 = 0;
  let q3 = 0;
  let r0 = 0;
  let r1 = 0;
  let r2 = 0;
  let r3 = 0;
  const a2 = a + terms;
  const a3 = a2 + terms;
  for (let t = 0, k = b; t < terms; t++, k += WIDE) {
    const x = A[a + t];
    const y = A[a2 + t];
    const z = A[a3 + t];
    const b0 = B[k];
    const b1 = B[k + 1];
    const b2 = B[k + 2];
    const b3 = B[k + 3];
    p0 += x * b0;
    p1 += x * b1;
    p2 += x * b2;
    p3 += x * b3;
    q0 += y * b0;
    q1 += y * b1;
    q2 += y * b2;
    q3 += y * b3;
    r0 += z * b0;
    r1 += z * b1;
    r2 += z * b2;
    r3 += z * b3;
  }
  out[o] += p0;
  out[o + 1] += p1;
  out[o + 2] += p2;
  out[o + 3] += p3;
  const o2 = o + stride;
  out[o2] += q0;
  out[o2 + 1] += q1;
  out[o2 + 2] += q2;
  out[o2 + 3] += q3;
  const o3 = o2 + stride;
  out[o3] += r0;
  out[o3 + 1] += r1;
  out[o3 + 2] += r2;
  out[o3 + 3] += r3;
}
