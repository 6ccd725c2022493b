/**
 * Symbolic factorisation: everything about L that depends on the pattern alone. Done once for K
 * and M, used for every shift.
 */

import { SolveError } from "../errors.ts";
import { type CompressedGraph, compressGraph } from "./compressed-graph.ts";
import { findSupernodes, type Supernode } from "./elimination.ts";
import { minimumDegree } from "./minimum-degree.ts";
import { countingSort, type SymmetricPattern } from "./sparse.ts";
import { childLists, mergeSupernodes, postorder } from "./supernode-tree.ts";

/**
 * Supernode s owns the permuted unknowns first[s] .. first[s + 1] - 1 (its width w) and has the
 * rows rowIdx[rowPtr[s]] .. rowIdx[rowPtr[s + 1] - 1] below them (its height r). Its part of L is
 * a dense panel of w + r rows and w columns, row by row, that starts at panelPtr[s].
 */
export interface Symbolic {
  readonly pattern: SymmetricPattern;
  /** The permuted matrix has unknown perm[k] of the given one at place k (size n). */
  readonly perm: Int32Array;
  /** Inverse of perm: unknown i is at place[i] (size n). */
  readonly place: Int32Array;
  readonly supernodes: number;
  /** size supernodes + 1 */
  readonly first: Int32Array;
  readonly rowPtr: Int32Array;
  readonly panelPtr: Int32Array;
  /** Permuted rows below each supernode, ascending (size rowPtr[supernodes]). */
  readonly rowIdx: Int32Array;
  /** The same rows counted within the front (columns, then rows below) of the parent. */
  readonly localIdx: Int32Array;
  /** Parent of each supernode, later than its children; -1 for a root. */
  readonly parent: Int32Array;
  /** Place of each entry of the pattern within the panels (size nnz). */
  readonly entryPlace: Int32Array;
  /** Supernodes of even and odd depth keep their update matrices on separate stacks: which one ... */
  readonly stack: Uint8Array;
  /** ... where in it ... */
  readonly updatePtr: Int32Array;
  /** ... and how large the two stacks get. */
  readonly stackSize: readonly [number, number];
  /** Entries of L that are stored, the unit diagonal included and upper halves not. */
  readonly factorEntries: number;
  /** Floating-point operations of a numeric factorisation. */
  readonly factorFlops: number;
}

/**
 * Orders the unknowns and lays out the factor of any matrix with this pattern.
 *
 * @throws SolveError when the factor would not fit into memory
 */
export function analysePattern(pattern: SymmetricPattern): Symbolic {
  const graph = compressGraph(pattern);
  const merged = mergeSupernodes(findSupernodes(graph, minimumDegree(graph)));
  const children = childLists(merged);
  const order = postorder(merged, children);
  const columns = layOutColumns(graph, merged, order);
  const rows = layOutRows(graph, columns);
  return {
    pattern,
    perm: columns.perm,
    place: columns.place,
    supernodes: merged.length,
    first: columns.first,
    parent: columns.parent,
    ...rows,
    entryPlace: placeEntries(pattern, columns, rows),
    ...layOutStacks(columns, rows),
  };
}

interface Columns {
  readonly perm: Int32Array;
  readonly place: Int32Array;
  readonly first: Int32Array;
  readonly parent: Int32Array;
  /** Supernodes in their final order. */
  readonly sorted: readonly Supernode[];
}

function layOutColumns(
  { memberPtr, members }: CompressedGraph,
  supernodes: readonly Supernode[],
  order: Int32Array,
): Columns {
  const rank = new Int32Array(order.length);
  for (let k = 0; k < order.length; k++) rank[order[k]] = k;
  const sorted = Array.from(order, (s) => supernodes[s]);
  const perm = new Int32Array(members.length);
  const place = new Int32Array(members.length);
  const first = new Int32Array(sorted.length + 1);
  let count = 0;
  sorted.forEach((supernode, s) => {
    for (const g of supernode.columns) {
      for (let q = memberPtr[g]; q < memberPtr[g + 1]; q++) {
        place[members[q]] = count;
        perm[count++] = members[q];
      }
    }
    first[s + 1] = count;
  });
  const parent = Int32Array.from(sorted, (s) => (s.parent < 0 ? -1 : rank[s.parent]));
  return { perm, place, first, parent, sorted };
}

interface Rows {
  readonly rowPtr: Int32Array;
  readonly rowIdx: Int32Array;
  readonly localIdx: Int32Array;
  readonly panelPtr: Int32Array;
  readonly factorEntries: number;
  readonly factorFlops: number;
}

