/** What the noise of each place costs in delay, once filters have taken it away. */

import type { Burden } from "../filter/burden-types.ts";
import type { RankedCandidate, Ranking } from "../ranking/types.ts";
import { chartBox } from "./figure.ts";
import { WAYS, type Way } from "./filters-figure.ts";
import { delayWords, followedWords, isFree, lowPassWords, overWords } from "./filters-words.ts";
import { type Html, html } from "./html.ts";
import { degreesPerSecond, hertz, inDegrees, milliseconds, three } from "./numbers.ts";
import { type Labelled, labelled, placeName, quoted } from "./place-names.ts";
import { section, table } from "./section.ts";
import { spectrumCurves } from "./spectra.ts";
import type { Analysed } from "./types.ts";

/** Delays closer than this are one, s. */
const ALIKE = 5e-6;

/** undefined without a ranking. */
export function filtersSection({ ranking }: Analysed): Html | undefined {
  if (!ranking) return undefined;
  const shown = spectrumCurves({ ranking }).length;
  const finding = filtersFinding(ranking);
  const lead = html`The rate loop works up to ${hertz(ranking.controlBandwidth)} and is to see no more than ${degreesPerSecond(ranking.residual)} rms of gyro noise. The louder a place, the lower its low-pass has to cut, and the later the loop learns what the craft does. For each place the chain of filters with the least delay that is enough: a low-pass alone, or with notches that follow the motors. ${finding}`;
  return section(
    "filters",
    "What filtering costs",
    lead,
    html`<figure>${chartBox("filters-chart", "bars", finding, shown)}
<figcaption><ul class="legend">${WAYS.map((w) => html`<li>${swatch(w)} ${w.name}</li>`)}</ul></figcaption></figure>`,
    shown < ranking.candidates.length &&
      html`<p class="notes">Bars of ${shown} of the ${ranking.candidates.length} places; the table has all.</p>`,
    filtersTable(ranking),
  );
}

interface Row extends Labelled {
  readonly way: Way;
  readonly burden: Burden;
  readonly over: number;
}

function filtersTable({ candidates, controlBandwidth }: Ranking): Html {
  const rows = labelled(candidates).flatMap((l) =>
    WAYS.map((way): Row => {
      const { filter, delayOver } = l.place;
      return { ...l, way, burden: filter[way.key], over: delayOver[way.key] };
    }),
  );
  return table(
    "Least filtering that is enough, place by place",
    [
      { head: "place", names: true, cell: placeName },
      { head: "filters", cell: (r) => r.way.name },
      { head: "low-pass", cell: (r) => lowPassWords(r.burden) },
      { head: "orders followed", cell: (r) => followedWords(r.burden) },
      {
        head: html`delay<br><small>in hover</small>`,
        number: true,
        cell: (r) => {
          const over = overWords(r.burden, r.over);
          return html`${delayWords(r.burden)}${over !== "" && html` <small class="axis">${over}</small>`}`;
        },
      },
      {
        head: html`not exceeded in<br>99 % of the flight<br><small>ms</small>`,
        number: true,
        cell: ({ burden: b }) => (b.attainable ? three(1e3 * b.delayMostOfFlight) : "–"),
      },
      {
        head: html`lag at ${hertz(controlBandwidth)}<br><small>degrees</small>`,
        number: true,
        cell: ({ burden: b }) => (b.attainable ? inDegrees(b.lag) : "–"),
      },
      {
        head: html`what is left<br><small>deg/s rms</small>`,
        number: true,
        cell: ({ burden: b }) =>
          html`${three(b.residual)} <small class="axis">most: ${b.mostFrom === "noise" ? "the chip’s noise" : b.mostFrom}</small>`,
      },
    ],
    rows,
    { className: "by-place", rowClass: (r) => (r.way === WAYS[0] ? "first" : "") },
  );
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
