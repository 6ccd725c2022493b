/** The structure in SI, mirrored copies written out, names resolved, geometry checked. */

import type { BeamTheory } from "../element/beam.ts";
import type { Inertia } from "../element/rigid-mass.ts";
import type { BeamSection } from "../material/section.ts";
import type { StripStiffness } from "../material/strip.ts";
import type { Polygon } from "./polygon.ts";

export type Vec3 = readonly [number, number, number];

export interface PlatePart {
  readonly name: string;
  /** height of the mid-plane, m */
  readonly z: number;
  readonly thickness: number;
  /** anticlockwise */
  readonly outline: Polygon;
  /** clockwise */
  readonly holes: readonly Polygon[];
  /** A (N/m), B (N), D (N m), 3 x 3 row-major, already scaled by the fill */
  readonly A: Float64Array;
  readonly B: Float64Array;
  readonly D: Float64Array;
  /** rho h (kg/m^2) and rho h^3/12 (kg), scaled by the fill */
  readonly massPerArea: number;
  readonly rotaryPerArea: number;
  readonly lossFactor: number;
  readonly material: string;
  readonly note: string;
}

export type ArmRoot =
  | {
      readonly kind: "bolted";
      /** plate numbers */
      readonly plates: readonly number[];
      readonly inserted: number;
      readonly kappa: number;
      readonly lossFactor: number;
    }
  | { readonly kind: "one piece"; readonly plate: number; readonly inserted: number }
  | { readonly kind: "point"; readonly point: string };

export interface ArmPart {
  readonly name: string;
  /** the name in the file, shared by mirrored copies */
  readonly group: string;
  readonly root: Vec3;
  readonly tip: Vec3;
  readonly length: number;
  readonly thickness: number;
  /** widths (m) at fractions 0..1 of the free length, rising in s */
  readonly profile: readonly { readonly s: number; readonly width: number }[];
  readonly slots: readonly { readonly from: number; readonly to: number; readonly width: number }[];
  /** moduli along the arm's axis */
  readonly strip: StripStiffness;
  readonly material: string;
  /** disc at the tip beyond the strip: mass and its centre of gravity */
  readonly pad?: { readonly mass: number; readonly cg: Vec3; readonly inertia: Inertia };
  readonly held: ArmRoot;
  /** least number of elements asked for in the file */
  readonly elements?: number;
  readonly note: string;
}

export interface StandoffPart {
  readonly name: string;
  readonly group: string;
  readonly x: number;
  readonly y: number;
  /** lower and upper plate numbers, and the heights of the faces between which it stands */
  readonly plates: readonly [number, number];
  readonly from: number;
  readonly to: number;
  readonly section: BeamSection;
  readonly footprint: number;
  readonly material: string;
}

export interface MemberPart {
  readonly name: string;
  readonly from: string;
  readonly to: string;
  readonly section: BeamSection;
  readonly up: Vec3;
  readonly elements?: number;
}

/** Six stiffnesses x y z (N/m) rx ry rz (N m/rad), global axes; Infinity = rigid. */
export type SixStiffness = readonly [number, number, number, number, number, number];

export interface JointPart {
  readonly name: string;
  readonly plates: readonly [number, number];
  readonly x: number;
  readonly y: number;
  readonly footprint: number;
  readonly stiffness?: SixStiffness;
  readonly lossFactor: number;
}

export interface LinkPart {
  readonly name: string;
  readonly point: string;
  readonly to: { readonly point: string } | { readonly plate: number; readonly footprint: number };
  /** 0..5: the motions tied */
  readonly ties: readonly number[];
}

export interface SpringPart {
  readonly name: string;
  readonly point: string;
  /** undefined: the ground */
  readonly other?: string;
  readonly stiffness: SixStiffness;
  readonly lossFactor: number;
}

export interface SupportPart {
  readonly name: string;
  readonly fix: readonly number[];
  readonly where:
    | { readonly point: string }
    | {
        readonly plate: number;
        readonly along?: readonly [readonly [number, number], readonly [number, number]];
        readonly within?: Polygon;
      };
}

/** What a body is fastened to. */
export type Host =
  | { readonly kind: "plate"; readonly plate: number }
  | { readonly kind: "arm"; readonly arm: number; readonly s: number }
  | { readonly kind: "point"; readonly point: string };

