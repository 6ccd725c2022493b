/** A frame reduced: everything that its variants share. Plain data, fit to be sent between threads. */

import type { System } from "../matrices/assemble.ts";
import type { Vec3 } from "../model/types.ts";
import type { SolvedModes } from "../modes/solve.ts";
import type { ResidualMotion } from "../response/residual.ts";
import type { ReducedMatrices } from "./matrices.ts";
import type { Meshed } from "./meshed.ts";
import type { RitzPairs } from "./ritz.ts";
import type { KnownSeat } from "./seats.ts";
import type { Space } from "./space.ts";

export interface ReducedFrame {
  readonly base: Meshed;
  readonly system: System;
  /** of the base, exact; only the first `count` modes are used */
  readonly solved: SolvedModes;
  readonly space: Space;
  /** of the base's stiffness, mass and stiffness weighed by loss, packed as in projection.ts */
  readonly whole: Readonly<Record<"K" | "M" | "H", Float64Array>>;
  /** the point about which all variants' rigid motions are taken, m */
  readonly about: Vec3;
  /** modes that are wanted of each variant */
  readonly count: number;
  /** nothing that the space lacks lies below this, rad^2/s^2: the highest mode of the snapshots */
  readonly beyond: number;
  /** of the base, in the space */
  readonly baseMatrices: ReducedMatrices;
  readonly ritz: RitzPairs;
  /** per rotor: what the base's residual motions have that the space has not */
  readonly remainder: readonly ResidualMotion[];
  /** of the base, with what their flexibility has that the space has not */
  readonly seats: readonly KnownSeat[];
}
