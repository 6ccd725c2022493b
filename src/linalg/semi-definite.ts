/** What every stiffness and mass matrix satisfies, as far as single entries can tell. */

import { SolveError } from "../errors.ts";
import type { SymmetricSparse } from "./sparse.ts";

/** @throws SolveError naming the first entry that is infinite or no number */
export function requireFinite({ pattern, values }: SymmetricSparse, name: string): void {
  const p = values.findIndex((a) => !Number.isFinite(a));
  if (p < 0) return;
  const [i, j] = place(pattern, p);
  throw new SolveError(
    `entry (${i}, ${j}) of the ${name} matrix is ${values[p]}: only finite numbers can be solved with`,
  );
}

/** |a_ij| may exceed sqrt(a_ii a_jj) by this share of itself through rounding ... */
const ROUNDING = 1e-9;
/** ... and rounding may take this share of the largest off a diagonal entry: slivers of cut cells. */
const SLIVER = 1e-12;

/**
 * Refuses a matrix with a negative diagonal entry, or a_ij^2 > a_ii a_jj: with either, some motion has
 * negative energy. Necessary, not sufficient; but linear in the number of entries. For K the
 * factorisation decides anyway. It does not for M, which weighs little beside K in K - sigma M.
 *
 * @throws SolveError naming the entry
 */
export function requireSemiDefinite({ pattern, values }: SymmetricSparse, name: string): void {
  const { n, colPtr, rowIdx } = pattern;
  const refuse = (p: number, bound: string): never => {
    const [i, j] = place(pattern, p);
    throw new SolveError(
      `the ${name} matrix gives some motion a negative energy: entry (${i}, ${j}) is ` +
        `${values[p].toPrecision(6)}, where ${bound}`,
    );
  };
  let slack = 0;
  for (let j = 0; j < n; j++) slack = Math.max(slack, SLIVER * values[colPtr[j]]);
  for (let j = 0; j < n; j++) {
    const diagonal = values[colPtr[j]];
    if (diagonal < -slack) refuse(colPtr[j], "no diagonal entry may be below zero");
    for (let p = colPtr[j] + 1; p < colPtr[j + 1]; p++) {
      const other = values[colPtr[rowIdx[p]]];
      const largest = Math.sqrt((Math.max(0, diagonal) + slack) * (Math.max(0, other) + slack));
      if (Math.abs(values[p]) > (1 + ROUNDING) * largest) {
        refuse(p, `the diagonal entries allow ${largest.toPrecision(6)} at most`);
      }
    }
  }
}

/** Row and column of entry p. */
function place({ colPtr, rowIdx }: SymmetricSparse["pattern"], p: number): [number, number] {
  let j = 0;
  while (colPtr[j + 1] <= p) j++;
  return [rowIdx[p], j];
}
