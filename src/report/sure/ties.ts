/** Which places tie, and why, in words. */

import type { RankedCandidate, Ranking } from "../../ranking/types.ts";
import { listed } from "../../ranking/words.ts";
import { isToAvoid } from "../markers.ts";
import { percent, three } from "../numbers.ts";
import { quoted } from "../place-names.ts";

const nameOf = (c: RankedCandidate) => quoted(c.candidate.name);

/** Why one of several that tie comes first, as `orderOf` has it. */
export const TIE_ORDER =
  "Of those that tie, places named in the file come first, then those with fewer flags, then by score.";

/** The finding of a ranking without samples. */
export function tiesFinding({ candidates, frequencyBand, tieBand }: Ranking): string {
  const [first, ...others] = candidates;
  if (!first) return "";
  if (isToAvoid(first)) return "Every place is to be avoided, so none is surely the best.";
  const band = percent(frequencyBand);
  const tied = others.filter((c) => c.tied);
  const open = others.filter((c) => !isToAvoid(c));
  if (tied.length === 0) {
    if (open.length === 0) return `${nameOf(first)} is the only place that is not to be avoided.`;
    return `${nameOf(first)} stays ahead: no other place comes within ${three(tieBand)}\u00a0dB of its score when all natural frequencies are shifted together by up to ${band} (five shifts tried).`;
  }
  const most = Math.max(...tied.map((c) => Math.abs(c.score - first.score)));
  const least = `${three(tieBand)}\u00a0dB`;
  const differ = `as drawn their scores differ by ${three(most, 2)}\u00a0dB at most`;
  const apart =
    most < 0.05
      ? `as drawn their scores are alike`
      : most < tieBand
        ? `${differ}, less than the ${least} that counts`
        : `${differ}, but frequencies ${band} off bring them within ${least}`;
  const behind = open.length - tied.length;
  const rest =
    behind > 0
      ? ` ${behind === 1 ? "The other place is" : `The other ${behind} are`} behind at every one of five common shifts of the frequencies, up to ${band}.`
      : "";
  const many = "are too close for one to be called the best";
  return `${listed([first, ...tied].map(nameOf), 4)} ${many}: ${apart}.${rest}`;
}
