/** How sure the ranking is: always ties and ranges; with samples also chances, bands, movers and help. */

import type { HowSure } from "../../study/how-sure.ts";
import { commandText } from "../command-text.ts";
import type { Figure } from "../figure.ts";
import { type Html, html } from "../html.ts";
import { namesOfFrame } from "../known-names.ts";
import { percent, three } from "../numbers.ts";
import { section } from "../section.ts";
import type { Analysed } from "../types.ts";
import { helpFigure } from "./help.ts";
import { hoverFinding, hoverPart } from "./hover.ts";
import { rangesFigure, rangesFinding, rangesPart } from "./ranges.ts";
import { sampledFigures, sampledPart } from "./sampled.ts";
import { sureSet } from "./set.ts";
import { TIE_ORDER, tiesFinding } from "./ties.ts";

const DRAWN =
  "Frames were built on paper, with thicknesses, moduli, masses, joints and damping drawn from where 95\u00a0% of real ones lie.";

/** undefined where nothing is ranked. */
export function sureSection(analysed: Analysed, frame: string, found?: HowSure): Html | undefined {
  const sure = found && sureSet(found, namesOfFrame(analysed));
  const { ranking, excitation } = analysed;
  if (!ranking || !excitation) return undefined;
  const { frequencyBand, tieBand } = ranking;
  const words = sure?.sampled.variants[0]?.sampled?.words;
  const rule = `Modulus (±10\u00a0%) and thickness (±3\u00a0%) move the frequencies of arms by about ${percent(frequencyBand)} (common practice, no source), joints by more. Places tie when, at one of five common shifts within that, their scores come within ${three(tieBand)}\u00a0dB of the best. ${TIE_ORDER}`;
  const lead =
    words === undefined
      ? { finding: tiesFinding(ranking), how: rule }
      : { finding: words, how: DRAWN };
  return section(
    "sure",
    "How sure",
    lead,
    html`<h3>Noise at every place</h3><p>${rangesFinding(ranking)}</p>`,
    words !== undefined &&
      html`<p>With all frequencies moved together, as the ranking does it: ${tiesFinding(ranking)}</p><p class="notes">${rule}</p>`,
    rangesPart(ranking, sure),
    html`<h3>Hover</h3><p>${hoverFinding(ranking, excitation)}</p>`,
    hoverPart(ranking, excitation),
    sure ? sampledPart(sure, frame, analysed) : more(frame),
  );
}

/** Charts of the section by the id of their places. */
export function sureFigures(
  analysed: Analysed,
  found?: HowSure,
): Readonly<Record<string, Figure | undefined>> {
  const { ranking } = analysed;
  if (!ranking) return {};
  const sure = found && sureSet(found, namesOfFrame(analysed));
  return {
    "sure-ranges-chart": rangesFigure(ranking, sure),
    ...(sure && {
      ...sampledFigures(sure, analysed),
      "help-chart": helpFigure(sure.moved.suggested),
    }),
  };
}

/** Which command tells more. */
function more(frame: string): Html {
  const rows = [
    ["how often each place is the best, frame by frame, and what would help", "rank", "--sure"],
    ["the same chances on a page of their own, with every mode", "uncertainty"],
    ["which numbers of the file move the noise and each mode most", "sensitivity"],
  ] as const;
  return html`<h3>To know more</h3><ul>${rows.map(([what, command, ...options]) => html`<li>${what}: <code>${commandText(command, frame, ...options)}</code></li>`)}</ul>`;
}
