/** How sure a comparison is: its variants over the same samples. */

import type { Outcome } from "../variants/types.ts";
import type { Comparison } from "./compare-types.ts";
import { differenceWords, type NamedShift } from "./difference-words.ts";
import { pairedNoise, pairedShift } from "./paired.ts";
import type { PairResult } from "./results.ts";
import type { ModeSamples } from "./sampled.ts";

export interface SampledVariant {
  readonly name: string;
  readonly nominal: Outcome;
  readonly samples: readonly Outcome[];
  readonly modes: ModeSamples;
}

/**
 * Every variant against the first, sample by sample.
 *
 * @param comparison of the variants as drawn, in which modes are matched
 */
export function pairsOf(
  [first, ...others]: readonly SampledVariant[],
  comparison: Comparison,
): PairResult[] {
  return others.map((other, i): PairResult => {
    const noise = pairedNoise(first.samples, other.samples);
    const shared = first.nominal.spots.filter((s) =>
      other.nominal.spots.some((o) => o.name === s.name),
    );
    const modes = comparison.differences[i].modes.flatMap(({ number, now }): NamedShift[] => {
      if (number === undefined || now === undefined) return [];
      const [a, b] = [first.modes[number - 1], other.modes[now - 1]];
      const shift = a && b && pairedShift(a, b);
      const name = first.nominal.modeNames?.[number - 1] ?? "";
      return shift ? [{ mode: `mode ${number}${name === "" ? "" : ` (${name})`}`, shift }] : [];
    });
    return {
      reference: first.name,
      name: other.name,
      noise,
      spots: shared.map(({ name }) => ({
        name,
        noise: pairedNoise(first.samples, other.samples, name),
      })),
      modes: modes.map(({ mode, shift }) => ({ name: mode, shift })),
      words: differenceWords([first.name, other.name], noise, modes),
    };
  });
}
