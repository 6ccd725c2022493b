/** Ties eliminated already, written again with other unknowns kept. */

import type { Reduction } from "./reduction.ts";

/** A pivot below this share of its row says nothing. */
const NOTHING = 1e-9;

/** Coefficients by unknown that remains, numbered as in the reduction that is left. */
type Row = Map<number, number>;

/**
 * The same motions u = T q with q the unknowns `masters` of the mesh in place of those that remained
 * (basis exchange; few of them may differ). Frames that differ by a hair may give up other unknowns, for
 * instance where an arm turns through 45 degrees.
 *
 * @returns undefined where these do not fix the motion
 */
export function withMasters(r: Reduction, masters: Int32Array): Reduction | undefined {
  if (masters.length !== r.n) return undefined;
  const column = new Int32Array(r.full).fill(-1);
  masters.forEach((dof, j) => {
    column[dof] = j;
  });
  const kept = new Set(r.masters);
  const entering = Array.from(masters).filter((dof) => !kept.has(dof));
  if (entering.length === 0) return r;
  const leaving = Array.from(r.masters.keys()).filter((q) => column[r.masters[q]] < 0);
  const known = exchanged(r, entering, leaving, column);
  if (known === undefined) return undefined;
  const rows = Array.from({ length: r.full }, (_, dof): Row => {
    if (column[dof] >= 0) return new Map([[column[dof], 1]]);
    const row: Row = new Map();
    for (let k = r.ptr[dof]; k < r.ptr[dof + 1]; k++) {
      const other = known.get(r.col[k]);
      if (other === undefined) add(row, column[r.masters[r.col[k]]], r.coef[k]);
      else for (const [j, c] of other) add(row, j, r.coef[k] * c);
    }
    return row;
  });
  return compressed(r, masters, rows);
}

/**
 * Each leaving unknown in the new ones, by Gauss-Jordan elimination: the row of T of an entering unknown
 * says sum of c q = u, with some of the q leaving.
 */
function exchanged(
  r: Reduction,
  entering: readonly number[],
  leaving: readonly number[],
  column: Int32Array,
): Map<number, Row> | undefined {
  const gone = new Map(leaving.map((q, i) => [q, i]));
  const width = leaving.length;
  const A = entering.map(() => new Float64Array(width));
  const rest = entering.map((dof, i): Row => {
    const row: Row = new Map([[column[dof], 1]]);
    for (let k = r.ptr[dof]; k < r.ptr[dof + 1]; k++) {
      const at = gone.get(r.col[k]);
      if (at === undefined) add(row, column[r.masters[r.col[k]]], -r.coef[k]);
      else A[i][at] += r.coef[k];
    }
    return row;
  });
  for (let p = 0; p < width; p++) {
    let best = p;
    for (let i = p + 1; i < width; i++) if (Math.abs(A[i][p]) > Math.abs(A[best][p])) best = i;
    const pivot = A[best][p];
    if (!(Math.abs(pivot) > NOTHING * Math.max(1, ...A[best].map(Math.abs)))) return undefined;
    [A[p], A[best]] = [A[best], A[p]];
    [rest[p], rest[best]] = [rest[best], rest[p]];
    for (let j = 0; j < width; j++) A[p][j] /= pivot;
    for (const [j, c] of rest[p]) rest[p].set(j, c / pivot);
    for (let i = 0; i < width; i++) {
      const c = A[i][p];
      if (i === p || c === 0) continue;
      for (let j = 0; j < width; j++) A[i][j] -= c * A[p][j];
      for (const [j, v] of rest[p]) add(rest[i], j, -c * v);
    }
  }
  return new Map(leaving.map((q, i) => [q, rest[i]]));
}

function add(row: Row, j: number, c: number): void {
  row.set(j, (row.get(j) ?? 0) + c);
}

function compressed(r: Reduction, masters: Int32Array, rows: readonly Row[]): Reduction {
  const ptr = new Int32Array(r.full + 1);
  rows.forEach((row, i) => {
    ptr[i + 1] = ptr[i] + row.size;
  });
  const col = new Int32Array(ptr[r.full]);
  const coef = new Float64Array(ptr[r.full]);
  rows.forEach((row, i) => {
    [...row.entries()]
      .sort(([a], [b]) => a - b)
      .forEach(([j, c], k) => {
        col[ptr[i] + k] = j;
        coef[ptr[i] + k] = c;
      });
  });
  return { full: r.full, n: r.n, masters, ptr, col, coef };
}
