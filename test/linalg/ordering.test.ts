import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { compressGraph } from "../../src/linalg/compressed-graph.ts";
import { findSupernodes } from "../../src/linalg/elimination.ts";
import { minimumDegree } from "../../src/linalg/minimum-degree.ts";
import { analysePattern, type Symbolic } from "../../src/linalg/symbolic.ts";
import { compress, triplets } from "./arbitrary.ts";
import { plateStack } from "./beam-grid.ts";
import { chain, squareGrid } from "./chains.ts";

function sortedCopy(a: Int32Array): number[] {
  return Array.from(a).sort((x, y) => x - y);
}

const upTo = (n: number) => Array.from({ length: n }, (_, i) => i);

/** Entries of L for an elimination order, from the definition: eliminating joins the neighbours. */
function entriesByElimination(n: number, edges: readonly [number, number][], order: Int32Array) {
  const near = Array.from({ length: n }, () => new Set<number>());
  for (const [i, j] of edges) {
    near[i].add(j);
    near[j].add(i);
  }
  let entries = n;
  for (const p of order) {
    entries += near[p].size;
    for (const i of near[p]) {
      for (const j of near[p]) if (i !== j) near[i].add(j);
      near[i].delete(p);
    }
    near[p].clear();
  }
  return entries;
}

function edgesOf({ pattern }: Pick<Symbolic, "pattern">): [number, number][] {
  const edges: [number, number][] = [];
  for (let j = 0; j < pattern.n; j++) {
    for (let p = pattern.colPtr[j] + 1; p < pattern.colPtr[j + 1]; p++) {
      edges.push([pattern.rowIdx[p], j]);
    }
  }
  return edges;
}

describe("compressGraph", () => {
  test("groups the six unknowns of a node", () => {
    const { K } = plateStack({ nx: 4, ny: 3, length: 1, width: 1, thickness: 0.01 });
    const graph = compressGraph(K.pattern);
    expect(graph.size).toBe(12);
    expect(Array.from(graph.memberPtr)).toEqual(upTo(13).map((g) => 6 * g));
    // 4 x 3 grid: 17 beams, each seen from both ends.
    expect(graph.adjacent.length).toBe(34);
  });

  test("a chain has nothing to group, a full matrix is one group", () => {
    expect(compressGraph(chain(9, "fixed-free").K.pattern).size).toBe(9);
    const entries = upTo(25).map((q) => ({ i: Math.floor(q / 5), j: q % 5, value: 1 }));
    expect(compressGraph(compress({ n: 5, entries }).pattern).size).toBe(1);
  });
});

describe("minimumDegree", () => {
  test("is a permutation of the groups", () => {
    fc.assert(
      fc.property(triplets(60), (given) => {
        const graph = compressGraph(compress(given).pattern);
        expect(sortedCopy(minimumDegree(graph))).toEqual(upTo(graph.size));
      }),
    );
  });

  test("makes no fill in a tree", () => {
    fc.assert(
      fc.property(fc.array(fc.nat(), { minLength: 1, maxLength: 60 }), (parents) => {
        const entries = parents.map((p, k) => ({ i: k + 1, j: p % (k + 1), value: 1 }));
        const n = parents.length + 1;
        const { pattern } = compress({ n, entries });
        const graph = compressGraph(pattern);
        const order = Int32Array.from(
          Array.from(minimumDegree(graph)).flatMap((g) =>
            Array.from(graph.members.subarray(graph.memberPtr[g], graph.memberPtr[g + 1])),
          ),
        );
        expect(entriesByElimination(n, edgesOf({ pattern }), order)).toBe(n + parents.length);
      }),
    );
  });

  test("fills a 30 x 30 grid less than half as much as row by row", () => {
    const { pattern } = squareGrid(30).K;
    const graph = compressGraph(pattern);
    const edges = edgesOf({ pattern });
    const members = Int32Array.from(minimumDegree(graph), (g) => graph.members[graph.memberPtr[g]]);
    const byRows = entriesByElimination(900, edges, Int32Array.from(upTo(900)));
    expect(entriesByElimination(900, edges, members)).toBeLessThan(byRows / 2);
  });
});

describe("findSupernodes", () => {
  test("has the entries that elimination makes, no more and no fewer", () => {
    fc.assert(
      fc.property(triplets(40), (given) => {
        const { pattern } = compress(given);
        const graph = compressGraph(pattern);
        const order = minimumDegree(graph);
        const entries = findSupernodes(graph, order).reduce(
          (sum, { width: w, height: r }) => sum + (w * (w + 1)) / 2 + w * r,
          0,
        );
        const unknowns = Int32Array.from(
          Array.from(order).flatMap((g) =>
            Array.from(graph.members.subarray(graph.memberPtr[g], graph.memberPtr[g + 1])),
          ),
        );
        expect(entries).toBe(entriesByElimination(given.n, edgesOf({ pattern }), unknowns));
      }),
    );
  });
});

describe("analysePattern", () => {
  test("perm and place are inverse permutations; supernodes tile the columns", () => {
    fc.assert(
      fc.property(triplets(50), (given) => {
        const symbolic = analysePattern(compress(given).pattern);
        expect(sortedCopy(symbolic.perm)).toEqual(upTo(given.n));
        symbolic.perm.forEach((i, k) => {
          expect(symbolic.place[i]).toBe(k);
        });
        expect(symbolic.first[0]).toBe(0);
        expect(symbolic.first[symbolic.supernodes]).toBe(given.n);
      }),
    );
  });

  test("parents come later, rows are sorted, and each row is found in the parent's front", () => {
    fc.assert(
      fc.property(triplets(50), (given) => {
        const { supernodes, first, rowPtr, rowIdx, localIdx, parent } = analysePattern(
          compress(given).pattern,
        );
        for (let s = 0; s < supernodes; s++) {
          const rows = rowIdx.subarray(rowPtr[s], rowPtr[s + 1]);
          expect(sortedCopy(rows)).toEqual(Array.from(rows));
          const p = parent[s];
          expect(p < 0).toBe(rows.length === 0);
          if (p < 0) continue;
          expect(p).toBeGreaterThan(s);
          const front = [
            ...upTo(first[p + 1] - first[p]).map((k) => first[p] + k),
            ...rowIdx.subarray(rowPtr[p], rowPtr[p + 1]),
          ];
          const local = localIdx.subarray(rowPtr[s], rowPtr[s + 1]);
          expect(Array.from(local, (k) => front[k])).toEqual(Array.from(rows));
        }
      }),
    );
  });

  test("every entry of the pattern has a place of its own", () => {
    fc.assert(
      fc.property(triplets(50), (given) => {
        const { entryPlace } = analysePattern(compress(given).pattern);
        expect(new Set(entryPlace).size).toBe(entryPlace.length);
      }),
    );
  });

  test("is the same every time", () => {
    const { pattern } = squareGrid(12).K;
    expect(analysePattern(pattern)).toEqual(analysePattern(pattern));
  });
});
