/** What is drawn in three dimensions, while it is being put together. */

import type { Mesh } from "../mesh/types.ts";

/**
 * Vertices of two kinds. A carrier is a point fixed to a node of the mesh, with or without an offset:
 * its motion is written out for every mode. A follower lies between four carriers and moves by fixed
 * weights, so its motion need not be written.
 */
export interface DisplayDraft {
  readonly mesh: Mesh;
  /** node of each carrier, and the carrier's place x, y, z, m */
  readonly nodes: number[];
  readonly places: number[];
  /** four carriers each */
  readonly frames: (readonly [number, number, number, number])[];
  /** frame number and the weights of its second to fourth carrier; the first has the rest */
  readonly followers: (readonly [number, number, number, number])[];
  /** carriers already there, by node */
  readonly known: Map<number, number>;
}

/** A vertex: a carrier (number 0, 1, ...) or a follower (number -1, -2, ...) until all are counted. */
export type Vertex = number;

export function emptyDisplay(mesh: Mesh): DisplayDraft {
  return { mesh, nodes: [], places: [], frames: [], followers: [], known: new Map() };
}

/** The carrier at a node itself. */
export function atNode(draft: DisplayDraft, node: number): Vertex {
  const known = draft.known.get(node);
  if (known !== undefined) return known;
  const { xyz } = draft.mesh;
  const vertex = fixedTo(draft, node, xyz[3 * node], xyz[3 * node + 1], xyz[3 * node + 2]);
  draft.known.set(node, vertex);
  return vertex;
}

/** A carrier at (x, y, z), m, that moves with a node as one rigid body. */
export function fixedTo(
  draft: DisplayDraft,
  node: number,
  x: number,
  y: number,
  z: number,
): Vertex {
  draft.nodes.push(node);
  draft.places.push(x, y, z);
  return draft.nodes.length - 1;
}

/** Adds a frame of four carriers; returns its number. */
export function addFrame(
  draft: DisplayDraft,
  carriers: readonly [Vertex, Vertex, Vertex, Vertex],
): number {
  draft.frames.push(carriers);
  return draft.frames.length - 1;
}

export function follow(
  draft: DisplayDraft,
  frame: number,
  w1: number,
  w2: number,
  w3: number,
): Vertex {
  draft.followers.push([frame, w1, w2, w3]);
  return -draft.followers.length;
}

/** Final number of a vertex: the followers come after the carriers. */
export function numberOf(draft: DisplayDraft, vertex: Vertex): number {
  return vertex >= 0 ? vertex : draft.nodes.length - 1 - vertex;
}

/**
 * Motion of every carrier in a mode (size 3 per carrier), relative to the largest: u + theta x r from
 * the node's six unknowns.
 *
 * @param shape on all unknowns of the mesh, 6 per node
 */
export function carrierMotion(
  draft: Pick<DisplayDraft, "mesh" | "nodes" | "places">,
  shape: Float64Array,
): Float64Array {
  const { mesh, nodes, places } = draft;
  const out = new Float64Array(3 * nodes.length);
  let largest = 0;
  nodes.forEach((node, i) => {
    const [rx, ry, rz] = [0, 1, 2].map((k) => places[3 * i + k] - mesh.xyz[3 * node + k]);
    const [ux, uy, uz, tx, ty, tz] = shape.subarray(6 * node, 6 * node + 6);
    const u = [ux + ty * rz - tz * ry, uy + tz * rx - tx * rz, uz + tx * ry - ty * rx];
    out.set(u, 3 * i);
    largest = Math.max(largest, Math.hypot(...u));
  });
  return largest > 0 ? out.map((v) => v / largest) : out;
}
