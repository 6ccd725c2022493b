/** Changes that would help: plain data for terminal, JSON and report. */

import type { Idea } from "./ideas.ts";

export interface MovedMode {
  /** 1.., on the frame as drawn */
  readonly number: number;
  readonly name: string;
  /** Hz */
  readonly from: number;
  readonly to: number;
}

/** Figures are those of the whole solution. */
export interface Suggestion extends Pick<Idea, "kind" | "part" | "words" | "changes"> {
  /** kg, more than as drawn */
  readonly mass: number;
  /** at the spot, dB above the drawing: below zero is quieter */
  readonly gyro: number;
  readonly accel: number;
  /** both and the false tilt weighed by use, as in the ranking */
  readonly score: number;
  /** the mode that moves most, by its share; absent where none can be told again */
  readonly mode?: MovedMode;
  /** parts whose height followed */
  readonly moved: readonly string[];
  /** all of it in one sentence */
  readonly text: string;
}

export interface Suggestions {
  /** which they are about: the best as drawn; absent where all are ruled out or none is named */
  readonly spot?: string;
  /** different in kind, the most helpful first */
  readonly found: readonly Suggestion[];
  /** changes looked at */
  readonly tried: number;
  /** what to say where nothing was found */
  readonly none?: string;
}
