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

/** One harmonic force of every rotor. */
export interface OrderForce {
  readonly name: string;
  /** multiples of the rotor's speed */
  readonly order: number;
  /** "side force" turns with the rotor in the propeller's plane; the others act along and about its axis */
  readonly kind: "side force" | "thrust" | "torque";
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

export interface Excitation {
  readonly speeds: Speeds;
  readonly orders: readonly OrderForce[];
  readonly mixName: string;
  readonly mix: readonly MixRow[];
  /** rad/s, ascending (size s) */
  readonly grid: Float64Array;
  /** weights of the grid's speeds, summing to 1 (size s) */
  readonly weights: Float64Array;
  /** what a user should know of it */
  readonly warnings: readonly string[];
}
