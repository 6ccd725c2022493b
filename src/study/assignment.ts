/** Who goes with whom, so that the sum of likenesses is greatest. */

/**
 * Maximum-weight assignment of rows to columns: every row gets a column of its own, or every column a row,
 * whichever are fewer. Shortest augmenting paths with potentials, O(n^2 m) (H. W. Kuhn, "The Hungarian
 * method for the assignment problem", Naval Research Logistics Quarterly 2, 1955; this form from memory).
 *
 * @param weights rows x columns, row after row, finite
 * @returns the column of each row, -1 for rows left over
 */
export function assign(weights: ArrayLike<number>, rows: number, columns: number): Int32Array {
  if (rows > columns) {
    const turned = new Float64Array(rows * columns);
    for (let i = 0; i < rows; i++) {
      for (let j = 0; j < columns; j++) turned[j * rows + i] = weights[i * columns + j];
    }
    const rowOf = assign(turned, columns, rows);
    const out = new Int32Array(rows).fill(-1);
    rowOf.forEach((row, column) => {
      out[row] = column;
    });
    return out;
  }
  // Rows and columns count from 1 here; 0 is the row being placed, and no row.
  const rowPrice = new Float64Array(rows + 1);
  const columnPrice = new Float64Array(columns + 1);
  const rowOf = new Int32Array(columns + 1);
  const from = new Int32Array(columns + 1);
  for (let row = 1; row <= rows; row++) {
    rowOf[0] = row;
    const slack = new Float64Array(columns + 1).fill(Number.POSITIVE_INFINITY);
    const done = new Uint8Array(columns + 1);
    let at = 0;
    while (rowOf[at] !== 0) {
      done[at] = 1;
      const i = rowOf[at];
      let least = Number.POSITIVE_INFINITY;
      let next = 0;
      for (let j = 1; j <= columns; j++) {
        if (done[j]) continue;
        const cost = -weights[(i - 1) * columns + j - 1] - rowPrice[i] - columnPrice[j];
        if (cost < slack[j]) {
          slack[j] = cost;
          from[j] = at;
        }
        if (slack[j] < least) {
          least = slack[j];
          next = j;
        }
      }
      for (let j = 0; j <= columns; j++) {
        if (done[j]) {
          rowPrice[rowOf[j]] += least;
          columnPrice[j] -= least;
        } else slack[j] -= least;
      }
      at = next;
    }
    while (at !== 0) {
      rowOf[at] = rowOf[from[at]];
      at = from[at];
    }
  }
  const out = new Int32Array(rows).fill(-1);
  for (let j = 1; j <= columns; j++) if (rowOf[j] > 0) out[rowOf[j] - 1] = j - 1;
  return out;
}
