/** The answer in sentences, written from the numbers by rules. */

import type { Overhang, RankedCandidate, Verdict } from "./types.ts";

/** A difference between best and worst below this hardly matters, dB. */
const HARDLY = 3;

/** Noise mostly of fast flight, and little of such flight: worth saying. */
const MOSTLY = 0.6;
const LITTLE = 0.35;

/** Names of ties given before the rest are counted. */
const NAMED = 3;

const db = (v: number) => `${v < 9.95 ? v.toFixed(1) : Math.round(v)} dB`;
const hertz = (v: number) => `${v < 99.5 ? v.toPrecision(3) : Math.round(v)} Hz`;
const rate = (v: number) => `${Number(v.toPrecision(2))} deg/s`;

/**
 * @param ranked in order, hard-flagged places last
 * @param overhangs flagged ones are named even where no candidate sits on them
 */
export function writeVerdict(
  ranked: readonly RankedCandidate[],
  overhangs: readonly Overhang[],
): Verdict {
  const best = ranked[0];
  const open = ranked.filter((c) => !isHard(c));
  const sentences = [
    ties(open),
    matters(open),
    never(ranked, overhangs),
    cause(best),
    fast(best),
    designed(ranked),
  ].filter((s) => s !== "");
  return {
    headline: headline(open, ranked),
    sentences: sentences.slice(0, 2),
    remarks: sentences.slice(2),
  };
}

const isHard = (c: RankedCandidate) => c.flags.some((f) => f.hard);
const place = (c: RankedCandidate) => `"${c.candidate.name}" on the plate "${c.plate}"`;

function headline(open: readonly RankedCandidate[], all: readonly RankedCandidate[]): string {
  if (open.length === 0) {
    return `No candidate is good: each has a flag that rules it out; the least noisy is ${place(all[0])} (${rate(all[0].gyro)} rms of gyro noise).`;
  }
  const [best, ...rest] = open;
  const figure = `${rate(best.gyro)} rms of gyro noise over the flight mix (${rate(best.gyroAtHover)} at hover)`;
  if (rest.length === 0 && all.length === 1) {
    return `The only candidate, ${place(best)}, reads ${figure}.`;
  }
  const next = rest[0];
  const margin =
    next && !next.tied
      ? `, ${db(next.decibel)} less than the next best, "${next.candidate.name}"`
      : "";
  return `Put the stack at ${place(best)}: ${figure}${margin}.`;
}

function ties([best, ...rest]: readonly RankedCandidate[]): string {
  const tied = rest.filter((c) => c.tied);
  if (!best || tied.length === 0) return "";
  const names = listed(tied.map((c) => `"${c.candidate.name}"`));
  return `It ties with ${names} within what the model can tell${preference(best, tied)}.`;
}

/** "a, b and c", cut after a few. */
function listed(names: readonly string[]): string {
  const more = names.length - NAMED;
  if (more > 1) return `${names.slice(0, NAMED).join(", ")} and ${more} others`;
  return names.length > 1
    ? `${names.slice(0, -1).join(", ")} and ${names[names.length - 1]}`
    : names[0];
}

/** Why one of several that tie comes first. */
function preference(best: RankedCandidate, tied: readonly RankedCandidate[]): string {
  const alike = tied.filter((c) => c.flags.length === best.flags.length);
  const flags = best.flags.length === 0 ? "has no flag" : "has the fewest flags";
  if (alike.length === 0) return `; it alone ${flags}`;
  return alike.length < tied.length
    ? `; it ${flags} and, of such places, the quietest accelerometer`
    : "; it has the quietest accelerometer of them";
}

function matters(open: readonly RankedCandidate[]): string {
  if (open.length < 2) return "";
  const worst = open.reduce((a, b) => (b.gyro > a.gyro ? b : a));
  if (open.every((c) => c.tied)) {
    const among = `${open.length === 2 ? "both" : "all"} within ${db(worst.decibel)}`;
    return `By noise alone no place is better than another, of those that are not to be avoided: ${among}.`;
  }
  const name = `"${worst.candidate.name}"`;
  if (worst.decibel < HARDLY) {
    return `It hardly matters: the noisiest place that is not to be avoided, ${name}, reads ${db(worst.decibel)} more than the quietest.`;
  }
  const times = `${Number((10 ** (worst.decibel / 20)).toPrecision(2))} times the quietest`;
  return `It matters where the stack sits: the noisiest place that is not to be avoided, ${name}, reads ${rate(worst.gyro)} rms, ${times} (${db(worst.decibel)} more).`;
}

function never(ranked: readonly RankedCandidate[], overhangs: readonly Overhang[]): string {
  const hard = ranked.filter(isHard);
  const places = hard.map((c) => {
    const kinds = c.flags.filter((f) => f.hard).map((f) => f.kind);
    const louder = c.decibel >= 1 ? `, ${db(c.decibel)} more than the quietest` : "";
    return `Not at "${c.candidate.name}": ${kinds.join(", ")} (${rate(c.gyro)} rms${louder}).`;
  });
  const told = new Set(hard.flatMap((c) => c.flags.map((f) => f.text)));
  const others = overhangs
    .filter((o) => o.flagged && !told.has(o.text))
    .map((o) => `Keep the stack off the overhang: ${o.text}.`);
  return [...places, ...others].join(" ");
}

function cause(best: RankedCandidate): string {
  const c = best.causes[0];
  if (!c) return "";
  const share = `${Math.round(100 * c.share)} %`;
  if (c.mode === 0) {
    return `At the best place ${share} of the noise is the whole craft shaken as one by ${c.order}, which no place avoids.`;
  }
  const rpm = `${Number(c.rpm.toPrecision(3))} rpm`;
  const where = c.met
    ? `which it meets at ${rpm}`
    : `which it would meet at ${rpm}, outside the speeds considered`;
  return `At the best place ${share} of the noise comes from ${c.order} on mode ${c.mode} (${hertz(c.frequency)}, ${c.modeName}), ${where}.`;
}

/** Where the little time at high speed makes most of the noise, the level is about that. */
function fast({ fast: { flight, power } }: RankedCandidate): string {
  if (power < MOSTLY || flight > LITTLE) return "";
  const percent = (v: number) => `${Math.round(100 * v)} %`;
  return `${percent(power)} of the noise there belongs to the ${percent(flight)} of the flight above 1.5 times hover speed.`;
}

function designed(ranked: readonly RankedCandidate[]): string {
  const drawn = ranked.find((c) => c.candidate.designed);
  if (!drawn || drawn === ranked[0]) return "";
  const name = `"${drawn.candidate.name}"`;
  if (drawn.tied) return `Where the file puts the stack, ${name}, ties with it.`;
  return `The file puts the stack at ${name}, place ${drawn.place}: ${db(drawn.decibel)} more than the quietest.`;
}
