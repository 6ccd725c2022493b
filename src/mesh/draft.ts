/** The mesh while it is being built: growing lists that the stages of `build.ts` add to. */

import type {
  BeamElement,
  CellElement,
  MassElement,
  MeshPart,
  PadElement,
  Patch,
  SpringElement,
  Tie,
} from "./types.ts";

export interface Draft {
  readonly xyz: number[];
  readonly parts: MeshPart[];
  readonly beams: BeamElement[];
  readonly cells: CellElement[];
  readonly springs: SpringElement[];
  readonly pads: PadElement[];
  readonly masses: MassElement[];
  readonly rigidTies: RigidTie[];
  /** further ties, written out as they are */
  readonly ties: Tie[];
  readonly fixed: number[];
}

/**
 * A node held rigidly to a patch of a plate or to another node, in some of the six motions. Directions
 * are the rows of `axes` where given (global otherwise).
 */
export interface RigidTie {
  readonly node: number;
  readonly to: { readonly patch: Patch } | { readonly node: number };
  readonly motions: readonly number[];
  readonly axes?: Float64Array;
}

export function emptyDraft(): Draft {
  return {
    xyz: [],
    parts: [],
    beams: [],
    cells: [],
    springs: [],
    pads: [],
    masses: [],
    rigidTies: [],
    ties: [],
    fixed: [],
  };
}

export function addNode(draft: Draft, x: number, y: number, z: number): number {
  draft.xyz.push(x, y, z);
  return draft.xyz.length / 3 - 1;
}

export function addPart(draft: Draft, part: MeshPart): number {
  draft.parts.push(part);
  return draft.parts.length - 1;
}

export function nodeAt(draft: Draft, node: number): readonly [number, number, number] {
  return [draft.xyz[3 * node], draft.xyz[3 * node + 1], draft.xyz[3 * node + 2]];
}

export const ALL_MOTIONS = [0, 1, 2, 3, 4, 5] as const;
export const TRANSLATIONS = [0, 1, 2] as const;
