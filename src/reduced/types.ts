/** A frame reduced: everything that its variants share. Plain data, fit to be sent between threads. */

import type { Seat } from "../mesh/seat.ts";
import type { SolvedModes } from "../modes/solve.ts";
import type { ResidualMotion } from "../response/residual.ts";
import type { Basis } from "./basis.ts";
import type { ReducedMatrices } from "./matrices.ts";
import type { RitzPairs } from "./ritz.ts";

export interface ReducedFrame extends Basis {
  /** of the base, exact; only the first `count` modes are used */
  readonly solved: SolvedModes;
  /** modes that are wanted of each variant */
  readonly count: number;
  /** modes that the space lacks are taken to lie above this, rad^2/s^2: the base's highest mode */
  readonly beyond: number;
  /** of the base, in the space */
  readonly baseMatrices: ReducedMatrices;
  readonly ritz: RitzPairs;
  /** per rotor: what the base's residual motions have that the space has not */
  readonly remainder: readonly ResidualMotion[];
  /** of the base, with what their flexibility has that the space has not */
  readonly seats: readonly KnownSeat[];
}

/** A seat with what the space lacks of its flexibility. */
export interface KnownSeat {
  readonly seat: Seat;
  /** 6 x 6 */
  readonly remainder: Float64Array;
}
