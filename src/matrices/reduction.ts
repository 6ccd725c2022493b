/**
 * Ties between unknowns removed by elimination (master and slave), not by penalties: u = T q, with q
 * the unknowns that remain. K and M become T'KT and T'MT, element by element.
 */

import { inputError } from "../errors.ts";
import type { Tie } from "../mesh/types.ts";

/** u = T q, row by row (compressed rows). */
export interface Reduction {
  /** unknowns of the mesh, 6 per node */
  readonly full: number;
  /** unknowns that remain */
  readonly n: number;
  /** which unknown of the mesh each one that remains is (size n) */
  readonly masters: Int32Array;
  /** row pointers (size full + 1) */
  readonly ptr: Int32Array;
  /** columns, 0..n-1 */
  readonly col: Int32Array;
  readonly coef: Float64Array;
}

/** A tie whose largest coefficient falls below this share of what it began with says nothing new. */
const REDUNDANT = 1e-9;
/** The preferred unknown is taken unless its coefficient is below this share of the largest. */
const WEAK = 1e-2;

type Expression = Map<number, number>;

/**
 * Gauss-Jordan elimination of the ties on sparse rows: each tie gives up one unknown, written in terms
 * of unknowns that stay. Redundant ties drop out.
 *
 * @param full number of unknowns
 * @param fixed unknowns held at zero
 */
export function eliminate(full: number, ties: readonly Tie[], fixed: readonly number[]): Reduction {
  const slaves = new Map<number, Expression>();
  /** Which slaves' expressions hold a given unknown. */
  const users = new Map<number, Set<number>>();
  const use = (dof: number, slave: number) => {
    const set = users.get(dof);
    if (set) set.add(slave);
    else users.set(dof, new Set([slave]));
  };
  for (const dof of fixed) slaves.set(dof, new Map());

  for (const tie of ties) {
    const row: Expression = new Map();
    let scale = 0;
    for (let k = 0; k < tie.dofs.length; k++) {
      const c = tie.coefs[k];
      scale = Math.max(scale, Math.abs(c));
      const known = slaves.get(tie.dofs[k]);
      if (known) for (const [dof, v] of known) add(row, dof, c * v);
      else add(row, tie.dofs[k], c);
    }
    const slave = pivotOf(row, tie.prefer, REDUNDANT * scale);
    if (slave === undefined) continue;
    const pivot = row.get(slave) as number;
    row.delete(slave);
    const expression: Expression = new Map();
    for (const [dof, c] of row) if (c !== 0) expression.set(dof, -c / pivot);
    // Earlier slaves that used this unknown now use its expression.
    for (const other of users.get(slave) ?? []) {
      const target = slaves.get(other) as Expression;
      const c = target.get(slave) as number;
      target.delete(slave);
      for (const [dof, v] of expression) {
        add(target, dof, c * v);
        use(dof, other);
      }
    }
    users.delete(slave);
    slaves.set(slave, expression);
    for (const dof of expression.keys()) use(dof, slave);
  }
  return compress(full, slaves);
}

function add(row: Expression, dof: number, c: number) {
  row.set(dof, (row.get(dof) ?? 0) + c);
}

function pivotOf(row: Expression, prefer: number, least: number): number | undefined {
  let best: number | undefined;
  let size = 0;
  for (const [dof, c] of row) {
    if (Math.abs(c) > size) {
      size = Math.abs(c);
      best = dof;
    }
  }
  if (size <= least) return undefined;
  return Math.abs(row.get(prefer) ?? 0) >= WEAK * size ? prefer : best;
}

function compress(full: number, slaves: ReadonlyMap<number, Expression>): Reduction {
  const number = new Int32Array(full).fill(-1);
  let n = 0;
  for (let i = 0; i < full; i++) if (!slaves.has(i)) number[i] = n++;
  if (n === 0) {
    throw inputError(
      "supports",
      "every motion of the frame is held, nothing is left that could vibrate; hold fewer places or directions",
    );
  }
  const ptr = new Int32Array(full + 1);
  for (let i = 0; i < full; i++) ptr[i + 1] = ptr[i] + (slaves.get(i)?.size ?? 1);
  const col = new Int32Array(ptr[full]);
  const coef = new Float64Array(ptr[full]);
  for (let i = 0; i < full; i++) {
    const expression = slaves.get(i);
    if (!expression) {
      col[ptr[i]] = number[i];
      coef[ptr[i]] = 1;
      continue;
    }
    let k = ptr[i];
    for (const dof of [...expression.keys()].sort((a, b) => a - b)) {
      col[k] = number[dof];
      coef[k++] = expression.get(dof) as number;
    }
  }
  const masters = Int32Array.from({ length: n });
  number.forEach((j, i) => {
    if (j >= 0) masters[j] = i;
  });
  return { full, n, masters, ptr, col, coef };
}

/** u = T q. */
export function expand(t: Reduction, q: ArrayLike<number>): Float64Array {
  const u = new Float64Array(t.full);
  for (let i = 0; i < t.full; i++) {
    let sum = 0;
    for (let k = t.ptr[i]; k < t.ptr[i + 1]; k++) sum += t.coef[k] * q[t.col[k]];
    u[i] = sum;
  }
  return u;
}

/** f = T' F, a load on the mesh as a load on the unknowns that remain; given sparsely. */
export function project(
  t: Reduction,
  dofs: ArrayLike<number>,
  values: ArrayLike<number>,
): Float64Array {
  const f = new Float64Array(t.n);
  for (let i = 0; i < dofs.length; i++) {
    for (let k = t.ptr[dofs[i]]; k < t.ptr[dofs[i] + 1]; k++) f[t.col[k]] += t.coef[k] * values[i];
  }
  return f;
}

/** q from u: the unknowns that remain are unknowns of the mesh. */
export function restrict(t: Reduction, u: ArrayLike<number>): Float64Array {
  return Float64Array.from(t.masters, (i) => u[i]);
}
