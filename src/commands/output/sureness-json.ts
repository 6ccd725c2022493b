/** Bands, chances and paired differences as fields of a JSON document. */

import type { Band, NoiseBand } from "../../study/bands.ts";
import type { Chance } from "../../study/chance.ts";
import type { Chances } from "../../study/chances.ts";
import { differenceOf } from "../../study/difference.ts";
import type { PairedNoise, PairedShift } from "../../study/paired.ts";
import type { Sureness } from "../../study/results.ts";

/** Where 90 % of frames lie; an edge that is beyond all numbers, or an error not known, is null. */
export function bandFields({ low, median, high, found, of, endless }: Band, unit: string): unknown {
  return {
    [`low${unit}`]: low.value,
    [`lowStandardError${unit}`]: low.error,
    [`median${unit}`]: median.value,
    [`medianStandardError${unit}`]: median.error,
    [`high${unit}`]: high.value,
    [`highStandardError${unit}`]: high.error,
    samplesThatHaveIt: found,
    samples: of,
    endlessShare: endless,
  };
}

export function noiseFields({ perSecond, decibel }: NoiseBand): unknown {
  return {
    sensedGyro: bandFields(perSecond, "DegPerSecRms"),
    againstAsDrawn: bandFields(decibel, "Db"),
  };
}

export function chanceFields({ share, error, lower, upper, of }: Chance): unknown {
  return {
    share,
    standardError: error,
    limitsOf95Percent: [lower, upper],
    samples: of,
  };
}

export function chancesFields({ samples, rivals, none }: Chances): unknown {
  return {
    samples,
    rivals: rivals.map(({ name, best, near, out }) => ({
      name,
      best: chanceFields(best),
      within1DbOfBest: chanceFields(near),
      avoid: chanceFields(out),
    })),
    noneLeft: chanceFields(none),
  };
}

/** Of the second against the first; `difference` is real, unsure, small, alike or open. */
export function pairedFields(noise: PairedNoise): Record<string, unknown> {
  const { quieter, decibel, out } = noise;
  return {
    difference: differenceOf(noise)?.kind ?? null,
    firstQuieter: quieter ? chanceFields(quieter[0]) : null,
    secondQuieter: quieter ? chanceFields(quieter[1]) : null,
    secondAboveFirst: decibel ? bandFields(decibel, "Db") : null,
    firstAvoid: chanceFields(out[0]),
    secondAvoid: chanceFields(out[1]),
  };
}

export function shiftFields({ higher, hertz, relative }: PairedShift): Record<string, unknown> {
  return {
    secondHigher: chanceFields(higher),
    shift: bandFields(hertz, "Hz"),
    relativeShift: bandFields(relative, "Share"),
  };
}

export function sureFields(sure: Sureness): Record<string, unknown> {
  const { samples, text, seed, inputs, reduced, exact, failed } = sure;
  return {
    samples,
    text,
    seed,
    inputs: inputs.map(({ name, spread, source }) => ({ name, spread, source })),
    solvedReduced: reduced,
    solvedExactly: exact,
    failed: failed.map(({ reason, count }) => ({ reason, samples: count })),
  };
}
