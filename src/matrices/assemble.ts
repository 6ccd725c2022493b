/** K and M of the whole frame on the unknowns that remain after the ties. */

import { knownPattern } from "../linalg/known-patterns.ts";
import { compressTriplets, type SymmetricSparse } from "../linalg/sparse.ts";
import type { Mesh } from "../mesh/types.ts";
import type { Model } from "../model/types.ts";
import { type ElementMatrices, elementMatrices } from "./elements.ts";
import { eliminate, type Reduction } from "./reduction.ts";

export interface System {
  readonly K: SymmetricSparse;
  /** on the same pattern as K */
  readonly M: SymmetricSparse;
  readonly reduction: Reduction;
  /** every element with its matrices, beams first in the mesh's order, then cells, springs, pads, masses */
  readonly elements: readonly ElementMatrices[];
}

/** Growing lists of triplets: row, column, K value, M value. */
interface Triplets {
  count: number;
  rows: Int32Array;
  cols: Int32Array;
  k: Float64Array;
  m: Float64Array;
}

export function assemble(mesh: Mesh, model: Model): System {
  const reduction = eliminate(2 * mesh.xyz.length, mesh.ties, mesh.fixed);
  const elements = [...elementMatrices(mesh, model)];
  const { K, M } = assembleElements(reduction, elements);
  // A variant of a frame met before has its pattern, and with it the ordering of its unknowns.
  const pattern = knownPattern(K.pattern);
  return { K: { ...K, pattern }, M: { ...M, pattern }, reduction, elements };
}

export interface SomeMatrices {
  readonly nodes: readonly number[];
  readonly K?: Float64Array | undefined;
  readonly M?: Float64Array | undefined;
}

/** K and M of some elements of a mesh, on all unknowns that remain. */
export function assembleElements(
  reduction: Reduction,
  elements: readonly SomeMatrices[],
): Pick<System, "K" | "M"> {
  const t: Triplets = emptyTriplets(elements.length > 100 ? 1 << 18 : 1 << 12);
  for (const e of elements) scatter(t, reduction, e.nodes, e.K, e.M);
  const { pattern, values } = compressTriplets(reduction.n, t.count, t.rows, t.cols, [t.k, t.m]);
  return { K: { pattern, values: values[0] }, M: { pattern, values: values[1] } };
}

function emptyTriplets(capacity: number): Triplets {
  return {
    count: 0,
    rows: new Int32Array(capacity),
    cols: new Int32Array(capacity),
    k: new Float64Array(capacity),
    m: new Float64Array(capacity),
  };
}

/** Room for `more` further triplets. */
function reserve(t: Triplets, more: number) {
  if (t.count + more <= t.rows.length) return;
  const bigger = emptyTriplets(Math.max(2 * t.rows.length, t.count + more));
  bigger.rows.set(t.rows);
  bigger.cols.set(t.cols);
  bigger.k.set(t.k);
  bigger.m.set(t.m);
  t.rows = bigger.rows;
  t.cols = bigger.cols;
  t.k = bigger.k;
  t.m = bigger.m;
}

/** The rows of T for an element's unknowns, on the union of the columns they touch. */
interface LocalReduction {
  /** unknowns that remain, touched by the element (size w) */
  readonly columns: readonly number[];
  /** per unknown of the element: positions in `columns` and coefficients */
  readonly at: readonly (readonly number[])[];
  readonly coef: readonly (readonly number[])[];
  /** every unknown is an unknown that remains, or is held */
  readonly plain: boolean;
}

function localReduction(r: Reduction, nodes: readonly number[]): LocalReduction {
  const position = new Map<number, number>();
  const columns: number[] = [];
  const at: number[][] = [];
  const coef: number[][] = [];
  let plain = true;
  for (const node of nodes) {
    for (let d = 6 * node; d < 6 * node + 6; d++) {
      const p: number[] = [];
      const c: number[] = [];
      for (let k = r.ptr[d]; k < r.ptr[d + 1]; k++) {
        let q = position.get(r.col[k]);
        if (q === undefined) {
          q = columns.length;
          position.set(r.col[k], q);
          columns.push(r.col[k]);
        } else plain = false;
        p.push(q);
        c.push(r.coef[k]);
      }
      if (p.length > 1 || (p.length === 1 && c[0] !== 1)) plain = false;
      at.push(p);
      coef.push(c);
    }
  }
  return { columns, at, coef, plain };
}

/** T' A T of one element matrix (order m) on its local columns (order w); symmetric. */
function reduced(A: Float64Array, local: LocalReduction): Float64Array {
  const m = local.at.length;
  const w = local.columns.length;
  const half = new Float64Array(m * w); // A T
  for (let i = 0; i < m; i++) {
    for (let j = 0; j < m; j++) {
      const a = A[m * i + j];
      if (a === 0) continue;
      const p = local.at[j];
      for (let k = 0; k < p.length; k++) half[w * i + p[k]] += a * local.coef[j][k];
    }
  }
  const out = new Float64Array(w * w); // T' (A T)
  for (let i = 0; i < m; i++) {
    const p = local.at[i];
    for (let k = 0; k < p.length; k++) {
      const c = local.coef[i][k];
      for (let j = 0; j < w; j++) out[w * p[k] + j] += c * half[w * i + j];
    }
  }
  return out;
}

function scatter(
  t: Triplets,
  r: Reduction,
  nodes: readonly number[],
  K: Float64Array | undefined,
  M: Float64Array | undefined,
) {
  const local = localReduction(r, nodes);
  const w = local.columns.length;
  // A plain element keeps its matrices; held unknowns simply have no position.
  const order = local.plain ? local.at.flatMap((p, i) => (p.length > 0 ? [i] : [])) : undefined;
  const m = local.at.length;
  const k = K && (order ? K : reduced(K, local));
  const mm = M && (order ? M : reduced(M, local));
  reserve(t, (w * (w + 1)) / 2);
  for (let a = 0; a < w; a++) {
    for (let b = 0; b <= a; b++) {
      const entry = order ? m * order[a] + order[b] : w * a + b;
      const kv = k ? k[entry] : 0;
      const mv = mm ? mm[entry] : 0;
      if (kv === 0 && mv === 0) continue;
      t.rows[t.count] = local.columns[a];
      t.cols[t.count] = local.columns[b];
      t.k[t.count] = kv;
      t.m[t.count++] = mv;
    }
  }
}
