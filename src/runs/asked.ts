/** Variants as they are asked for, and as they are when solved. */

import type { Change, FrameSource } from "../frame/change.ts";
import type { Outcome } from "../variants/types.ts";

/** A variant that is wanted. */
export interface VariantAsked {
  readonly name: string;
  /** which of the frames */
  readonly frame: number;
  readonly changes: readonly Change[];
  /** the changes as typed */
  readonly told: readonly string[];
}

/** A variant that could be built and solved. */
export interface Solved {
  readonly asked: VariantAsked;
  /** with the changes in it */
  readonly source: FrameSource;
  readonly outcome: Outcome;
}
