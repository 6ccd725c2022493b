/** A frame reduced: everything that its variants share. Plain data, fit to be sent between threads. */

import type { System } from "../matrices/assemble.ts";
import type { SolvedModes } from "../modes/solve.ts";
import type { ResidualMotion } from "../response/residual.ts";
import type { Contribution } from "./contribution.ts";
import type { ReducedMatrices } from "./matrices.ts";
import type { Meshed } from "./meshed.ts";
import type { RitzPairs } from "./ritz.ts";
import type { Space } from "./space.ts";

export interface ReducedFrame {
  readonly base: Meshed;
  readonly system: System;
  /** of the base, exact; only the first `count` modes are used */
  readonly solved: SolvedModes;
  readonly space: Space;
  /** of the base's matrices */
  readonly whole: Contribution;
  /** modes that are wanted of each variant */
  readonly count: number;
  /** nothing that the space lacks lies below this, rad^2/s^2: the highest mode of the snapshots */
  readonly beyond: number;
  /** of the base, in the space */
  readonly baseMatrices: ReducedMatrices;
  readonly ritz: RitzPairs;
  /** per rotor: what the base's residual motions have that the space has not */
  readonly remainder: readonly ResidualMotion[];
}
