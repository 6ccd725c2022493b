/** Sentences of the program as the page sets them: the terminal has plain quotes and spaces only. */

import type { Excitation } from "../excitation/types.ts";
import type { Flag, Ranking } from "../ranking/types.ts";
import { whole } from "./numbers.ts";
import type { Analysed } from "./types.ts";

const BEFORE_UNIT =
  /(\d) (?=(?:%|(?:rpm|Hz|mm|ms|s|g|N|dB|deg\/s|deg|degrees?|kN\/m|GPa)(?![\w/])))/g;

const SUPERSCRIPT: Readonly<Record<string, string>> = { 2: "²", 3: "³", 4: "⁴" };

/** Curly quotes and apostrophes, powers raised, thousands apart, and a number never parted from its unit. */
export function prose(text: string): string {
  return text
    .replace(/"([^"]*)"/g, "“$1”")
    .replace(/(?<=\p{L})'/gu, "’")
    .replace(/(?<![\d.,-])\d{4,}(?= (?:rpm|Hz)(?!\w))/g, (n) => whole(Number(n)))
    .replace(/\^([234])(?!\d)/g, (_, power) => SUPERSCRIPT[power])
    .replace(/\bkg\/m3\b/g, "kg/m³")
    .replace(BEFORE_UNIT, "$1\u00a0");
}

/** The analysis with all its sentences so set; names of the file stay as they are. */
export function withProse<A extends Analysed>(analysis: A): A {
  const { excitation, ranking, model, modes, warnings } = analysis;
  return {
    ...analysis,
    model: { ...model, warnings: model.warnings.map(prose) },
    modes: { ...modes, described: modes.described.map((m) => ({ ...m, name: prose(m.name) })) },
    warnings: warnings.map(prose),
    ...(excitation && { excitation: excitationProse(excitation) }),
    ...(ranking && { ranking: rankingProse(ranking) }),
  };
}

function excitationProse(excitation: Excitation): Excitation {
  const { orders, speeds } = excitation;
  return {
    ...excitation,
    orders: orders.map((o) => ({ ...o, source: prose(o.source) })),
    speeds: { ...speeds, notes: speeds.notes.map(prose) },
  };
}

function rankingProse(ranking: Ranking): Ranking {
  const { verdict } = ranking;
  return {
    ...ranking,
    candidates: ranking.candidates.map((c) => ({
      ...c,
      flags: c.flags.map(flagProse),
      causes: c.causes.map((cause) => ({
        ...cause,
        modeName: prose(cause.modeName),
        remedy: prose(cause.remedy),
      })),
      cases: c.cases.map((state) => ({ ...state, text: prose(state.text) })),
    })),
    mounts: ranking.mounts.map((m) => ({ ...m, flags: m.flags.map(flagProse) })),
    overhangs: ranking.overhangs.map((o) => ({ ...o, text: prose(o.text) })),
    crossings: ranking.crossings.map((c) => ({ ...c, modeName: prose(c.modeName) })),
    notes: ranking.notes.map(prose),
    verdict: {
      headline: prose(verdict.headline),
      sentences: verdict.sentences.map(prose),
      remarks: verdict.remarks.map(prose),
    },
  };
}

function flagProse(flag: Flag): Flag {
  const { text, brief, advice } = flag;
  return {
    ...flag,
    text: prose(text),
    ...(brief !== undefined && { brief: prose(brief) }),
    ...(advice !== undefined && { advice: prose(advice) }),
  };
}
