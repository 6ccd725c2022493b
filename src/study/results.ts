/** What the studies find, as one record each for terminal, JSON and report. */

import type { Use } from "../ranking/use.ts";
import type { Outcome } from "../variants/types.ts";
import type { Band, NoiseBand } from "./bands.ts";
import type { Chance } from "./chance.ts";
import type { Chances } from "./chances.ts";
import type { Comparison } from "./compare-types.ts";
import type { PairedNoise, PairedShift } from "./paired.ts";

/** A spot over the samples. */
export interface SampledSpot {
  readonly name: string;
  /** absent where it is on no sample that is not ruled out; decibel is against the variant as drawn */
  readonly noise?: NoiseBand;
  readonly ruledOut: Chance;
}

/** A mode over the samples. */
export interface SampledMode {
  /** of the variant as drawn, 1.. */
  readonly number: number;
  readonly name: string;
  /** Hz, as drawn */
  readonly nominal: number;
  /** Hz; absent where it was found on no sample */
  readonly band?: Band;
}

/** One variant over the samples of its spreads. */
export interface Sampled {
  readonly spots: readonly SampledSpot[];
  readonly modes: readonly SampledMode[];
  /** of its spots */
  readonly chances: Chances;
  /** how sure its best spot is */
  readonly words: string;
}

export interface VariantResult {
  readonly name: string;
  /** as typed: "arms.arm.thickness = 6 mm"; none for a file as it is */
  readonly changes: readonly string[];
  /** as drawn, solved exactly, with filter delays and names of modes */
  readonly outcome: Outcome;
  readonly sampled?: Sampled;
}

/** A variant against the reference over the same samples. */
export interface PairResult {
  readonly reference: string;
  readonly name: string;
  /** at the best spots */
  readonly noise: PairedNoise;
  readonly spots: readonly { readonly name: string; readonly noise: PairedNoise }[];
  readonly modes: readonly { readonly name: string; readonly shift: PairedShift }[];
  /** whether the difference in noise is real */
  readonly words: string;
}

/** An input whose spread was sampled. */
export interface SampledInput {
  readonly name: string;
  /** "±3 %", "5.3 to 28" */
  readonly spread: string;
  readonly source: "file" | "common practice, no source";
}

/** How sure a study is. */
export interface Sureness {
  readonly samples: number;
  /** the number of samples and what it makes known */
  readonly text: string;
  readonly seed: number;
  readonly inputs: readonly SampledInput[];
  /** samples solved by the reduced model, and the rest, exactly */
  readonly reduced: number;
  readonly exact: number;
  /** samples that could not be solved: their reasons, with how often */
  readonly failed: readonly { readonly reason: string; readonly count: number }[];
}

export interface ComparisonStudy {
  readonly title: string;
  readonly files: readonly { readonly path: string; readonly hash: string }[];
  readonly use: Use;
  /** the first is the reference; variants that cannot be built are left out and told in `failed` */
  readonly variants: readonly VariantResult[];
  readonly failed: readonly { readonly name: string; readonly reason: string }[];
  readonly comparison: Comparison;
  /** the answer, sentence by sentence */
  readonly words: readonly string[];
  readonly sure?: Sureness & {
    /** of the variants, each at its best spot */
    readonly chances: Chances;
    readonly pairs: readonly PairResult[];
  };
}
