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
  /** Fraction of the thrust that turns with the blades, at 0.7 of the radius. */
  readonly bladeDifference: number;
  /** Fractions of the thrust at blade pass and at its double. */
  readonly thrustRipple: number;
  readonly thrustRippleDouble: number;
  /** Fractions of the propeller's torque at blade pass and at its double. */
  readonly torqueRipple: number;
  readonly torqueRippleDouble: number;
  readonly orders: readonly OrderDef[];
  /** Standard deviation of the motors' speeds from each other, as a share of the speed. */
  readonly motorSpread: number;
  readonly badPropeller: BadPropellerDef;
  readonly lostTip: LostTipDef;
}

export interface OrderDef {
  readonly order: number;
  readonly of: "thrust" | "side force" | "torque" | "rotating moment";
  readonly fraction: number;
}

export interface BadPropellerDef {
  /** Absent: each motor in turn. */
  readonly motor?: string;
  /** mm/s */
  readonly grade: number;
}

export interface LostTipDef {
  /** Absent: each motor in turn. */
  readonly motor?: string;
  /** Of one blade's mass. */
  readonly massShare: number;
}

/** Words, or motor speeds with their weights. */
export type FlightMix = "mostly hover" | "cruise" | "hard flying" | readonly MixPartDef[];

export interface MixPartDef {
  /** rad/s */
  readonly speed: number;
  readonly weight: number;
  /** Standard deviation as a share of the speed. */
  readonly spread: number;
  readonly name?: string;
}
