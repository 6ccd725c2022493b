/** The sensor stack and its places, as read: SI, defaults filled in. */

import type { Side, Vec2, Vec3 } from "./types-basic.ts";

export interface StackDef {
  readonly mass: number;
  readonly size: Vec3;
  readonly plate: string;
  readonly at: Vec2;
  readonly side: Side;
  /** Of the stack's centre of gravity from the plate's face. */
  readonly height: number;
  /** The sensor chip, from the stack's centre of gravity. */
  readonly chip: Vec3;
  readonly holes: HolePattern;
  /** Absent: screwed down. */
  readonly isolators?: IsolatorsDef;
}

/** Kinds of soft mounts that the program knows by name. */
export type IsolatorKind =
  | "silicone grommets"
  | "soft gel pads"
  | "rubber rings"
  | "over-tightened grommets";

/** One of the soft mounts at the holes; dynamic stiffness in N/m. */
export interface MountDef {
  /** Along the screw. */
  readonly axial: number;
  /** Across the screw, the same in every direction. */
  readonly lateral: number;
  readonly lossFactor: number;
}

export type IsolatorsDef = "none" | IsolatorKind | MountDef;

export interface HolePattern {
  readonly spacing: readonly [x: number, y: number];
  /** rad */
  readonly turned: number;
  /** Diameter of the screw head or grommet. */
  readonly footprint: number;
}

export interface CandidateDef {
  readonly plate: string;
  readonly at: Vec2;
  readonly side: Side;
  readonly holes?: HolePattern;
  readonly height?: number;
  /** Absent: those of the stack. */
  readonly isolators?: IsolatorsDef;
  readonly note: string;
}
