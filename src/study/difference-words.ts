/** Whether two variants differ, in words made from the paired samples by rules. */

import { listed } from "../ranking/words.ts";
import { type Difference, differenceOf, isRealShift, LEAST_LEVEL, turned } from "./difference.ts";
import type { PairedNoise, PairedShift } from "./paired.ts";
import { figure, inBuiltFrames, inFrames } from "./share-words.ts";

/** Shifts told before the rest are counted. */
const TOLD = 2;

export interface NamedShift {
  readonly mode: string;
  readonly shift: PairedShift;
}

/**
 * At most three sentences: the noise, the modes that move, and frames in which a variant has no place.
 * A difference is called real only where `differenceOf` does.
 *
 * @param names of the first and the second variant, as after "with": "6 mm arms"
 * @param shifts of the modes that were matched, none for none looked at
 */
export function differenceWords(
  names: readonly [string, string],
  noise: PairedNoise,
  shifts: readonly NamedShift[] = [],
): string {
  const sentences = [noiseWords(names, noise), shiftWords(names, shifts), outWords(names, noise)];
  return sentences.filter((s) => s !== "").join(" ");
}

/** Of the first and the second variant. */
type Names = readonly [string, string];

/** Whether the noise differs, in one sentence. */
export function noiseWords(names: Names, noise: PairedNoise): string {
  const difference = differenceOf(noise);
  if (difference === undefined || noise.quieter === undefined) {
    return `${names[0]} and ${names[1]} cannot be compared: no frame tried has a place in both that is not ruled out.`;
  }
  const { kind, quieter, by } = difference;
  const [a, b] = quieter === 0 ? names : [names[1], names[0]];
  const chance = noise.quieter[quieter];
  const often = `quieter than with ${b} ${inBuiltFrames(chance)}`;
  switch (kind) {
    case "real":
      return `With ${a} the best place is ${often}, by ${bandText(by, "dB")}: a real difference.`;
    case "unsure":
      return `Not yet a real difference: with ${a} the best place is ${often}, by ${bandText(by, "dB")}, but these samples are too few to be sure.`;
    case "small":
      return `Not a real difference: with ${a} the best place is ${often}, but only by ${bandText(by, "dB")}, and below ${LEAST_LEVEL} dB does not matter.`;
    case "alike":
      return `Not a real difference: with ${names[0]} and with ${names[1]} the best places are within ${LEAST_LEVEL} dB of each other in nine of ten frames built to these spreads.`;
    case "open":
      return `Not a real difference: with ${b} the best place is between ${figure(-by.low.value)} dB quieter and ${figure(by.high.value)} dB louder than with ${a} in nine of ten frames built to these spreads.`;
  }
}

function shiftWords(names: Names, shifts: readonly NamedShift[]): string {
  if (shifts.length === 0) return "";
  const size = ({ shift }: NamedShift) => Math.abs(shift.relative.median.value);
  const real = shifts.filter((s) => isRealShift(s.shift)).sort((a, b) => size(b) - size(a));
  if (real.length === 0) return "No mode is sure to move by 1 % or more.";
  const told = real.slice(0, TOLD).map(({ mode, shift: { hertz } }) => {
    const down = hertz.median.value < 0;
    return `the mode ${quoted(mode)} ${down ? "falls" : "rises"} by ${bandText(down ? turned(hertz) : hertz, "Hz")}`;
  });
  const more = real.length - told.length;
  const rest = more === 0 ? [] : [`${more} other${more === 1 ? " mode moves" : " modes move"}`];
  return `From ${names[0]} to ${names[1]} ${listed([...told, ...rest])}.`;
}

/** Names of modes have names of parts in quotes. */
const quoted = (mode: string) => `"${mode.replaceAll('"', "'")}"`;

/** "1.2 dB (0.3 to 2.0)" */
function bandText({ low, median, high }: Difference["by"], unit: string): string {
  return `${figure(median.value)} ${unit} (${figure(low.value)} to ${figure(high.value)})`;
}

function outWords(names: Names, { out, decibel }: PairedNoise): string {
  const parts = out.flatMap((c, i) => (c.share > 0 ? [`with ${names[i]} ${inFrames(c)}`] : []));
  if (parts.length === 0 || decibel === undefined) return "";
  return `Every place is ruled out ${listed(parts)}.`;
}
