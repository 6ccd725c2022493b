/** What shakes the frame: speeds, orders and how much of the flight is spent where. */

/** Motor speeds in rad/s. */
export interface Speeds {
  /** lowest speed considered */
  readonly low: number;
  readonly hover: number;
  readonly full: number;
  /** N per motor */
  readonly hoverThrust: number;
  readonly fullThrust: number;
  /** k in thrust = k omega^2 of one motor, N s^2 */
  readonly thrustFactor: number;
  readonly thrustToWeight: number;
  /** how each number came about, for people */
  readonly notes: readonly string[];
  /** what cannot be as the file says */
  readonly warnings: readonly string[];
}

/**
 * "side force" (N) and "rotating moment" (N m) lie in the propeller's plane and turn with the rotor;
 * "thrust" (N) and "torque" (N m) act along and about its axis.
 */
export type OrderKind = "side force" | "rotating moment" | "thrust" | "torque";

/** One harmonic force of every rotor. */
export interface OrderForce {
  readonly name: string;
  /** multiples of the rotor's speed */
  readonly order: number;
  readonly kind: OrderKind;
  /** amplitude in N or N m at rotor speed omega (rad/s): coefficient * omega^2 */
  readonly coefficient: number;
  /** where the number comes from */
  readonly source: string;
}

/** One row of the flight mix as printed. */
export interface MixRow {
  readonly name: string;
  /** rad/s, centre and standard deviation */
  readonly speed: number;
  readonly spread: number;
  /** share of the flight, 0..1 */
  readonly share: number;
}

/** A state beside the normal one in which a single rotor is out of balance more than the others. */
export interface UnbalanceCase {
  readonly name: "one bad propeller" | "lost balance";
  /** what it is and where the number comes from, for people */
  readonly text: string;
  /** one for each motor it may happen to; the worst counts */
  readonly variants: readonly UnbalanceVariant[];
}

export interface UnbalanceVariant {
  /** index of the rotor it happens to */
  readonly rotor: number;
  /** kg m, of every rotor, in place of those of the normal state (size rotors) */
  readonly unbalance: Float64Array;
}

export interface Excitation {
  readonly speeds: Speeds;
  /** of the normal state, every rotor alike */
  readonly orders: readonly OrderForce[];
  /** states beside the normal one; all other orders stay as they are */
  readonly cases: readonly UnbalanceCase[];
  /** multiples of the rotor's speed: the number of blades */
  readonly bladePass: number;
  readonly mixName: string;
  readonly mix: readonly MixRow[];
  /** standard deviation of the motors' speeds from each other, as a share of the speed */
  readonly motorSpread: number;
  /** rad/s, ascending (size s) */
  readonly grid: Float64Array;
  /** how much each motor runs at the grid's speeds: the mix with the motors' spread, sum 1 (size s) */
  readonly weights: Float64Array;
  /** how much of the flight is meant to be flown at them: the mix alone, sum 1 (size s) */
  readonly nominalWeights: Float64Array;
  /** what a user should know of it */
  readonly warnings: readonly string[];
}