function layOutRows(
  { memberPtr, members }: CompressedGraph,
  { sorted, place, first, parent }: Columns,
): Rows {
  const count = sorted.length;
  const rowPtr = new Int32Array(count + 1);
  const panelPtr = new Int32Array(count + 1);
  let panelEnd = 0;
  let factorEntries = 0;
  let factorFlops = 0;
  sorted.forEach(({ width: w, height: r }, s) => {
    rowPtr[s + 1] = rowPtr[s] + r;
    panelEnd += (w + r) * w;
    panelPtr[s + 1] = panelEnd;
    factorEntries += (w * (w + 1)) / 2 + w * r;
    // Each of the w pivots updates a triangle of the h entries below it: h (h + 1) operations.
    for (let h = r; h < r + w; h++) factorFlops += h * (h + 2);
  });
  if (panelEnd > 0x7fffffff) {
    throw new SolveError(
      `the factor of this model of ${place.length} unknowns would hold ${panelEnd} numbers, ` +
        "more than can be addressed; use a coarser mesh",
    );
  }
  const rowIdx = new Int32Array(rowPtr[count]);
  const localIdx = new Int32Array(rowPtr[count]);
  for (let s = 0; s < count; s++) {
    const leaders = Int32Array.from(sorted[s].below, (g) => g).sort(
      (g, h) => place[members[memberPtr[g]]] - place[members[memberPtr[h]]],
    );
    let q = rowPtr[s];
    for (const g of leaders) {
      for (let m = memberPtr[g]; m < memberPtr[g + 1]; m++) rowIdx[q++] = place[members[m]];
    }
  }
  for (let s = 0; s < count; s++) {
    const p = parent[s];
    if (p < 0) continue;
    const width = first[p + 1] - first[p];
    let q = rowPtr[p];
    for (let i = rowPtr[s]; i < rowPtr[s + 1]; i++) {
      if (rowIdx[i] < first[p + 1]) localIdx[i] = rowIdx[i] - first[p];
      else {
        while (rowIdx[q] !== rowIdx[i]) q++;
        localIdx[i] = width + q - rowPtr[p];
      }
    }
  }
  return { rowPtr, rowIdx, localIdx, panelPtr, factorEntries, factorFlops };
}

/** Where each entry of the given matrix goes within the panels. */
function placeEntries(
  { n, colPtr, rowIdx: row }: SymmetricPattern,
  { place, first }: Columns,
  { rowPtr, rowIdx, panelPtr }: Rows,
): Int32Array {
  const count = first.length - 1;
  const supernodeOf = new Int32Array(n);
  for (let s = 0; s < count; s++) supernodeOf.fill(s, first[s], first[s + 1]);
  const nnz = row.length;
  const owner = new Int32Array(nnz);
  const high = new Int32Array(nnz);
  const low = new Int32Array(nnz);
  for (let j = 0; j < n; j++) {
    const b = place[j];
    for (let p = colPtr[j]; p < colPtr[j + 1]; p++) {
      const a = place[row[p]];
      low[p] = Math.min(a, b);
      high[p] = Math.max(a, b);
      owner[p] = supernodeOf[low[p]];
    }
  }
  const byOwner = countingSort(count, owner, undefined);
  const local = new Int32Array(n); // row of the current panel for each permuted unknown
  const out = new Int32Array(nnz);
  let q = 0;
  for (let s = 0; s < count; s++) {
    const w = first[s + 1] - first[s];
    for (let k = 0; k < w; k++) local[first[s] + k] = k;
    for (let i = rowPtr[s]; i < rowPtr[s + 1]; i++) local[rowIdx[i]] = w + i - rowPtr[s];
    for (; q < nnz && owner[byOwner[q]] === s; q++) {
      const p = byOwner[q];
      out[p] = panelPtr[s] + local[high[p]] * w + low[p] - first[s];
    }
  }
  return out;
}

/** A parent's update matrix goes to the other stack than those of its children, on top of it. */
function layOutStacks(
  { parent }: Columns,
  { rowPtr }: Rows,
): Pick<Symbolic, "stack" | "updatePtr" | "stackSize"> {
  const count = parent.length;
  const stack = new Uint8Array(count);
  for (let s = count - 1; s >= 0; s--) stack[s] = parent[s] < 0 ? 0 : 1 - stack[parent[s]];
  const updatePtr = new Int32Array(count);
  const childTotal = new Float64Array(count);
  const top = [0, 0];
  const stackSize: [number, number] = [0, 0];
  for (let s = 0; s < count; s++) {
    const r = rowPtr[s + 1] - rowPtr[s];
    const own = stack[s];
    top[1 - own] -= childTotal[s];
    updatePtr[s] = top[own];
    top[own] += (r * (r + 1)) / 2;
    if (parent[s] >= 0) childTotal[parent[s]] += (r * (r + 1)) / 2;
    stackSize[own] = Math.max(stackSize[own], top[own]);
  }
  return { stack, updatePtr, stackSize };
}
