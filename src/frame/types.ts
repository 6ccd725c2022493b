/**
 * What reading a frame file gives: everything in SI (m, kg, s, rad, Pa, N/m, N m/rad; frequencies
 * in Hz, speeds in rad/s; figures of the sensor chips in deg/s and g), defaults filled in, references
 * checked. Axes: x forward, y left, z up.
 * The records are keyed by the names in the file, in its order, and have no prototype, so that a
 * part may be called "constructor".
 */

import type { Copies, DofName, Named, Stiffness, Vec2, Vec3 } from "./types-basic.ts";
import type { ExcitationDef, FlightMix, PropulsionDef } from "./types-flight.ts";
import type { SpreadDef } from "./types-inputs.ts";
import type { ControlDef, SensorsDef } from "./types-sensors.ts";
import type { CandidateDef, StackDef } from "./types-stack.ts";

export interface FrameFile {
  readonly version: 1;
  readonly name: string;
  readonly notes: readonly string[];
  readonly beamTheory: "euler-bernoulli" | "rayleigh" | "timoshenko";
  /** m; absent: chosen by the program. */
  readonly meshSize?: number;
  /** Loss factor of screws, wires and straps in every mode, except in soft mounts. */
  readonly assemblyLossFactor: number;
  /** On the damping of everything, soft mounts too. */
  readonly dampingFactor: number;
  readonly plies: Named<Ply>;
  readonly materials: Named<MaterialDef>;
  /** On all moduli of a material of the file or the library, by its name. */
  readonly modulusFactors: Named<number>;
  readonly plates: Named<PlateDef>;
  readonly arms: Named<ArmDef>;
  readonly standoffs: Named<StandoffDef>;
  readonly points: Named<Vec3>;
  readonly members: Named<MemberDef>;
  /** Plate to plate, screwed. */
  readonly joints: Named<JointDef>;
  /** Point to point or point to plate, rigid and massless. */
  readonly links: Named<LinkDef>;
  readonly springs: Named<SpringDef>;
  readonly supports: Named<SupportDef>;
  readonly bodies: Named<BodyDef>;
  readonly propulsion?: PropulsionDef;
  readonly excitation: ExcitationDef;
  readonly flightMix: FlightMix;
  readonly sensors: SensorsDef;
  readonly control: ControlDef;
  readonly stack?: StackDef;
  readonly candidates: Named<CandidateDef>;
  /** By path, which may have "*" for any name. */
  readonly spreads: Named<SpreadDef>;
}

/** Warp along 1; Pa, kg/m^3. */
export interface Orthotropic {
  readonly E1: number;
  readonly E2: number;
  readonly G12: number;
  readonly nu12: number;
  readonly G13: number;
  readonly G23: number;
  readonly density: number;
  readonly lossFactor: number;
}

/** One layer of cloth or tape, m thick. */
export interface Ply extends Orthotropic {
  readonly thickness: number;
}

export type MaterialDef = IsotropicDef | LaminateDef | MeasuredDef;

/** Pa, kg/m^3; G = E / (2 (1 + nu)) within 1 %. */
export interface IsotropicDef {
  readonly kind: "isotropic";
  readonly E: number;
  readonly nu: number;
  readonly G: number;
  readonly density: number;
  readonly lossFactor: number;
}

export interface LaminateDef {
  readonly kind: "laminate";
  /** Laminate notation, not looked at here. */
  readonly stack: string;
  /** Name of a ply of the file or of the library. */
  readonly ply: string;
  readonly lossFactor?: number;
}

/** Constants of a whole plate as measured. */
export interface MeasuredDef extends Orthotropic {
  readonly kind: "measured";
}

export interface PlateDef {
  readonly material: string;
  readonly thickness: number;
  /** Height of the mid-plane. */
  readonly z: number;
  /** "left and right": the left half, front to rear; "all four corners": the front-left quarter. */
  readonly outline: readonly Vec2[];
  readonly symmetry: Copies;
  readonly holes: readonly HoleDef[];
  /** Share of the outline that is material, (0, 1]. */
  readonly fill: number;
  /** Angle of the warp from x in the plan, rad. */
  readonly warp: number;
  readonly note: string;
}

export type HoleDef = { readonly copies: Copies } & (
  | { readonly kind: "round"; readonly at: readonly Vec2[]; readonly diameter: number }
  | { readonly kind: "polygon"; readonly outline: readonly Vec2[] }
);

