/** The answer in two or three sentences, written from the numbers by rules, and remarks beside it. */

import type { LeverArm } from "../attitude/lever-arm.ts";
import { SIDE_WORDS } from "../attitude/sides.ts";
import { mainCoupling } from "./control-band.ts";
import { remarksOf } from "./remarks.ts";
import type { MountRow, Overhang, RankedCandidate, Verdict } from "./types.ts";
import type { Use } from "./use.ts";
import {
  decibel,
  degrees,
  hertz,
  inPlan,
  isHard,
  listed,
  milliseconds,
  perSecond,
  quoted,
} from "./words.ts";

/** More than this, dB or s, matters; common practice, no source. */
const MATTERS_LEVEL = 2;
const MATTERS_DELAY = 3e-4;
/** Differences below these are not worth a word: dB, s. */
const LEAST_LEVEL = 0.5;
const LEAST_DELAY = 5e-5;
/** Places to avoid that are told with their reasons. */
const TOLD = 2;

export interface VerdictSettings {
  readonly use: Use;
  /** wanted behind the filters, deg/s rms */
  readonly residual: number;
  /** of the rate loop, Hz */
  readonly controlBandwidth: number;
}

/**
 * @param ranked in order, places with a hard flag last
 * @param overhangs flagged ones are named even where no candidate sits on them
 * @param mounts the first place on other mounts, screwed down first
 */
export function writeVerdict(
  ranked: readonly RankedCandidate[],
  overhangs: readonly Overhang[],
  settings: VerdictSettings,
  mounts: readonly MountRow[] = [],
): Verdict {
  const open = ranked.filter((c) => !isHard(c));
  const sentences = [
    matters(open, ranked, settings),
    tilted(open, settings),
    never(ranked, overhangs),
  ];
  return {
    headline: headline(open, ranked, settings),
    sentences: sentences.filter((s) => s !== ""),
    remarks: remarksOf(ranked, open, mounts),
  };
}

function place({ candidate, plate }: RankedCandidate): string {
  const under = candidate.side < 0 ? "under" : "on";
  return `"${candidate.name}" ${under} the plate "${plate}"`;
}

function headline(
  open: readonly RankedCandidate[],
  all: readonly RankedCandidate[],
  settings: VerdictSettings,
): string {
  const [best] = open.length > 0 ? open : all;
  const figure = `its gyro reads ${perSecond(best.sensed.gyro)} rms of vibration, ${filterWords(best, settings)}`;
  if (open.length === 0) {
    const gyro = figure.replace(/^its/, "the");
    return all.length === 1
      ? `The only place looked at is bad, by a flag that rules it out: at ${place(best)} ${gyro}.`
      : `No place is good: each has a flag that rules it out; the first of them is ${place(best)}, where ${gyro}.`;
  }
  if (all.length === 1) return `The only place looked at is ${place(best)}: ${figure}.`;
  return `Put the stack at ${place(best)}${obstacle(best)}: ${figure}.`;
}

/** What a reader must know before moving the stack there. */
function obstacle({ flags }: RankedCandidate): string {
  const cut = flags.find((f) => f.kind === "no room");
  return cut ? `, though ${cut.text.replace("the stack's", "its")}` : "";
}

/** What it takes to bring the gyro to what is wanted. */
function filterWords({ filter }: RankedCandidate, { residual, controlBandwidth }: VerdictSettings) {
  const { without, with: notched } = filter;
  const wanted = `${perSecond(residual)}`;
  const better = notched.attainable && (!without.attainable || notched.delay < without.delay);
  const short = `${milliseconds(notched.delay)} with notches`;
  const notches = `${short} that follow the motors`;
  if (without.attainable && without.delay === 0) return `and needs no filter for ${wanted}`;
  if (without.attainable) {
    return `which a low-pass of ${milliseconds(without.delay)} delay brings to ${wanted}${better ? ` (${short})` : ""}`;
  }
  const none = `which no low-pass above the control band (${hertz(controlBandwidth)}) brings to ${wanted}`;
  return better ? `${none}, only one of ${notches}` : none;
}

function matters(
  open: readonly RankedCandidate[],
  all: readonly RankedCandidate[],
  settings: VerdictSettings,
): string {
  const [best, ...rest] = open;
  if (!best || all.length === 1) return "";
  if (rest.length === 0) return "It is the only place without a flag that rules it out.";
  // Those that tie are in the remarks.
  const others = rest.filter((c) => !c.tied);
  if (others.length === 0) {
    const loudest = Math.max(...open.map((c) => c.decibel));
    const slowest = Math.max(...open.map((c) => c.delayOver.without));
    const which = open.length === 2 ? "the two places" : `the ${open.length} places left`;
    const apart = `${decibel(loudest)} of gyro noise and ${milliseconds(slowest)} of filter delay${tiltApart(open, settings)}`;
    return loudest >= MATTERS_LEVEL || slowest >= MATTERS_DELAY
      ? `The model cannot tell which of ${which} is best, for they tie if its frequencies are a little off; as computed they differ by ${apart}.`
      : `Which of ${which} is taken hardly matters: as far as the model can tell they tie, within ${apart}.`;
  }
  const other = comparedWith(others);
  return sentence(apartWords(other, best, settings, all.length > open.length));
}

/**
 * The place as drawn is what the reader thinks of; else the loudest where that matters; else the worst by
 * score shows what is at stake.
 */
function comparedWith(others: readonly RankedCandidate[]): RankedCandidate {
  const designed = others.find((c) => c.candidate.designed);
  const loudest = others.reduce((a, b) => (b.decibel > a.decibel ? b : a));
  const worst = others.reduce((a, b) => (b.score > a.score ? b : a));
  return designed ?? (loudest.decibel >= MATTERS_LEVEL ? loudest : worst);
}

