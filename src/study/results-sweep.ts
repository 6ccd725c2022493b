/** What a sweep finds, as one record for terminal, files and report. */

import type { Outcome } from "../variants/types.ts";
import type { Tracking } from "./track.ts";

export interface SweepParameter {
  /** as typed: arms.arm.thickness */
  readonly name: string;
  /** of numbers: "mm"; "" for plain ones and for words */
  readonly unit: string;
  /** as people write them: "4 mm" */
  readonly texts: readonly string[];
  /** the same as numbers of one unit; absent where they are not all numbers */
  readonly numbers?: readonly number[];
}

/** One variant: its value of each parameter, and what came of it. */
export interface SweepRow {
  /** positions among the values of the parameters */
  readonly at: readonly number[];
  readonly outcome?: Outcome;
  /** why there is no outcome */
  readonly failed?: string;
}

/** Modes followed along one parameter, the others held. */
export interface SweepLine {
  /** positions of the values of all parameters; that of the followed one means nothing */
  readonly held: readonly number[];
  /** rows along the line that have an outcome */
  readonly rows: readonly number[];
  /** the followed parameter's values there, rising */
  readonly values: readonly number[];
  readonly tracking: Tracking;
}

export interface SweepStudy {
  readonly title: string;
  readonly files: readonly { readonly path: string; readonly hash: string }[];
  readonly parameters: readonly SweepParameter[];
  /** the last parameter changing fastest */
  readonly rows: readonly SweepRow[];
  /** which parameter modes are followed along: that with the most numbers */
  readonly along: number;
  /** none where it has fewer than three */
  readonly lines: readonly SweepLine[];
  /** rows that no other beats in mass and gyro noise at once, by mass */
  readonly front: readonly number[];
  /** the quietest of all; absent where no row has a spot to use */
  readonly quietest?: number;
  /** the findings, sentence by sentence */
  readonly words: readonly string[];
}
