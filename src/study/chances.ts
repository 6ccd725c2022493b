/** How often each of several is the best, over samples of the spreads. */

import { inputError } from "../errors.ts";
import type { Spot } from "../variants/types.ts";
import { type Chance, chance } from "./chance.ts";

/** Within this of the best, dB, is as good for most; common practice, no source. */
export const NEAR = 1;
/** Closer than this, dB, the lead is shared: mirrored spots differ by rounding only. */
export const SHARED = 0.01;

export interface Rival {
  readonly name: string;
  /** a lead of less than 0.01 dB is shared in equal parts */
  readonly best: Chance;
  /** within 1 dB of the best, itself included */
  readonly near: Chance;
  /** has no level: ruled out */
  readonly out: Chance;
}

export interface Chances {
  readonly samples: number;
  /** by chance of being the best, then of being near it, then as given */
  readonly rivals: readonly Rival[];
  /** all of them are ruled out */
  readonly none: Chance;
}

/**
 * @param names of the rivals
 * @param levels dB by sample and rival, less is better; undefined where it must not be taken. Infinity
 *   is worse than all
 * @throws InputError without samples, with rows of another length than `names`, for NaN or -Infinity
 */
export function chancesOf(
  names: readonly string[],
  levels: readonly (readonly (number | undefined)[])[],
): Chances {
  if (levels.length === 0) {
    throw inputError("samples", "Chances need at least 1 sample, but there are 0.");
  }
  const best = new Float64Array(names.length);
  const near = new Float64Array(names.length);
  const out = new Float64Array(names.length);
  let none = 0;
  for (const row of levels) {
    checkRow(row, names);
    const least = Math.min(...row.map((v) => v ?? Number.POSITIVE_INFINITY));
    const within = (v: number | undefined, range: number) => v !== undefined && v <= least + range;
    const leaders = row.filter((v) => within(v, SHARED)).length;
    if (row.every((v) => v === undefined)) none += 1;
    for (const [j, v] of row.entries()) {
      if (v === undefined) out[j] += 1;
      if (within(v, SHARED)) best[j] += 1 / leaders;
      if (within(v, NEAR)) near[j] += 1;
    }
  }
  const of = levels.length;
  // Thirds of samples may sum to a little more than all.
  const chanceOf = (count: number) => chance(Math.min(count, of), of);
  const rivals = names.map((name, j) => ({
    name,
    best: chanceOf(best[j]),
    near: chanceOf(near[j]),
    out: chanceOf(out[j]),
  }));
  return {
    samples: of,
    rivals: rivals.sort((a, b) => b.best.share - a.best.share || b.near.share - a.near.share),
    none: chanceOf(none),
  };
}

export interface SpotSample {
  readonly spots: readonly Pick<Spot, "name" | "score" | "ruledOut">[];
}

/**
 * How often each spot of a frame is the best by score, over samples of its spreads. A spot that a sample
 * lacks counts as ruled out there.
 *
 * @throws InputError without samples, or where a score is no number
 */
export function spotChances(samples: readonly SpotSample[]): Chances {
  const names = [...new Set(samples.flatMap((s) => s.spots.map((spot) => spot.name)))];
  return chancesOf(
    names,
    samples.map(({ spots }) =>
      names.map((name) => {
        const spot = spots.find((s) => s.name === name);
        return spot?.ruledOut === undefined ? spot?.score : undefined;
      }),
    ),
  );
}

function checkRow(row: readonly (number | undefined)[], names: readonly string[]): void {
  if (row.length !== names.length) {
    throw inputError(
      "samples",
      `Each sample must have a level for each of the ${names.length} rivals, but one has ${row.length}.`,
    );
  }
  const j = row.findIndex((v) => v !== undefined && !(v > Number.NEGATIVE_INFINITY));
  if (j >= 0) {
    throw inputError(
      "samples",
      `The level of "${names[j]}" must be a number, but is ${row[j]} dB.`,
    );
  }
}
