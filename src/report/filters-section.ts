/** What the noise of each place costs in delay, once filters have taken it away. */

import type { Burden } from "../filter/burden-types.ts";
import type { RankedCandidate, Ranking } from "../ranking/types.ts";
import { chartBox } from "./figure.ts";
import { WAYS, type Way } from "./filters-figure.ts";
import { delayWords, followedWords, isFree, lowPassWords, overWords } from "./filters-words.ts";
import { type Html, html, type Part } from "./html.ts";
import { degreesPerSecond, hertz, inDegrees, milliseconds, three } from "./numbers.ts";
import { type Labelled, labelled, placeName, quoted } from "./place-names.ts";
import { type Column, folded, section, table } from "./section.ts";
import { spectrumCurves } from "./spectra.ts";
import type { Analysed } from "./types.ts";
import { term } from "./words.ts";

/** Delays closer than this are one, s. */
const ALIKE = 5e-6;

/** undefined without a ranking. */
export function filtersSection({ ranking }: Analysed): Html | undefined {
  if (!ranking) return undefined;
  const shown = spectrumCurves({ ranking }).length;
  const finding = filtersFinding(ranking);
  const how = html`The rate loop works up to ${hertz(ranking.controlBandwidth)} and is to see no more than ${degreesPerSecond(ranking.residual)} rms of gyro noise. The louder a place, the lower its ${term("low-pass")} has to cut, and the later the loop learns what the craft does. Each bar is the least ${term("delay")} that is enough, with a low-pass alone and with ${term("notch", "notches")} that follow the motors.`;
  const all = filtersTable(ranking);
  return section(
    "filters",
    "What filtering costs",
    { finding, how },
    html`<figure>${chartBox("filters-chart", "bars", finding, shown)}
<figcaption><ul class="legend">${WAYS.map((w) => html`<li>${swatch(w)} ${w.name}</li>`)}</ul></figcaption></figure>`,
    shown < ranking.candidates.length &&
      html`<p class="notes">Bars of ${shown} of the ${ranking.candidates.length} places; the table has all.</p>`,
    folded("The chains of filters, their delays and what they leave", all),
  );
}

/** One row for each place: what either chain is, what it costs, and what it leaves. */
function filtersTable({ candidates, controlBandwidth }: Ranking): Html {
  const columns = WAYS.flatMap((way): Column<Labelled>[] => [
    {
      head: html`${way.name}<br><small>filters</small>`,
      label: `${way.name}: filters`,
      cell: ({ place }) => chainParts(place.filter[way.key]),
    },
    {
      head: html`delay<br><small>lag at ${hertz(controlBandwidth)}</small>`,
      label: `${way.name}: delay and lag`,
      number: true,
      cell: ({ place }) => delayCell(place.filter[way.key], place.delayOver[way.key]),
    },
    {
      head: html`left<br><small>deg/s rms</small>`,
      label: `${way.name}: left, deg/s rms`,
      number: true,
      cell: ({ place }) => leftCell(place.filter[way.key]),
    },
  ]);
  return table(
    `Least filtering that is enough, place by place; delays in hover, and what they do not exceed in 99 % of the flight`,
    [{ head: "place", names: true, cell: placeName }, ...columns],
    labelled(candidates),
    { className: "by-place", cards: true },
  );
}

/** "low-pass: 4th order at 164 Hz; notches: once per turn" */
function chainParts(b: Burden): string {
  if (b.lowPass === undefined && b.notches.length === 0) return "none";
  const parts = [
    ...(b.lowPass ? [`low-pass of ${lowPassWords(b)}`] : []),
    ...(b.notches.length > 0 ? [`notches ${followedWords(b)}`] : []),
  ];
  return parts.join("; ");
}

function delayCell(b: Burden, over: number): Part {
  const more = overWords(b, over);
  if (!b.attainable) return delayWords(b);
  const rest = isFree(b)
    ? []
    : [`${inDegrees(b.lag)} degrees`, `99 %: ${milliseconds(b.delayMostOfFlight)}`];
  return html`${delayWords(b)}${[more, ...rest].filter((w) => w !== "").map((w) => html` <small class="axis">${w}</small>`)}`;
}

function leftCell(b: Burden): Html {
  const from = b.mostFrom === "noise" ? "the chip’s noise" : b.mostFrom;
  return html`${three(b.residual)} <small class="axis">most: ${from}</small>`;
}

/** Where filtering is cheapest and dearest, in words. */
export function filtersFinding({ candidates }: Pick<Ranking, "candidates">): string {
  return WAYS.map((way) => wayFinding(candidates, way)).join(" ");
}

function wayFinding(candidates: readonly RankedCandidate[], { key, name }: Way): string {
  const burden = (c: RankedCandidate) => c.filter[key];
  const open = candidates.filter((c) => burden(c).attainable);
  const lost = candidates.length - open.length;
  const begun = `${name[0].toUpperCase()}${name.slice(1)}`;
  if (open.length === 0) return `${begun}, no place comes down to that.`;
  const sorted = open.toSorted((a, b) => burden(a).delay - burden(b).delay);
  const [least, most] = [sorted[0], sorted[sorted.length - 1]];
  const missing = lost > 0 ? `; at ${lost} of ${candidates.length} it is out of reach` : "";
  if (candidates.length === 1) return `${begun}: ${said(burden(least))}.`;
  if (burden(most).delay - burden(least).delay < ALIKE) {
    const where = lost > 0 ? "wherever it can be done" : "at every place";
    return `${begun}: ${said(burden(least))} ${where}${missing}.`;
  }
  return `${begun}: from ${said(burden(least))} at ${quoted(least.candidate.name)} to ${said(burden(most))} at ${quoted(most.candidate.name)}${missing}.`;
}

function said(b: Burden): string {
  return isFree(b) ? "nothing" : milliseconds(b.delay);
}

/** A bar as it stands in the chart. */
function swatch({ colour, hatched }: Way): Html {
  const strokes = [5, 13, 21, 29].map(
    (x) => html`<line x1="${x - 5}" y1="10" x2="${x + 5}" y2="0"/>`,
  );
  return html`<svg class="swatch" viewBox="0 0 34 10" aria-hidden="true"><rect width="34" height="10" style="fill: var(${colour})"/>${hatched && html`<g style="stroke: var(--surface)" stroke-width="2">${strokes}</g>`}</svg>`;
}
