/** A frame made ready for the study of what moves it: its exact outcome, and variants by the reduced model. */

import type { FrameSource } from "../frame/change.ts";
import { outcomeOfSolved } from "../variants/exact.ts";
import { type Prepared, prepareVariant } from "../variants/prepare.ts";
import {
  type ReducedVariants,
  reduceVariants,
  solveBase,
  type VariantSolver,
  variantSolver,
} from "../variants/reduced.ts";
import type { Outcome } from "../variants/types.ts";

export interface StudyBase {
  readonly source: FrameSource;
  readonly prepared: Prepared;
  /** of the frame as drawn, with its modes in words */
  readonly outcome: Outcome;
  /** modes of the bare frame that are used */
  readonly count: number;
  readonly reduced: ReducedVariants;
  readonly solver: VariantSolver;
}

/**
 * The reduced model is made of the base's modes alone. Five-inch sample, every input at the ends of its
 * spread: noise within 0.03 dB of whole solutions, or recognised as unfit and solved exactly.
 *
 * @param meshSize m; the file's or the default where not given
 * @param modes of the bare frame that are used; enough for what the motors shake where not given
 * @throws InputError, SolveError
 */
export function studyBase(source: FrameSource, meshSize?: number, modes?: number): StudyBase {
  const prepared = prepareVariant(source.file, meshSize);
  const base = solveBase(prepared, modes);
  const reduced = reduceVariants(base, []);
  return {
    source,
    prepared,
    outcome: outcomeOfSolved(base.solved, { names: true }),
    count: base.solved.solved.modes.lambda.length,
    reduced,
    solver: variantSolver(reduced),
  };
}