/** What the place that the best is compared with reads in steady yaw, where that is too much. */
function tilted([, ...rest]: readonly RankedCandidate[], { use }: VerdictSettings): string {
  const others = rest.filter((c) => !c.tied);
  if (others.length === 0 || use === "rate") return "";
  const other = comparedWith(others);
  const words = tiltWords(other.leverArm);
  return words === "" ? "" : `${quoted(other)} ${words}.`;
}

const sentence = (text: string) => `${text[0].toUpperCase()}${text.slice(1)}.`;

/** How one place compares with the best: by noise and delay, then by false tilt. */
function apartWords(
  c: RankedCandidate,
  best: RankedCandidate,
  { use }: VerdictSettings,
  someRuledOut: boolean,
): string {
  const subject = c.candidate.designed ? `${quoted(c)}, where the file puts it,` : quoted(c);
  const level = 20 * Math.log10(c.sensed.gyro / best.sensed.gyro);
  const reached = c.filter.without.attainable && best.filter.without.attainable;
  const delay = reached ? c.filter.without.delay - best.filter.without.delay : 0;
  const noise = [
    ...(level >= LEAST_LEVEL ? [`reads ${decibel(level)} more gyro noise`] : []),
    ...(delay >= LEAST_DELAY ? [`costs ${milliseconds(delay)} more filter delay`] : []),
  ];
  const much = level >= MATTERS_LEVEL || delay >= MATTERS_DELAY;
  const weight = much
    ? someRuledOut
      ? "even of the places not ruled out it matters which"
      : "where it sits matters"
    : someRuledOut
      ? "of the places not ruled out, by gyro noise, it hardly matters which"
      : "by gyro noise it hardly matters where it sits";
  const off = use === "rate" ? "" : tiltShort(c.leverArm);
  if (noise.length === 0 && off === "") {
    return `${weight}: ${subject} is ${decibel(c.score - best.score)} worse by score`;
  }
  if (noise.length === 0) return `${weight}, but ${subject} ${off}`;
  if (off === "") return `${weight}: ${subject} ${listed(noise)}`;
  return much
    ? `${weight}: ${subject} ${listed([...noise, off])}`
    : `${weight}: ${subject} ${listed(noise)}, but it ${off}`;
}

/** The same in few words. */
function tiltShort(arm: LeverArm): string {
  if (tiltWords(arm) === "") return "";
  return `reads ${degrees(arm.reading.tilt)} of false tilt in steady yaw`;
}

/** What a place outside the rule of thumb reads in steady yaw, and what a filter makes of it. */
function tiltWords({
  distance,
  side,
  reading,
  yawRate,
  within,
  filter,
  settled,
}: LeverArm): string {
  if (within || side === "centre" || reading.lowSide === "level") return "";
  const yaw = perSecond((yawRate * 180) / Math.PI);
  const seconds = `${Number(filter.timeConstant.toPrecision(2))} s`;
  return `sits ${inPlan(distance, side)} the centre of gravity: in self-level flight ${yaw} of steady yaw reads there as ${degrees(reading.tilt)} ${SIDE_WORDS[reading.lowSide].low}, of which an attitude filter of ${seconds} comes to believe ${degrees(settled.tilt)}`;
}

/** For ties that differ in false tilt only. */
function tiltApart(open: readonly RankedCandidate[], { use }: VerdictSettings): string {
  const off = open.filter((c) => !c.leverArm.within);
  if (use === "rate" || off.length === 0 || off.length === open.length) return "";
  return `; for self-level flight ${listed(off.map(quoted))} ${off.length === 1 ? "lies" : "lie"} too far from the centre of gravity`;
}

/** Places ruled out with their reasons, then overhangs without a candidate on them. */
function never(ranked: readonly RankedCandidate[], overhangs: readonly Overhang[]): string {
  const hard = ranked.filter(isHard);
  const told = new Set(hard.flatMap((c) => c.flags.map((f) => f.text)));
  const bare = overhangs.filter((o) => o.flagged && !told.has(o.text));
  const places = hard.slice(0, TOLD).map((c) => `${quoted(c)} (${reasons(c)})`);
  const more = hard.length - places.length;
  const parts = [
    ...(hard.length > 0
      ? [
          `${ranked.length > hard.length ? "Never at" : "Ruled out:"} ${listed([...places, ...(more > 0 ? [`${more} more`] : [])])}`,
        ]
      : []),
    ...bare.map(
      (o) =>
        `${hard.length > 0 ? "nor" : "Keep the stack off the overhang:"} ${hard.length > 0 ? `on the overhang where ${o.text}` : o.text}`,
    ),
  ];
  return parts.length === 0 ? "" : `${parts.join(", ")}.`;
}

function reasons(c: RankedCandidate): string {
  const coupling = mainCoupling(c.couplings);
  const kinds = c.flags
    .filter((f) => f.hard)
    .map((f) =>
      f.kind === "in the control band" && coupling
        ? `a ${coupling.axis} mode at ${hertz(coupling.frequency)} inside the reach of the rate loop, gain ${Number(coupling.gain.toPrecision(2))}`
        : f.kind,
    );
  const louder = c.decibel >= LEAST_LEVEL ? [`${decibel(c.decibel)} more gyro noise`] : [];
  const slower =
    c.delayOver.without >= LEAST_DELAY
      ? [`${milliseconds(c.delayOver.without)} more filter delay`]
      : [];
  return [...kinds, ...louder, ...slower].join("; ");
}
