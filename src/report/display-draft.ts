/** What is drawn in three dimensions, while it is being put together. */

import type { Mesh } from "../mesh/types.ts";

/** A vertex: a carrier, a point fixed to one, or a point in a plate's cell, by its number among these. */
export interface Vertex {
  readonly set: 0 | 1 | 2;
  readonly index: number;
}

export interface DisplayDraft {
  readonly mesh: Mesh;
  /** node of each carrier */
  readonly nodes: number[];
  /** carrier, and the offset x, y, z from it, m */
  readonly fixed: (readonly [number, number, number, number])[];
  /** anticlockwise from least x and y */
  readonly cells: (readonly [Vertex, Vertex, Vertex, Vertex])[];
  /** cell, and how far along x and y, 0 to 1 */
  readonly inside: (readonly [number, number, number])[];
  /** carriers already there, by node */
  readonly known: Map<number, Vertex>;
}

export function emptyDisplay(mesh: Mesh): DisplayDraft {
  return { mesh, nodes: [], fixed: [], cells: [], inside: [], known: new Map() };
}

/** The carrier at a node: its motion is written out for every mode. */
export function atNode(draft: DisplayDraft, node: number): Vertex {
  const known = draft.known.get(node);
  if (known !== undefined) return known;
  draft.nodes.push(node);
  const vertex: Vertex = { set: 0, index: draft.nodes.length - 1 };
  draft.known.set(node, vertex);
  return vertex;
}

/** A point at (x, y, z), m, that moves with a node as one rigid body. */
export function fixedTo(
  draft: DisplayDraft,
  node: number,
  x: number,
  y: number,
  z: number,
): Vertex {
  const { xyz } = draft.mesh;
  const r = [x - xyz[3 * node], y - xyz[3 * node + 1], z - xyz[3 * node + 2]] as const;
  draft.fixed.push([atNode(draft, node).index, ...r]);
  return { set: 1, index: draft.fixed.length - 1 };
}

/** Adds a cell; returns its number. */
export function addCell(
  draft: DisplayDraft,
  corners: readonly [Vertex, Vertex, Vertex, Vertex],
): number {
  draft.cells.push(corners);
  return draft.cells.length - 1;
}

export function within(draft: DisplayDraft, cell: number, s: number, t: number): Vertex {
  draft.inside.push([cell, s, t]);
  return { set: 2, index: draft.inside.length - 1 };
}

/** Final number of a vertex, once all are there: carriers, then fixed points, then those in cells. */
export function numberOf(draft: DisplayDraft, { set, index }: Vertex): number {
  const before = [0, draft.nodes.length, draft.nodes.length + draft.fixed.length];
  return before[set] + index;
}

/** Place of a carrier or a fixed point at rest, m. */
export function placeOf(draft: DisplayDraft, vertex: Vertex): [number, number, number] {
  const at = (node: number, k: number) => draft.mesh.xyz[3 * node + k];
  if (vertex.set === 0) {
    const node = draft.nodes[vertex.index];
    return [at(node, 0), at(node, 1), at(node, 2)];
  }
  const [carrier, ...r] = draft.fixed[vertex.index];
  const node = draft.nodes[carrier];
  return [at(node, 0) + r[0], at(node, 1) + r[1], at(node, 2) + r[2]];
}
