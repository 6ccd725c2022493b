/** How sure the answer for one frame is, in words made from the chances by rules. */

import type { Use } from "../ranking/use.ts";
import { type Chances, NEAR, type Rival } from "./chances.ts";
import { CLAIM, isSure, type Lead, leadOf } from "./lead.ts";
import {
  inBuiltFrames,
  inFrames,
  inPercent,
  limits,
  percentOf,
  quotedList,
} from "./share-words.ts";

/** Rivals told with their chances. */
const TOLD = 3;

/** What is compared, and by what. */
interface Nouns {
  readonly one: string;
  readonly first: string;
}

/**
 * How sure it is which spot is the best: at most three sentences. A winner is claimed only where
 * `leadOf` calls it clear; "probably" where it calls it probable; else those that share the lead are named.
 */
export function frameWords(chances: Chances, use: Use): string {
  return words(chances, { one: "place", first: use === "rate" ? "quietest" : "best" });
}

/** The same for the variants of a comparison, each at its best place, by gyro noise. */
export function variantWords(chances: Chances): string {
  return words(chances, { one: "variant", first: "quietest" });
}

function words(chances: Chances, nouns: Nouns): string {
  const lead = leadOf(chances);
  const sentences = [main(lead, nouns), matters(lead, nouns), ruledOut(lead, chances, nouns)];
  return sentences.filter((s) => s !== "").join(" ");
}

const quoted = (r: Rival) => `"${r.name}"`;
const WITHIN = `within ${NEAR} dB of`;

function main(lead: Lead, { one, first: word }: Nouns): string {
  if (lead.kind === "none") return `No ${one} can be used: each is ruled out in every frame tried.`;
  if (lead.kind === "few") return `Too few samples to say which ${one} is the ${word}.`;
  if (lead.kind === "open") return apart(lead.group, word);
  const { first } = lead;
  if (lead.kind === "only") return `${quoted(first)} is the only ${one} looked at.`;
  if (lead.kind === "clear") {
    const near =
      first.near.share > first.best.share ? `, and ${WITHIN} it ${inPercent(first.near)}` : "";
    return `${quoted(first)} is the ${word} ${one} ${inBuiltFrames(first.best)}${near}.`;
  }
  const [second] = lead.others;
  const before =
    second.best.share > 0 ? `, ${quoted(second)} in ${percentOf(second.best.share)}` : "";
  return `${quoted(first)} is probably the ${word} ${one}: it is so ${inBuiltFrames(first.best)} (${limits(first.best)})${before}.`;
}

function apart(group: readonly Rival[], word: string): string {
  const chances = group.slice(0, TOLD).map((r) => `${quoted(r)} in ${percentOf(r.best.share)}`);
  const more = group.length > TOLD ? ", the others less often" : "";
  return `${quotedList(group.map((r) => r.name))} cannot be told apart: in frames built to these spreads any of them may be the ${word} (${chances.join(", ")}${more}).`;
}

/** Whether it matters that another may be taken, or is the best. */
function matters(lead: Lead, { first: word }: Nouns): string {
  if (lead.kind === "open") return whichOf(lead.group, word);
  if (lead.kind !== "clear" && lead.kind !== "probable") return "";
  const asGood = lead.others.filter((r) => isSure(r.near));
  if (asGood.length > 0) {
    const one = asGood.length === 1;
    const [least] = extremes(asGood);
    const names = quotedList(asGood.map((r) => r.name));
    return `The lead is small, though: ${names} ${one ? "is" : "are each"} ${WITHIN} the ${word} ${one ? inPercent(least.near) : atLeast(least)}.`;
  }
  const { best, near } = lead.first;
  return lead.kind === "probable" && near.share > best.share
    ? `It is ${WITHIN} the ${word} ${inPercent(near)}.`
    : "";
}

function whichOf(group: readonly Rival[], word: string): string {
  const [least, most] = extremes(group);
  if (isSure(least.near)) {
    return `It hardly matters which is taken: each is ${WITHIN} the ${word} ${atLeast(least)}.`;
  }
  const often = inPercent(most.near);
  if (isSure(most.near))
    return `${quoted(most)} is seldom far off: ${WITHIN} the ${word} ${often}.`;
  // High, but from too few samples to say so.
  return most.near.share >= CLAIM
    ? ""
    : `Even ${quoted(most)} is ${WITHIN} the ${word} only ${often}.`;
}

const atLeast = ({ near }: Rival) =>
  near.share === 1 ? inPercent(near) : `in at least ${Math.floor(100 * near.share)} %`;

/** The ones that are least and most often near the best. */
function extremes(rivals: readonly Rival[]): [Rival, Rival] {
  const sorted = [...rivals].sort((a, b) => a.near.share - b.near.share);
  return [sorted[0], sorted[sorted.length - 1]];
}

/** How often what was named must not be used. */
function ruledOut(lead: Lead, { none }: Chances, { one }: Nouns): string {
  if (lead.kind === "none" || lead.kind === "few") return "";
  const named = lead.kind === "open" ? lead.group : [lead.first];
  const worst = named.reduce((a, b) => (b.out.share > a.out.share ? b : a));
  if (worst.out.share > none.share) return `${quoted(worst)} is ruled out ${inFrames(worst.out)}.`;
  if (none.share === 0) return "";
  const subject = lead.kind === "only" ? "It" : `Every ${one}`;
  return `${subject} is ruled out ${inFrames(none)}.`;
}
