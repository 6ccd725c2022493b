/** Sentences of the program as the page sets them: the terminal has plain quotes and spaces only. */

import type { Excitation } from "../excitation/types.ts";
import type { Flag, Ranking } from "../ranking/types.ts";
import { namesOfFrame } from "./known-names.ts";
import { whole } from "./numbers.ts";
import type { Analysed } from "./types.ts";

const BEFORE_UNIT =
  /(\d) (?=(?:%|(?:rpm|Hz|mm|ms|s|g|N|dB|deg\/s|deg|degrees?|kN\/m|GPa)(?![\w/])))/g;

const SUPERSCRIPT: Readonly<Record<string, string>> = { 2: "²", 3: "³", 4: "⁴" };

/** Stands for a name while the sentence around it is set: a control sign, which no name may hold. */
const NAME = "\u0001";
/** Quotes within quotes: not after a letter. */
const INNER_QUOTES = new RegExp(`(?<![\\p{L}\\p{N}${NAME}])'([^']*)'(?!\\p{L})`, "gu");
/** After a letter, or a name. */
const APOSTROPHE = new RegExp(`(?<=[\\p{L}${NAME}])'`, "gu");

/**
 * Curly quotes and apostrophes, powers raised, thousands apart, and a number never parted from its unit.
 *
 * @param names from files; where a sentence has one it stays as it is, with what would be set in it
 */
export function prose(text: string, names: readonly string[] = []): string {
  const pattern = patternOf(names);
  if (!pattern) return proseOf(text);
  const found = text.match(pattern) ?? [];
  const pieces = proseOf(text.replace(pattern, NAME)).split(NAME);
  return pieces.map((piece, i) => (i === 0 ? piece : found[i - 1] + piece)).join("");
}

function proseOf(text: string): string {
  return text
    .replace(/"([^"]*)"/g, "“$1”")
    .replace(INNER_QUOTES, "‘$1’")
    .replace(APOSTROPHE, "’")
    .replace(/(?<![\d.,-])\d{4,}(?= (?:rpm|Hz)(?!\w))/g, (n) => whole(Number(n)))
    .replace(/\^([234])(?!\d)/g, (_, power) => SUPERSCRIPT[power])
    .replace(/\bkg\/m3\b/g, "kg/m³")
    .replace(BEFORE_UNIT, "$1\u00a0");
}

/**
 * Longer names before those that begin alike; undefined where nothing in any of them would be set. A name
 * that begins with no letter ("5", "12000 rpm") counts between quotes only: elsewhere it is the sentence's own.
 */
function patternOf(names: readonly string[]): RegExp | undefined {
  const set = [...new Set(names)].filter((n) => /["'\d]/.test(n));
  if (set.length === 0) return undefined;
  const sorted = set.sort((a, b) => b.length - a.length);
  const either = (of: readonly string[]) => of.map(escaped).join("|");
  const worded = sorted.filter((n) => /^\p{L}/u.test(n));
  const bare = `(?<![\\p{L}\\p{N}])(?:${either(worded)})(?![\\p{L}\\p{N}])`;
  const quoted = `(?<=")(?:${either(sorted)})(?=")`;
  return new RegExp(worded.length > 0 ? `${quoted}|${bare}` : quoted, "gu");
}

const escaped = (name: string) => name.replace(/[\\^$.*+?()[\]{}|/]/g, "\\$&");

/** The analysis with all its sentences so set; names of the file stay as they are. */
export function withProse<A extends Analysed>(analysis: A): A {
  const { excitation, ranking, model, modes, warnings } = analysis;
  const names = namesOfFrame(analysis);
  const set = (text: string) => prose(text, names);
  return {
    ...analysis,
    model: { ...model, warnings: model.warnings.map(set) },
    modes: { ...modes, described: modes.described.map((m) => ({ ...m, name: set(m.name) })) },
    warnings: warnings.map(set),
    ...(excitation && { excitation: excitationProse(excitation, set) }),
    ...(ranking && { ranking: rankingProse(ranking, set) }),
  };
}

type Setting = (text: string) => string;

function excitationProse(excitation: Excitation, set: Setting): Excitation {
  const { orders, speeds } = excitation;
  return {
    ...excitation,
    orders: orders.map((o) => ({ ...o, source: set(o.source) })),
    speeds: { ...speeds, notes: speeds.notes.map(set) },
  };
}

function rankingProse(ranking: Ranking, set: Setting): Ranking {
  const { verdict } = ranking;
  return {
    ...ranking,
    candidates: ranking.candidates.map((c) => ({
      ...c,
      flags: c.flags.map((f) => flagProse(f, set)),
      causes: c.causes.map((cause) => ({
        ...cause,
        modeName: set(cause.modeName),
        remedy: set(cause.remedy),
      })),
      cases: c.cases.map((state) => ({ ...state, text: set(state.text) })),
    })),
    mounts: ranking.mounts.map((m) => ({ ...m, flags: m.flags.map((f) => flagProse(f, set)) })),
    overhangs: ranking.overhangs.map((o) => ({ ...o, text: set(o.text) })),
    crossings: ranking.crossings.map((c) => ({ ...c, modeName: set(c.modeName) })),
    notes: ranking.notes.map(set),
    verdict: {
      headline: set(verdict.headline),
      sentences: verdict.sentences.map(set),
      remarks: verdict.remarks.map(set),
    },
  };
}

function flagProse(flag: Flag, set: Setting): Flag {
  const { text, brief, advice } = flag;
  return {
    ...flag,
    text: set(text),
    ...(brief !== undefined && { brief: set(brief) }),
    ...(advice !== undefined && { advice: set(advice) }),
  };
}
