/** What changed between a variant and the reference, in a few sentences, what matters most first. */

import { listed } from "../ranking/words.ts";
import type { CrossingChange, DelayChange, Difference, ModeChange } from "./compare-types.ts";
import { decibelsOf, delayOf, gramsOf, hertzOf, rateOf, shareOf, tiltOf } from "./figures.ts";

/** Changes below these are not worth a word. Common practice, no source. */
const LEAST = { mass: 0.002, mode: 0.005, level: 0.5, delay: 5e-5, cg: 1e-3, tilt: 0.2 };
/** Changes of this size weigh alike when the sentences are put in order. Common practice, no source. */
const MATTERS = { mass: 0.05, mode: 0.05, level: 2, delay: 3e-4, cg: 5e-3, tilt: 1 };
/** Weights of what has no size: a crossing that comes to hover, one that leaves it, a spot ruled out. */
const GAINED = 1.5;
const LOST = 0.8;
const RULED_OUT = 1.2;
/** Modes, crossings and spots that are told by name. */
const NAMED = 2;

interface Said {
  readonly weight: number;
  readonly text: string;
}

const DEGREE = Math.PI / 180;

/**
 * Sentences, the largest and most relevant change first; one that says so where nothing changed that is
 * worth a word. "The reference" is the first outcome of the comparison.
 */
export function differenceWords(d: Difference): string[] {
  const said = [
    ...massWords(d),
    ...bestWords(d),
    ...modeWords(d),
    ...crossingWords(d),
    ...ruledOutWords(d),
    ...balanceWords(d),
    ...tiltWords(d),
  ];
  if (said.length === 0) return ["Nothing changes that would be worth a word."];
  const order = said.map((s, i) => ({ ...s, i }));
  return order.sort((a, b) => b.weight - a.weight || a.i - b.i).map((s) => s.text);
}

const more = (v: number, [up, down]: readonly [string, string] = ["more", "less"]) =>
  v > 0 ? up : down;

function massWords({ mass: { from, to, change } }: Difference): Said[] {
  const share = Math.abs(change) / from;
  if (!(share >= LEAST.mass)) return [];
  const text = `It weighs ${gramsOf(Math.abs(change))} ${more(change)} (${shareOf(share)}): ${gramsOf(to)}.`;
  return [{ weight: share / MATTERS.mass, text }];
}

/** Gyro noise and filter delay at the best spot, and whether it is another one. */
function bestWords({ best }: Difference): Said[] {
  const { from, to, changed, decibel = 0, delay, lead } = best;
  if (!from && !to) return [];
  if (!to)
    return [
      {
        weight: 10,
        text: `No spot is left without a flag that rules it out; "${from?.name}" was best.`,
      },
    ];
  if (!from) {
    const text = `"${to.name}" can be used, where the reference has no spot without a flag that rules it out: ${rateOf(to.gyro)} rms.`;
    return [{ weight: 10, text }];
  }
  const loud = Math.abs(decibel) >= LEAST.level;
  const noise = loud
    ? `the gyro reads ${rateOf(to.gyro)} rms there, ${decibelsOf(Math.abs(decibel))} ${more(decibel)} than ${changed ? "at the reference's best spot" : "in the reference"}`
    : "";
  const wait = delayWords(delay);
  const weight =
    Math.abs(decibel) / MATTERS.level +
    (delay.unreached === "from" || delay.unreached === "to"
      ? 1
      : Math.abs(delay.change ?? 0) / MATTERS.delay);
  const facts = [noise, wait].filter((s) => s !== "");
  if (!changed) {
    if (facts.length === 0) return [];
    return [{ weight, text: `The best spot stays "${to.name}": ${facts.join("; ")}.` }];
  }
  const ahead =
    lead === undefined
      ? ""
      : lead >= LEAST.level
        ? `, ${decibelsOf(lead)} ahead of it by score`
        : ", though the two are as good as tied";
  const what =
    facts.length > 0 ? facts.join("; ") : "noise and filter delay are as at the reference's";
  const text = `The best spot is now "${to.name}" instead of "${from.name}"${ahead}: ${what}.`;
  return [{ weight: weight + (lead === undefined || lead >= LEAST.level ? 1 : 0.5), text }];
}

function delayWords({ to, change, unreached }: DelayChange): string {
  if (unreached === "to") return "no low-pass brings it to what is wanted any more";
  if (unreached === "from" && to !== undefined) {
    return `a low-pass of ${delayOf(to)} delay brings it to what is wanted, where none did`;
  }
  if (change === undefined || to === undefined || Math.abs(change) < LEAST.delay) return "";
  const left = to < 1e-5 ? "none is left" : `${delayOf(to)} in all`;
  return `its filters need ${delayOf(Math.abs(change))} ${more(change)} delay (${left})`;
}

