/** What else is worth knowing beside the verdict: one sentence each. */

import { fedModes } from "./fed-modes.ts";
import type { MountRow, RankedCandidate } from "./types.ts";
import {
  decibel,
  hertz,
  isHard,
  listed,
  milliseconds,
  percent,
  perSecond,
  quoted,
  rpm,
} from "./words.ts";

/** Names of cases as they stand in a sentence. */
const CASE_WORDS: Readonly<Record<string, string>> = {
  "one bad propeller": "one bad propeller",
  "lost balance": "a propeller that has lost its balance",
};
/** Noise mostly of fast flight, and little of such flight: worth saying. */
const MOSTLY = 0.6;
const LITTLE = 0.35;
/** A found place this much better by score than the best named one is worth a word, dB. */
const BETTER = 0.5;

export function remarksOf(
  ranked: readonly RankedCandidate[],
  open: readonly RankedCandidate[],
  mounts: readonly MountRow[],
): string[] {
  const [best] = ranked;
  return [
    ties(open),
    designed(ranked),
    screwedDown(best, mounts),
    found(open),
    cause(best),
    fast(best),
    ...best.cases.map(
      (c) =>
        `With ${CASE_WORDS[c.name] ?? c.name}, ${c.anywhere ? "at worst " : ""}on the ${c.motor}, it reads ${perSecond(c.gyro)} rms instead of ${perSecond(best.sensed.gyro)}.`,
    ),
  ].filter((s) => s !== "");
}

function ties([best, ...rest]: readonly RankedCandidate[]): string {
  const tied = rest.filter((c) => c.tied);
  if (!best || tied.length === 0) return "";
  return `${quoted(best)} ties with ${listed(tied.map(quoted))}; ${preference(best, tied)}.`;
}

/** Why one of several that tie comes first: see `orderOf`. */
function preference(best: RankedCandidate, tied: readonly RankedCandidate[]): string {
  const named = tied.filter((c) => !c.found);
  if (!best.found && named.length === 0) return "it comes first because the file names it";
  const alike = (best.found ? tied : named).filter((c) => c.flags.length === best.flags.length);
  const flags = best.flags.length === 0 ? "has no flag" : "has the fewest flags";
  const among = best.found ? "" : "of those that the file names ";
  return alike.length === 0 ? `${among}it alone ${flags}` : `${among}it has the best score`;
}

function designed(ranked: readonly RankedCandidate[]): string {
  const drawn = ranked.find((c) => c.candidate.designed);
  if (!drawn) return "";
  if (drawn === ranked[0]) return "The file has the stack there.";
  if (drawn.tied) return `Where the file puts the stack, ${quoted(drawn)}, ties with it.`;
  const worse = decibel(drawn.score - ranked[0].score);
  return isHard(drawn)
    ? `The file puts the stack at ${quoted(drawn)}, which is ruled out.`
    : `The file puts the stack at ${quoted(drawn)}, place ${drawn.place}, ${worse} worse by score.`;
}

/** For a place on isolators: what screws would do. */
function screwedDown(best: RankedCandidate, [screwed]: readonly MountRow[]): string {
  const { isolators } = best.candidate;
  if (!isolators || !screwed || screwed.modes) return "";
  const { without } = screwed.filter;
  const filter = without.attainable
    ? ` and cost ${milliseconds(without.delay)} of low-pass delay`
    : "";
  const reach = screwed.flags.some((f) => f.kind === "in the control band")
    ? ""
    : ", with no mode there that the rate loop would drive";
  return `Screwed down instead of on ${isolators.name}, ${quoted(best)} would read ${perSecond(screwed.gyro)} rms${filter}${reach}.`;
}

/** What the search found, where the file names places. */
function found(open: readonly RankedCandidate[]): string {
  const named = open.filter((c) => !c.found);
  const spots = open.filter((c) => c.found);
  if (named.length === 0) return "";
  if (spots.length === 0) return "A search of the plates finds no place that is clearly better.";
  const best = named.reduce((a, b) => (b.score < a.score ? b : a));
  const spot = spots.reduce((a, b) => (b.score < a.score ? b : a));
  const gain = best.score - spot.score;
  return gain >= BETTER
    ? `A search of the plates finds ${quoted(spot)}, ${decibel(gain)} better by score than the best named place, if it can be used: only room beside the drawn parts is checked.`
    : `A search of the plates finds no place more than ${decibel(BETTER)} better by score than the best named one.`;
}

function cause(best: RankedCandidate): string {
  const [fed] = fedModes(best.causes);
  if (!fed) return "";
  const { cause: c, forces } = fed;
  const share = percent(fed.share);
  const by = listed(forces.map((f) => f.order));
  if (c.mode === 0) {
    return `There ${share} of the noise is the whole craft shaken as one by ${by}, which no place avoids.`;
  }
  const where = c.met
    ? `met at ${rpm(c.rpm)}`
    : `to be met at ${rpm(c.rpm)}, outside the speeds considered`;
  const remedy = c.remedy === "" ? "" : `; ${c.remedy}`;
  return `There ${share} of the noise comes from ${by} on a mode at ${hertz(c.frequency)} (${c.modeName}), ${where}${remedy}.`;
}

/** Where the little time at high speed makes most of the noise, the level is about that. */
function fast({ fast: { flight, power } }: RankedCandidate): string {
  if (power < MOSTLY || flight > LITTLE) return "";
  return `${percent(power)} of the noise there belongs to the ${percent(flight)} of the flight above 1.5 times hover speed.`;
}
