/** Matrices of elements as the modes see them. */

import type { ElementMatrices } from "../matrices/elements.ts";
import type { Reduction } from "../matrices/reduction.ts";

/** Modes on the unknowns that remain, unknown after unknown. */
export interface ModeRows {
  readonly count: number;
  /** n x count, row-major */
  readonly rows: Float64Array;
}

/** @param phi column-major, n x count */
export function modeRows(phi: Float64Array, count: number): ModeRows {
  const n = phi.length / count;
  const rows = new Float64Array(phi.length);
  for (let k = 0; k < count; k++) {
    for (let i = 0; i < n; i++) rows[i * count + k] = phi[k * n + i];
  }
  return { count, rows };
}

/** K += weight Phi'T'K_e T Phi and the same of the mass (count x count, row-major). */
export function addProjected(
  out: { readonly K: Float64Array; readonly M: Float64Array },
  e: ElementMatrices,
  reduction: Reduction,
  modes: ModeRows,
  weight: number,
): void {
  const U = motionsOf(e.nodes, reduction, modes);
  if (e.K) addQuadratic(out.K, e.K, U, modes.count, weight);
  if (e.M) addQuadratic(out.M, e.M, U, modes.count, weight);
}

/** The modes as motions of an element's nodes (6 nodes x count, row-major). */
function motionsOf(
  nodes: readonly number[],
  { ptr, col, coef }: Reduction,
  { count, rows }: ModeRows,
): Float64Array {
  const U = new Float64Array(6 * nodes.length * count);
  nodes.forEach((node, a) => {
    for (let d = 0; d < 6; d++) {
      const to = (6 * a + d) * count;
      for (let p = ptr[6 * node + d]; p < ptr[6 * node + d + 1]; p++) {
        const from = col[p] * count;
        const c = coef[p];
        for (let k = 0; k < count; k++) U[to + k] += c * rows[from + k];
      }
    }
  });
  return U;
}

/** G += weight U'A U for a symmetric A. */
function addQuadratic(
  G: Float64Array,
  A: Float64Array,
  U: Float64Array,
  count: number,
  weight: number,
): void {
  const order = U.length / count;
  const AU = new Float64Array(count);
  for (let r = 0; r < order; r++) {
    AU.fill(0);
    for (let s = 0; s < order; s++) {
      const a = weight * A[r * order + s];
      if (a === 0) continue;
      for (let k = 0; k < count; k++) AU[k] += a * U[s * count + k];
    }
    for (let i = 0; i < count; i++) {
      const u = U[r * count + i];
      if (u === 0) continue;
      for (let j = 0; j < count; j++) G[i * count + j] += u * AU[j];
    }
  }
}
