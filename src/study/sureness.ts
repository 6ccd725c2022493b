/** How sure a comparison is: its variants over the same samples. */

import type { Outcome } from "../variants/types.ts";
import { type NamedShift, noiseWords } from "./difference-words.ts";
import { matchModes } from "./match-modes.ts";
import { pairedNoise, pairedShift } from "./paired.ts";
import type { PairResult } from "./results.ts";
import type { ModeSamples } from "./sampled.ts";

export interface SampledVariant {
  readonly name: string;
  readonly nominal: Outcome;
  readonly samples: readonly Outcome[];
  readonly modes: ModeSamples;
}

/** With more variants than this, each is told against the first alone. */
const ALL_PAIRS = 3;

/** The pairs that are told: all of a few, else each with the first. */
export function comparedPairs<V>(variants: readonly V[]): (readonly [first: V, second: V])[] {
  return variants.flatMap((second, j) =>
    variants
      .slice(0, variants.length > ALL_PAIRS ? Math.min(1, j) : j)
      .map((first) => [first, second] as const),
  );
}

/** Variants against each other, sample by sample. */
export function pairsOf(variants: readonly SampledVariant[]): PairResult[] {
  return comparedPairs(variants).map(([first, second]) => pairOf(first, second));
}

function pairOf(first: SampledVariant, second: SampledVariant): PairResult {
  const noise = pairedNoise(first.samples, second.samples);
  const shared = first.nominal.spots.filter((s) =>
    second.nominal.spots.some((o) => o.name === s.name),
  );
  const { pairs } = matchModes(first.nominal, second.nominal, first.modes.length);
  const modes = pairs.flatMap(({ a, b }): NamedShift[] => {
    const [before, after] = [first.modes[a - 1], second.modes[b - 1]];
    const shift = before && after && pairedShift(before, after);
    return shift ? [{ mode: first.nominal.modeNames?.[a - 1] ?? `mode ${a}`, shift }] : [];
  });
  return {
    reference: first.name,
    name: second.name,
    noise,
    spots: shared.map(({ name }) => ({
      name,
      noise: pairedNoise(first.samples, second.samples, name),
    })),
    modes: modes.map(({ mode, shift }) => ({ name: mode, shift })),
    words: noiseWords([first.name, second.name], noise),
  };
}
