/** How variants differ from a reference: plain data for terminal, JSON and report. */

import type { Outcome } from "../variants/types.ts";

export interface NamedOutcome {
  readonly name: string;
  readonly outcome: Outcome;
}

/** A figure in the reference and in the variant, and the difference. */
export interface Change {
  readonly from: number;
  readonly to: number;
  readonly change: number;
}

/** A mode of the reference, of the variant, or of both. */
export interface ModeChange {
  /** numbers from 1; one is absent where the mode is not found in the other */
  readonly number?: number;
  readonly now?: number;
  readonly name: string;
  /** Hz */
  readonly from?: number;
  readonly to?: number;
  readonly change?: number;
  /** of `from`, 0.1 = 10 % higher */
  readonly share?: number;
  /** likeness of the shapes, 0..1 */
  readonly mac?: number;
  /** see ModePair: matched as one of a group of close modes */
  readonly together?: number;
}

/** A meeting of an order with a mode near hover that only one of the two has. */
export interface CrossingChange {
  /** its number where it is near hover, from 1 */
  readonly mode: number;
  readonly name: string;
  /** Hz, there */
  readonly frequency: number;
  readonly order: string;
  readonly multiple: number;
  /** share of hover where it is near: 0.05 = 5 % faster */
  readonly fromHover: number;
}

/** Figures that are absent: the spot is missing there, or no chain of filters reaches the residual. */
export interface SpotChange {
  readonly name: string;
  readonly plate: string;
  readonly where: "both" | "reference" | "variant";
  /** deg/s rms; decibel = 20 log10(to/from) */
  readonly gyro: { readonly from?: number; readonly to?: number; readonly decibel?: number };
  readonly accel: { readonly from?: number; readonly to?: number; readonly decibel?: number };
  /** s; unreached: the spot is there, but nothing reaches the residual */
  readonly delay: DelayChange;
  readonly delayWithNotches: DelayChange;
  /** rad */
  readonly tilt: Partial<Change>;
  readonly ruledOut: { readonly from?: string; readonly to?: string };
}

export interface DelayChange extends Partial<Change> {
  readonly unreached: "neither" | "from" | "to" | "both";
}

/** The best spot of either; absent where all are ruled out or none is named. */
export interface BestChange {
  readonly from?: BestSpot;
  readonly to?: BestSpot;
  readonly changed: boolean;
  /** gyro noise at the one against the other, dB; they may be different spots */
  readonly decibel?: number;
  readonly delay: DelayChange;
  /** what the new best is ahead of the old one by, in the variant, dB of score; absent unless both are open */
  readonly lead?: number;
}

export interface BestSpot {
  readonly name: string;
  readonly plate: string;
  /** deg/s rms */
  readonly gyro: number;
}

export interface Difference {
  readonly name: string;
  /** kg */
  readonly mass: Change;
  /** m */
  readonly cg: {
    readonly from: Outcome["cg"];
    readonly to: Outcome["cg"];
    readonly change: Outcome["cg"];
    /** "3.2 mm back and 1.1 mm up"; "" where it stays */
    readonly words: string;
  };
  /** rad/s */
  readonly hover: Change;
  /** in the order of the reference's numbers, then those that only the variant has */
  readonly modes: readonly ModeChange[];
  /** why modes could not be matched */
  readonly unmatched?: string;
  readonly crossings: {
    readonly gained: readonly CrossingChange[];
    readonly lost: readonly CrossingChange[];
  };
  readonly best: BestChange;
  /** in the order of the reference, then those that only the variant has */
  readonly spots: readonly SpotChange[];
}

export interface Comparison {
  readonly reference: string;
  readonly differences: readonly Difference[];
}
