/** Elimination of groups of unknowns, symbolically: the tree and the structure of the factor. */

import type { CompressedGraph } from "./compressed-graph.ts";

/** A supernode: groups whose columns of L share one structure below themselves. */
export interface Supernode {
  /** Groups of its columns, in elimination order. */
  columns: number[];
  /** Unknowns in those groups. */
  width: number;
  /** Groups of the rows below (in no particular order). */
  below: Int32Array;
  /** Unknowns in those rows. */
  height: number;
  /** The supernode that owns the first row below; -1 for a root. */
  parent: number;
}

const NONE = new Int32Array(0);

/**
 * The maximal supernodes of the factor, in no particular order.
 *
 * Column j of L holds what A holds below its diagonal and what the children of j pass on:
 * struct(j) = (adj(j) and later) + struct(children) - j, and the parent of j is the earliest
 * member of struct(j) (J. W. H. Liu, "The role of elimination trees in sparse factorization",
 * SIAM J. Matrix Anal. Appl. 11 (1990), from memory). Work and memory are those of the structure.
 *
 * @param order elimination order of the groups (size graph.size)
 */
export function findSupernodes(graph: CompressedGraph, order: Int32Array): Supernode[] {
  const { size, memberPtr, adjacentPtr, adjacent } = graph;
  const rank = new Int32Array(size);
  for (let k = 0; k < size; k++) rank[order[k]] = k;
  const weight = (g: number) => memberPtr[g + 1] - memberPtr[g];

  const supernodes: Supernode[] = [];
  const childrenOf: number[][] = Array.from({ length: size }, () => []); // supernodes, by group
  const seen = new Int32Array(size).fill(-1);
  const below = new Int32Array(size);
  for (let k = 0; k < size; k++) {
    const j = order[k];
    let count = 0;
    let height = 0;
    let parent = -1;
    seen[j] = k;
    const include = (g: number) => {
      if (seen[g] === k || rank[g] < k) return;
      seen[g] = k;
      below[count++] = g;
      height += weight(g);
      if (parent < 0 || rank[g] < rank[parent]) parent = g;
    };
    for (let p = adjacentPtr[j]; p < adjacentPtr[j + 1]; p++) include(adjacent[p]);
    for (const c of childrenOf[j]) supernodes[c].below.forEach(include);

    const children = childrenOf[j];
    // j extends a child that hands over nothing but j and struct(j).
    const extended = children.find((c) => supernodes[c].height === height + weight(j));
    const s = extended ?? supernodes.length;
    if (extended === undefined) {
      supernodes.push({ columns: [], width: 0, below: NONE, height: 0, parent: -1 });
    }
    const own = supernodes[s];
    own.columns.push(j);
    own.width += weight(j);
    own.below = below.slice(0, count);
    own.height = height;
    for (const c of children) if (c !== s) supernodes[c].parent = s;
    if (parent >= 0) childrenOf[parent].push(s);
  }
  return supernodes;
}