/** The first mode, the one that changed most, and those without a counterpart. */
function modeWords({ modes, unmatched }: Difference): Said[] {
  if (unmatched !== undefined)
    return [{ weight: 0.1, text: `Modes are not compared: ${unmatched}.` }];
  const moved = modes.filter((m) => Math.abs(m.share ?? 0) >= LEAST.mode);
  const first = moved.find((m) => m.number === 1);
  const most = moved.reduce<ModeChange | undefined>(
    (a, b) => (a && Math.abs(a.share!) >= Math.abs(b.share!) ? a : b),
    undefined,
  );
  const said: Said[] = [];
  if (first) {
    const text = `Its first mode, ${first.name}, ${movedBy(first)}.`;
    said.push({ weight: Math.abs(first.share!) / MATTERS.mode, text });
  }
  if (most && most !== first) {
    const which = `number ${most.number}, ${most.name}`;
    const text =
      moved.length === 1
        ? `Of the modes only ${which}, changes: it ${movedBy(most)}.`
        : `The mode that changes most is ${which}: it ${movedBy(most)}.`;
    said.push({ weight: Math.abs(most.share!) / MATTERS.mode / 2, text });
  }
  const alone = (some: readonly ModeChange[], whose: string, where: string) => {
    if (some.length === 0) return;
    const names = some.map((m) => `${m.name} (${hertzOf((m.from ?? m.to)!)})`);
    const are = some.length === 1 ? "1 mode" : `${some.length} modes`;
    const text = `Without a counterpart ${where}: ${are} of ${whose}, ${listed(names, NAMED)}.`;
    said.push({ weight: 0.3, text });
  };
  alone(
    modes.filter((m) => m.now === undefined),
    "the reference",
    "here",
  );
  alone(
    modes.filter((m) => m.number === undefined),
    "this one",
    "in the reference",
  );
  return said;
}

/** "rises 9.1 %, from 87.1 to 95 Hz" */
function movedBy({ from, to, share }: ModeChange): string {
  const verb = more(share!, ["rises", "falls"]);
  const [before, after] = [hertzOf(from!), hertzOf(to!)];
  const range = before === after ? `to ${after}` : `from ${before.replace(" Hz", "")} to ${after}`;
  return `${verb} ${shareOf(Math.abs(share!))}, ${range}`;
}

function crossingWords({ crossings: { gained, lost } }: Difference): Said[] {
  const told = (c: CrossingChange) => {
    const off = Math.abs(c.fromHover);
    const where =
      off < 0.005 ? "at hover" : `${shareOf(off)} ${more(c.fromHover, ["above", "below"])} hover`;
    return `${c.order} meets ${c.name} (${hertzOf(c.frequency)}) ${where}`;
  };
  const said: Said[] = [];
  if (gained.length > 0) {
    said.push({ weight: GAINED, text: `New near hover: ${listed(gained.map(told), NAMED)}.` });
  }
  if (lost.length > 0) {
    said.push({ weight: LOST, text: `No longer near hover: ${listed(lost.map(told), NAMED)}.` });
  }
  return said;
}

function ruledOutWords({ spots }: Difference): Said[] {
  const both = spots.filter((s) => s.where === "both");
  const closed = both.filter((s) => s.ruledOut.to !== undefined && s.ruledOut.from === undefined);
  const opened = both.filter((s) => s.ruledOut.from !== undefined && s.ruledOut.to === undefined);
  const said: Said[] = [];
  if (closed.length > 0) {
    const names = listed(
      closed.map((s) => `"${s.name}" (${s.ruledOut.to})`),
      NAMED,
    );
    said.push({ weight: RULED_OUT, text: `Now ruled out: ${names}.` });
  }
  if (opened.length > 0) {
    const names = listed(
      opened.map((s) => `"${s.name}" (was ${s.ruledOut.from})`),
      NAMED,
    );
    said.push({ weight: RULED_OUT, text: `No longer ruled out: ${names}.` });
  }
  return said;
}

function balanceWords({ cg: { change, words } }: Difference): Said[] {
  const far = Math.hypot(...change);
  if (far < LEAST.cg) return [];
  return [{ weight: far / MATTERS.cg, text: `The centre of gravity moves ${words}.` }];
}

/** The false tilt at the best spot of the variant. */
function tiltWords({ best, spots }: Difference): Said[] {
  const spot = spots.find((s) => s.name === best.to?.name && s.plate === best.to?.plate);
  const { to, change = 0 } = spot?.tilt ?? {};
  if (to === undefined || Math.abs(change) < LEAST.tilt * DEGREE) return [];
  const text = `In steady yaw "${spot?.name}" reads ${tiltOf(Math.abs(change))} ${more(change)} false tilt (${tiltOf(to)}).`;
  return [{ weight: Math.abs(change) / (MATTERS.tilt * DEGREE), text }];
}
