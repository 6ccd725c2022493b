/** What the ranking found, in words. */

import type { RankedCandidate, Ranking } from "../ranking/types.ts";
import { isToAvoid } from "./markers.ts";
import { degreesPerSecond, signed } from "./numbers.ts";
import { quoted } from "./place-names.ts";

/** Reasons against a place as a list of kinds. */
const against = (c: RankedCandidate): string =>
  [...new Set(c.flags.filter((f) => f.hard).map((f) => f.kind))].join(", ");

const nameOf = (c: RankedCandidate): string => quoted(c.candidate.name);

/** "a", "a and b", "a, b and c" */
export function listed(words: readonly string[]): string {
  if (words.length < 2) return words.join("");
  return `${words.slice(0, -1).join(", ")} and ${words[words.length - 1]}`;
}

/** Who wins, by how much, and what rules out the others. */
export function rankingFinding({ candidates }: Pick<Ranking, "candidates">): string {
  const [first, ...rest] = candidates;
  const score = (c: RankedCandidate) => `${signed(c.score)}\u00a0dB`;
  const open = rest.filter((c) => !isToAvoid(c));
  const avoided = candidates.filter(isToAvoid);
  const ties = open.filter((c) => c.tied);
  const next = open.find((c) => !c.tied);
  const sentences = [
    isToAvoid(first)
      ? `Every place has a reason to avoid it; ${nameOf(first)} has the least score of them, ${score(first)}.`
      : `${nameOf(first)} comes first: score ${score(first)}, gyro noise ${degreesPerSecond(first.sensed.gyro)} rms.`,
  ];
  if (ties.length > 0 && first.tied) {
    const others = listed(ties.map((c) => `${nameOf(c)} (${score(c)})`));
    sentences.push(
      `It ties with ${others}: for some shift of the natural frequencies up to 7\u00a0% they come within 1\u00a0dB, too close to call.`,
    );
  }
  if (next) {
    const worse = `${(next.score - first.score).toFixed(1)}\u00a0dB`;
    sentences.push(`The next, ${nameOf(next)}, is ${worse} worse.`);
  }
  if (avoided.length > 0 && !isToAvoid(first)) {
    const list = listed(avoided.map((c) => `${nameOf(c)} (${against(c)})`));
    sentences.push(`To avoid, whatever the score: ${list}.`);
  }
  return sentences.join(" ");
}
