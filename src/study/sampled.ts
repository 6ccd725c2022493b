/** One variant over the samples of its spreads. */

import type { Use } from "../ranking/use.ts";
import type { Outcome } from "../variants/types.ts";
import { bandOf, noiseBand } from "./bands.ts";
import { chance } from "./chance.ts";
import { spotChances } from "./chances.ts";
import { matchModes } from "./match-modes.ts";
import type { Sampled, SampledMode, SampledSpot } from "./results.ts";
import { frameWords } from "./sure-words.ts";

/** Lowest modes that are followed over the samples. */
export const FOLLOWED = 20;

/** Frequencies of the variant's modes in every sample; undefined where a mode is not found again, Hz. */
export type ModeSamples = readonly (readonly (number | undefined)[])[];

/** @returns mode after mode, sample after sample */
export function modeSamples(nominal: Outcome, samples: readonly Outcome[]): ModeSamples {
  const count = Math.min(FOLLOWED, nominal.frequencies.length);
  const matches = samples.map((s) => matchModes(nominal, s, count).pairs);
  return Array.from({ length: count }, (_, k) =>
    samples.map((s, i) => {
      const pair = matches[i].find((p) => p.a === k + 1);
      return pair && s.frequencies[pair.b - 1];
    }),
  );
}

/** @param nominal the variant as drawn */
export function sampledOf(
  nominal: Outcome,
  samples: readonly Outcome[],
  modes: ModeSamples,
  use: Use,
): Sampled {
  const chances = spotChances(samples);
  return {
    spots: nominal.spots.map((s) => sampledSpot(s.name, s.gyro, samples)),
    modes: modes.map((frequencies, k): SampledMode => {
      const band = bandOf(frequencies);
      return {
        number: k + 1,
        name: nominal.modeNames?.[k] ?? "",
        nominal: nominal.frequencies[k],
        ...(band && { band }),
      };
    }),
    chances,
    words: frameWords(chances, use),
  };
}

function sampledSpot(name: string, reference: number, samples: readonly Outcome[]): SampledSpot {
  const all = samples.map((s) => s.spots.find((spot) => spot.name === name));
  const levels = all.flatMap((s) => (s && s.ruledOut === undefined ? [s.gyro] : []));
  return {
    name,
    ...(levels.length > 0 && reference > 0 && { noise: noiseBand(levels, reference) }),
    ruledOut: chance(all.length - levels.length, all.length),
  };
}
