/** Two variants over the same samples: how they differ, frame by frame. */

import { inputError } from "../errors.ts";
import type { Outcome, Spot } from "../variants/types.ts";
import { type Band, bandOf } from "./bands.ts";
import { type Chance, chance } from "./chance.ts";
import { type Chances, chancesOf, SHARED } from "./chances.ts";

export interface NoiseSample extends Pick<Outcome, "best"> {
  readonly spots: readonly Pick<Spot, "name" | "gyro" | "ruledOut">[];
}

export interface PairedNoise {
  /** of the samples in which both have a place: the first, or the second, is quieter; equal counts half */
  readonly quieter: readonly [Chance, Chance] | undefined;
  /** second above first, dB: positive where the first is quieter; over the same samples */
  readonly decibel: Band | undefined;
  /** of all samples: all places of the first, or of the second, are ruled out */
  readonly out: readonly [Chance, Chance];
}

/**
 * Gyro noise of two variants, each at its best spot, or both at the spot named.
 *
 * @throws InputError unless there are as many samples of both, at least one, with noise above 0
 */
export function pairedNoise(
  first: readonly NoiseSample[],
  second: readonly NoiseSample[],
  spot?: string,
): PairedNoise {
  const [a, b] = [first, second].map((samples) => samples.map((s) => levelOf(s, spot)));
  const differences = paired(a, b);
  const both = differences.filter((d) => d !== undefined);
  const wins = both.reduce((sum, d) => sum + (d > SHARED ? 1 : d < -SHARED ? 0 : 0.5), 0);
  const of = both.length;
  const missing = (levels: readonly (number | undefined)[]) =>
    chance(levels.filter((v) => v === undefined).length, levels.length);
  return {
    quieter: of === 0 ? undefined : [chance(wins, of), chance(of - wins, of)],
    decibel: bandOf(differences),
    out: [missing(a), missing(b)],
  };
}

/**
 * How often each of several variants is the quietest, each at its best spot, over the same samples.
 *
 * @throws InputError unless there are as many samples of all, at least one, with noise above 0
 */
export function variantChances(
  variants: readonly { readonly name: string; readonly samples: readonly NoiseSample[] }[],
): Chances {
  const levels = variants.map((v) => v.samples.map((s) => levelOf(s)));
  for (const row of levels.slice(1)) paired(levels[0], row);
  return chancesOf(
    variants.map((v) => v.name),
    (levels[0] ?? []).map((_, i) => levels.map((row) => row[i])),
  );
}

export interface PairedShift {
  /** of the samples in which both have the mode: that of the second is higher; equal counts half */
  readonly higher: Chance;
  /** second less first, Hz */
  readonly hertz: Band;
  /** the same as a share of the first */
  readonly relative: Band;
}

/**
 * The shift of one mode that was matched between two variants.
 *
 * @param first Hz by sample; undefined where the mode was not found
 * @returns undefined where no sample has it in both
 * @throws InputError unless there are as many samples of both
 */
export function pairedShift(
  first: readonly (number | undefined)[],
  second: readonly (number | undefined)[],
): PairedShift | undefined {
  const differences = paired(first, second);
  const both = differences.filter((d) => d !== undefined);
  const hertz = bandOf(differences);
  const relative = bandOf(differences.map((d, i) => (d === undefined ? d : d / (first[i] ?? 1))));
  if (hertz === undefined || relative === undefined) return undefined;
  const up = both.reduce((sum, d) => sum + (d > 0 ? 1 : d < 0 ? 0 : 0.5), 0);
  return { higher: chance(up, both.length), hertz, relative };
}

/** Second less first, by sample; undefined where either is missing. */
function paired(
  first: readonly (number | undefined)[],
  second: readonly (number | undefined)[],
): (number | undefined)[] {
  if (first.length !== second.length) {
    throw inputError(
      "samples",
      `Variants are compared over the same samples, but there are ${first.length} of one and ${second.length} of another.`,
    );
  }
  return first.map((a, i) => {
    const b = second[i];
    return a === undefined || b === undefined ? undefined : b - a;
  });
}

/** dB above 1 deg/s; undefined where the place is ruled out or absent. */
function levelOf({ spots, best }: NoiseSample, name?: string): number | undefined {
  const named = spots.find((s) => s.name === name);
  const spot =
    name === undefined ? spots[best ?? -1] : named?.ruledOut === undefined ? named : undefined;
  if (spot === undefined) return undefined;
  if (spot.gyro > 0 && spot.gyro < Number.POSITIVE_INFINITY) return 20 * Math.log10(spot.gyro);
  throw inputError(
    "samples",
    `Gyro noise must be finite and above 0 deg/s, but at "${spot.name}" one sample has ${spot.gyro}.`,
  );
}