export interface ArmDef {
  readonly material: string;
  readonly thickness: number;
  /** Height of the mid-plane. */
  readonly z: number;
  /** Where the free length begins, and the motor axis. */
  readonly root: Vec2;
  readonly tip: Vec2;
  readonly copies: Copies;
  /** Width profile, s from 0 at the root to 1 at the tip; at least two entries, s increasing. */
  readonly width: readonly { readonly s: number; readonly width: number }[];
  /** Slots along the middle; from and to as fractions of the free length. */
  readonly slots: readonly { readonly from: number; readonly to: number; readonly width: number }[];
  readonly warp: "along the arm" | number;
  /** Diameter of the disc under the motor. */
  readonly motorPad?: number;
  /** Share of that disc that is material. */
  readonly padFill: number;
  readonly elements?: number;
  readonly joint: ArmJoint;
  readonly note: string;
}

export type ArmJoint =
  | {
      readonly kind: "bolted";
      readonly plates: readonly string[];
      /** Length between the plates. */
      readonly inserted: number;
      /** Root spring k = kappa E I / L. */
      readonly kappa: number;
      readonly lossFactor: number;
    }
  | { readonly kind: "one piece"; readonly plate: string; readonly inserted?: number }
  | { readonly kind: "point"; readonly point: string };

export type SectionDef =
  | { readonly shape: "rectangle"; readonly width: number; readonly height: number }
  | { readonly shape: "tube"; readonly outer: number; readonly bore: number }
  | { readonly shape: "rod"; readonly diameter: number }
  | { readonly shape: "hexagon"; readonly acrossFlats: number; readonly bore: number }
  | {
      readonly shape: "constants";
      readonly A: number;
      readonly Iy: number;
      readonly Iz: number;
      readonly J: number;
      readonly Ip?: number;
      readonly shearAreaY?: number;
      readonly shearAreaZ?: number;
    }
  | {
      readonly shape: "stiffness";
      readonly EA: number;
      readonly EIy: number;
      readonly EIz: number;
      readonly GJ: number;
      readonly kGAy?: number;
      readonly kGAz?: number;
      readonly massPerLength: number;
      /** rho Ip, kg m. */
      readonly inertiaPerLength: number;
    };

export interface StandoffDef {
  readonly at: readonly Vec2[];
  readonly copies: Copies;
  readonly between: readonly [string, string];
  readonly section: SectionDef;
  readonly material: string;
  /** Diameter of the faces; absent: the outer size of the section. */
  readonly footprint?: number;
}

export interface MemberDef {
  readonly from: string;
  readonly to: string;
  readonly section: SectionDef;
  /** Absent exactly when the section is given by its stiffness. */
  readonly material?: string;
  readonly up?: Vec3;
  readonly elements?: number;
}

export interface JointDef {
  readonly plates: readonly [string, string];
  readonly at: readonly Vec2[];
  readonly copies: Copies;
  readonly footprint: number;
  /** A direction that is absent is rigid. */
  readonly stiffness?: Stiffness;
  readonly lossFactor: number;
}

export type LinkDef = { readonly ties: readonly DofName[] } & (
  | { readonly kind: "points"; readonly points: readonly [string, string] }
  | {
      readonly kind: "plate";
      readonly point: string;
      readonly plate: string;
      readonly footprint: number;
    }
);

export interface SpringDef {
  /** Two points, or a point and "ground". */
  readonly between: readonly [string, string];
  readonly stiffness: Stiffness;
  readonly lossFactor: number;
}

export type SupportDef =
  | { readonly kind: "point"; readonly point: string; readonly fix: readonly DofName[] }
  | {
      readonly kind: "plate";
      readonly plate: string;
      /** Exactly one of the two: a line, or the inside of a polygon. */
      readonly along?: readonly [Vec2, Vec2];
      readonly within?: readonly Vec2[];
      readonly fix: readonly DofName[];
    };

/** kg m^2 about the centre of gravity; entries of the tensor, xy = -integral of x y dm. */
export type InertiaDef = Readonly<Record<"xx" | "yy" | "zz" | "xy" | "xz" | "yz", number>>;

export interface BodyDef {
  readonly mass: number;
  /** Centre of gravity; absent for a smeared body, and where a body on a point sits at the point. */
  readonly at?: Vec3;
  readonly size?: Vec3;
  readonly inertia?: InertiaDef;
  /** Plates, arms or one point; exactly one name unless smeared. */
  readonly on: readonly string[];
  readonly hold: "rigid" | "spread" | "soft" | "smeared";
  readonly screws?: readonly Vec2[];
  readonly footprint?: readonly [x: number, y: number];
  /** Present exactly when the hold is soft; bounce and sway in Hz. */
  readonly soft?: { readonly bounce: number; readonly sway: number; readonly lossFactor: number };
  readonly copies: Copies;
  readonly note: string;
}
