/** The ranking for people: what `rank` prints. */

import type { Excitation } from "../../excitation/types.ts";
import { canSit, type QuietMap, type Ranking } from "../../ranking/types.ts";
import type { Ink } from "../terminal/ink.ts";
import { count, digits, quantity, shortest } from "../terminal/numbers.ts";
import { printable } from "../terminal/printable.ts";
import { bullets, HARD_SPACE, wrap } from "../terminal/wrap.ts";
import { crossingsText } from "./crossings.ts";
import { filterCostText } from "./filter-cost.ts";
import { flagsText, overhangsText } from "./flags.ts";
import { massLine } from "./mass.ts";
import { evidenceLine, type ToldAnalysis, warningsText } from "./modes-text.ts";
import { mountsText } from "./mounts.ts";
import { otherStatesText } from "./other-states.ts";
import { placesTable } from "./places.ts";
import { selfLevelText } from "./self-level.ts";
import { shownPlaces } from "./shown-places.ts";
import { mixText, speedsText } from "./speeds.ts";
import { whyText } from "./why.ts";

const SAFETY = [
  "Take the propellers off for every bench test.",
  "This is an aid to compare places, not a measurement: check with a tap test, then with a careful first hover.",
  "Follow the rules that hold where you fly.",
];

/** @param askedPitch distance between the places of the map that the user asked for, m */
export function rankingText(
  analysis: ToldAnalysis,
  ranking: Ranking,
  excitation: Excitation,
  ink: Ink,
  askedPitch?: number,
): string {
  // a section with nothing to say is left out
  const section = (title: string, body: string): string =>
    body === "" ? "" : `\n${ink.heading(title)}\n${body}`;
  const { verdict, candidates, overhangs } = ranking;
  const shown = shownPlaces(candidates);
  const hover = excitation.speeds.hover / (2 * Math.PI);
  return [
    `${ink.heading(wrap(printable(analysis.model.name)).trimEnd())}\n\n`,
    `${ink.best(wrap(printable(verdict.headline)).trimEnd())}\n`,
    verdict.sentences.map((text) => wrap(printable(text))).join(""),
    section("Places, best first", placesTable(shown, ranking, ink)),
    section("Worth knowing", bullets(verdict.remarks.map(printable))),
    warningsText(analysis.warnings, ink),
    section("Flags", flagsText(shown.places)),
    section("Overhangs", overhangsText(overhangs, shown.places)),
    section("Why", whyText(shown.places)),
    section("Filter cost", filterCostText(shown, ranking, excitation.bladePass, ink)),
    section("Self-level", selfLevelText(shown, ranking, ink)),
    section("Other mounts", mountsText(ranking, hover, ink)),
    section(
      "Other states",
      candidates
        .slice(0, 1)
        .map((c) => otherStatesText(c, ink))
        .join(""),
    ),
    section("Resonances met near hover", crossingsText(ranking.crossings, ink)),
    section(
      "Speeds and mass",
      speedsText(excitation.speeds) + mixText(excitation) + massLine(analysis.mass),
    ),
    section("How sure this is", sureText(analysis, ranking, askedPitch)),
    section("Before you fly", bullets(SAFETY)),
  ].join("");
}

function sureText(
  { modes }: ToldAnalysis,
  ranking: Ranking,
  askedPitch: number | undefined,
): string {
  const { tieBand, frequencyBand, notes, map } = ranking;
  return [
    wrap(
      `Places marked = are ties: for some error of the natural frequencies up to ${shortest(100 * frequencyBand)}${HARD_SPACE}% their scores come within ${shortest(tieBand)}${HARD_SPACE}dB of the best.`,
    ),
    rangeLine(ranking),
    wrap(
      "How often each place is the best over all that scatters from frame to frame, input by input, is what the command uncertainty computes.",
    ),
    wrap(searchLine(map, askedPitch)),
    evidenceLine(modes.evidence, modes.rigid.length),
    bullets(notes.map(printable)),
  ].join("");
}

/** How far the level of the first place follows the natural frequencies. */
function rangeLine({ candidates, frequencyBand }: Ranking): string {
  const [first] = candidates;
  if (first === undefined) return "";
  const [low, high] = first.gyroRange;
  return wrap(
    `If all frequencies were up to ${shortest(100 * frequencyBand)}${HARD_SPACE}% off, the first place would read ${digits(low)} to ${quantity(high, "deg/s")}.`,
  );
}

function searchLine({ pitch, places }: QuietMap, asked: number | undefined): string {
  const mm = (length: number): string => `${shortest(1e3 * length)}${HARD_SPACE}mm`;
  const widened = asked !== undefined && pitch > 1.001 * asked;
  const apart = `, ${mm(pitch)} apart${widened ? ` (${mm(asked)} would have been too many)` : ""}`;
  const free = places.filter(canSit).length;
  return `Searched: ${count(free, "place")} all over the plates${free > 1 ? apart : ""}, then closer around the best.`;
}
