/**
 * A few numbers by which K and M are known again: they change with the mesh or the model, and not with
 * the last bits of single entries.
 */

import { multiply } from "../../src/linalg/product.ts";
import { diagonal, type SymmetricSparse } from "../../src/linalg/sparse.ts";

interface Sums {
  readonly trace: number;
  /** Frobenius */
  readonly norm: number;
  /** of the diagonal entries that are not zero: every one of them weighs alike, however soft */
  readonly sumOfLogarithms: number;
  /** x' A x with x_i = sin(i), i = 1 .. n: changes when the unknowns are numbered otherwise */
  readonly probe: number;
}

export interface Fingerprint {
  readonly unknowns: number;
  /** of the common pattern, lower triangle */
  readonly entries: number;
  readonly K: Sums;
  readonly M: Sums;
}

const RELATIVE = 1e-10;

export function fingerprint(K: SymmetricSparse, M: SymmetricSparse): Fingerprint {
  return { unknowns: K.pattern.n, entries: K.pattern.rowIdx.length, K: sums(K), M: sums(M) };
}

/** What differs, each in words; empty when nothing does. */
export function differences(was: Fingerprint, is: Fingerprint): string[] {
  const found: string[] = [];
  const compare = (what: string, before: number, now: number, tolerance: number) => {
    if (Math.abs(now - before) <= tolerance * Math.abs(before)) return;
    found.push(`${what}: was ${before}, is ${now}`);
  };
  compare("unknowns", was.unknowns, is.unknowns, 0);
  compare("entries", was.entries, is.entries, 0);
  for (const matrix of ["K", "M"] as const) {
    for (const sum of ["trace", "norm", "sumOfLogarithms", "probe"] as const) {
      compare(`${sum} of ${matrix}`, was[matrix][sum], is[matrix][sum], RELATIVE);
    }
  }
  return found;
}

function sums(A: SymmetricSparse): Sums {
  const { n, colPtr } = A.pattern;
  const d = diagonal(A);
  let squares = 0;
  for (let j = 0; j < n; j++) {
    for (let p = colPtr[j]; p < colPtr[j + 1]; p++) {
      squares += (p === colPtr[j] ? 1 : 2) * A.values[p] ** 2;
    }
  }
  const x = Float64Array.from({ length: n }, (_, i) => Math.sin(i + 1));
  const Ax = new Float64Array(n);
  multiply(Ax, A, x);
  return {
    trace: d.reduce((sum, a) => sum + a, 0),
    norm: Math.sqrt(squares),
    sumOfLogarithms: d.reduce((sum, a) => (a === 0 ? sum : sum + Math.log(Math.abs(a))), 0),
    probe: x.reduce((sum, xi, i) => sum + xi * Ax[i], 0),
  };
}
