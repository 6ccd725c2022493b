/** Motors, what shakes, and how the frame is flown, as read: SI, defaults filled in. */

import type { Side } from "./types-basic.ts";

export interface PropulsionDef {
  /** Absent: every arm carries a motor. */
  readonly arms?: readonly string[];
  readonly side: Side;
  /** Of the front left propeller, seen from above; its neighbours turn the other way. */
  readonly frontLeftTurns: "clockwise" | "anticlockwise";
  readonly motor: MotorDef;
  readonly propeller: PropellerDef;
  readonly cells: number;
  /** V */
  readonly cellVoltage: number;
  /** Full-throttle speed as a share of kv times voltage, (0, 1]. */
  readonly loadedSpeedFraction: number;
  /** rad/s, where they are given rather than estimated. */
  readonly speeds: { readonly idle?: number; readonly hover?: number; readonly full?: number };
}

/** Heights are measured from the arm's mid-plane, positive towards the motor. */
export interface MotorDef {
  readonly mass: number;
  readonly cgHeight: number;
  readonly screwMass: number;
  readonly bellMass?: number;
  readonly size?: readonly [diameter: number, height: number];
  /** rad/s per V */
  readonly kv: number;
}

export interface PropellerDef {
  readonly mass: number;
  readonly nutMass: number;
  readonly diameter: number;
  readonly pitch?: number;
  readonly blades: number;
  readonly planeHeight: number;
  /** CT in T = CT rho n^2 D^4, n in rev/s. */
  readonly thrustCoefficient: number;
}

export interface ExcitationDef {
  /** mm/s, as balance grades are written. */
  readonly balanceGrade: number;
  /** kg m per rotor; takes the place of the grade. */
  readonly unbalance?: number;
  /** Fraction of the thrust at blade pass. */
  readonly thrustRipple: number;
  /** Fraction of the propeller's torque at blade pass. */
  readonly torqueRipple: number;
  readonly orders: readonly OrderDef[];
}

export interface OrderDef {
  readonly order: number;
  readonly of: "thrust" | "side force" | "torque";
  readonly fraction: number;
}

/** Words, or speeds in rad/s with their weights. */
export type FlightMix =
  | "mostly hover"
  | "cruise"
  | "hard flying"
  | readonly { readonly speed: number; readonly weight: number }[];
