/** How many samples a question needs. */

import { inputError } from "../errors.ts";
import type { Band } from "./bands.ts";
import type { Chance } from "./chance.ts";

/** Fewer say nothing about one frame in twenty; more than most are never worth their time. */
export const LEAST_SAMPLES = 32;
export const MOST_SAMPLES = 4096;
/** Samples are added in batches of this many. */
export const BATCH = 32;

const ROUNDING = 1e-9;

/** One standard error, of every chance (share) and of every edge of a band (dB). */
export interface SampleError {
  readonly chance: number;
  readonly level: number;
}

/**
 * One standard error: 5 percentage points on a chance, 0.5 dB on an edge of a band. A standard error
 * and not an interval of 95 %, which would take four times the samples: no winner is claimed by it, for
 * claims look at the limits of 95 % (lead.ts). Even chances then need 99 samples, a band of noise
 * that scatters by 3 dB about 160; 0.5 dB is also the least difference that is worth a word.
 */
export const WANTED_ERROR: SampleError = { chance: 0.05, level: 0.5 };

export interface SamplesSoFar {
  readonly samples: number;
  readonly chances: readonly Chance[];
  /** dB; edges that are Infinity count as not known */
  readonly levels: readonly Pick<Band, "low" | "high">[];
}

export interface Sufficiency {
  /** the errors are as small as wanted, or there are as many samples as there may be */
  readonly enough: boolean;
  /** the errors are as small as wanted */
  readonly met: boolean;
  /** estimate of the number that will do: whole batches, 32 to 4096, at least those there are */
  readonly needed: number;
  /** the largest of each kind; 0 where there are none */
  readonly errorNow: SampleError;
}

/**
 * Asked after every batch. Errors shrink as one over the root of the samples, which gives the number
 * needed; for evenly spread samples that is an upper estimate.
 *
 * @throws InputError unless there are 1 to 4096 samples and wanted errors above 0
 */
export function enough(
  { samples, chances, levels }: SamplesSoFar,
  wanted: SampleError = WANTED_ERROR,
): Sufficiency {
  checkSampleCount(samples, 1);
  checkWanted(wanted);
  const errorNow = {
    chance: Math.max(0, ...chances.map((c) => c.error)),
    level: Math.max(0, ...levels.flatMap((b) => [b.low.error, b.high.error])),
  };
  const excess = Math.max(errorNow.chance / wanted.chance, errorNow.level / wanted.level);
  const met = samples >= LEAST_SAMPLES && excess <= 1 + ROUNDING;
  const batches = Math.ceil((samples * Math.max(excess, 1) ** 2) / BATCH);
  const needed = met
    ? samples
    : Math.min(Math.max(BATCH * batches, LEAST_SAMPLES, samples), MOST_SAMPLES);
  return { enough: met || samples >= MOST_SAMPLES, met, needed, errorNow };
}

/**
 * The number of samples a user may ask for.
 *
 * @throws InputError unless it is a whole number from `least` to 4096
 */
export function checkSampleCount(samples: number, least = LEAST_SAMPLES): number {
  if (Number.isInteger(samples) && samples >= least && samples <= MOST_SAMPLES) return samples;
  throw inputError(
    "samples",
    `The number of samples must be a whole number from ${least} to ${MOST_SAMPLES}, but is ${samples}. Leave it out to take as many as the answer needs.`,
  );
}

/** "128 samples: chances known to within 4.4 percentage points, bands to 0.3 dB (one standard error)." */
export function sampleCountText(
  samples: number,
  { errorNow, met }: Sufficiency,
  what: "bands" | "differences" = "bands",
): string {
  const { chance, level } = errorNow;
  const parts = [
    ...(chance > 0 ? [`chances known to within ${digits(100 * chance)} percentage points`] : []),
    ...(level === Number.POSITIVE_INFINITY ? ["the edges of bands not known"] : []),
    ...(level > 0 && level < Number.POSITIVE_INFINITY
      ? [
          `${chance > 0 ? "" : "edges of "}${what} ${chance > 0 ? "" : "known "}to ${digits(level)} dB`,
        ]
      : []),
  ];
  const count = `${samples} sample${samples === 1 ? "" : "s"}`;
  if (parts.length === 0) return `${count}.`;
  const more = met ? "" : samples >= MOST_SAMPLES ? "; more are not taken" : "; more are needed";
  return `${count}: ${parts.join(", ")} (one standard error)${more}.`;
}

/** Two digits, rounded up so that "to within" is true. */
function digits(value: number): string {
  const step = 10 ** (Math.floor(Math.log10(value)) - 1);
  return String(Number((Math.ceil(value / step - ROUNDING) * step).toPrecision(2)));
}

function checkWanted({ chance, level }: SampleError): void {
  if (!(chance > 0)) {
    throw inputError("wanted error", `The error of a chance must be above 0, but is ${chance}.`);
  }
  if (!(level > 0)) {
    throw inputError("wanted error", `The error of a band must be above 0 dB, but is ${level} dB.`);
  }
}