export type Hold =
  | {
      readonly kind: "rigid";
      readonly screws: readonly (readonly [number, number])[];
      readonly footprint: number;
    }
  | { readonly kind: "spread"; readonly area: Polygon }
  | {
      readonly kind: "soft";
      readonly area: Polygon;
      /** kx ky kz, N/m */
      readonly stiffness: readonly [number, number, number];
      readonly lossFactor: number;
    }
  | {
      /** a board on its screws: see mesh/seat.ts */
      readonly kind: "seat";
      readonly screws: readonly (readonly [number, number])[];
      readonly footprint: number;
      /** one at each screw, between plate and board; screwed down hard where absent */
      readonly isolators?: Isolators;
    }
  | { readonly kind: "direct" };

export interface BodyPart {
  readonly name: string;
  readonly role: "body" | "motor" | "propeller" | "stack";
  readonly mass: number;
  readonly cg: Vec3;
  readonly inertia: Inertia;
  readonly size?: Vec3;
  readonly host: Host;
  readonly hold: Hold;
  readonly note: string;
}

/** Mass spread evenly over whole plates and arms. */
export interface SmearedMass {
  readonly name: string;
  readonly mass: number;
  /** kg per kg/m^2 of area: shares by plate number (kg/m^2) and by arm number (kg/m) */
  readonly perPlate: readonly { readonly plate: number; readonly massPerArea: number }[];
  readonly perArm: readonly { readonly arm: number; readonly massPerLength: number }[];
}

/** One motor with its propeller, as a source of vibration. */
export interface Rotor {
  readonly name: string;
  readonly arm: number;
  /** centre of the propeller's plane, m */
  readonly position: Vec3;
  /** +1: turns anticlockwise seen from above */
  readonly spin: 1 | -1;
  /** bell, propeller and nut, kg */
  readonly rotatingMass: number;
}

/** Soft mounts under a stack, one at each screw hole. */
export interface Isolators {
  /** for people: the kind, or the stiffness */
  readonly name: string;
  /** of one mount along and across its screw, N/m */
  readonly axial: number;
  readonly lateral: number;
  readonly lossFactor: number;
  /** height of the plate's face on which the mounts bear, m */
  readonly z: number;
}

/** Where a stack could sit. */
export interface Candidate {
  readonly name: string;
  readonly plate: number;
  readonly x: number;
  readonly y: number;
  readonly side: 1 | -1;
  /** centres of the screw holes, m */
  readonly holes: readonly (readonly [number, number])[];
  readonly footprint: number;
  /** centre of gravity of the stack if it sat here, m */
  readonly cg: Vec3;
  /** of the chip, m */
  readonly chip: Vec3;
  /** of the stack: kg, and about its centre of gravity */
  readonly stack: { readonly mass: number; readonly inertia: Inertia };
  /** undefined: screwed down */
  readonly isolators?: Isolators;
  /** where the file puts the stack, and on the same mounts */
  readonly designed: boolean;
  readonly named: boolean;
  readonly note: string;
}

export interface Model {
  readonly name: string;
  readonly notes: readonly string[];
  readonly theory: BeamTheory;
  readonly meshSize?: number;
  /** middle of the arms' tips in the plan, m; the origin where there are no arms */
  readonly centre: readonly [number, number];
  readonly assemblyLossFactor: number;
  /** on the loss factors of all modes; those of the candidates' isolators have it already */
  readonly dampingFactor: number;
  readonly plates: readonly PlatePart[];
  readonly arms: readonly ArmPart[];
  readonly standoffs: readonly StandoffPart[];
  readonly points: ReadonlyMap<string, Vec3>;
  readonly members: readonly MemberPart[];
  readonly joints: readonly JointPart[];
  readonly links: readonly LinkPart[];
  readonly springs: readonly SpringPart[];
  readonly supports: readonly SupportPart[];
  readonly bodies: readonly BodyPart[];
  readonly smeared: readonly SmearedMass[];
  readonly rotors: readonly Rotor[];
  readonly candidates: readonly Candidate[];
  /** things worth knowing that are not errors */
  readonly warnings: readonly string[];
}
