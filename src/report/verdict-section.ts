/** The answer first: in words, beside the picture that proves it. */

import type { RankedCandidate } from "../ranking/types.ts";
import { type Html, html, named, type Part } from "./html.ts";
import { inlineMark, placeLabels, standing } from "./markers.ts";
import { decibels, degreesPerSecond, hertz, mass, rpm } from "./numbers.ts";
import { sideWord } from "./place-names.ts";
import { facts, list } from "./section.ts";
import type { Analysed } from "./types.ts";
import { planFigure, sideFigure } from "./verdict-picture.ts";

/** Places listed beside the picture. */
const MOST_LISTED = 8;

export function verdictSection(analysed: Analysed): Html {
  const { ranking } = analysed;
  const [matters, ...more] = ranking?.verdict.sentences ?? [];
  return html`<section id="verdict" class="verdict" aria-labelledby="verdict-heading">
<h2 id="verdict-heading">${ranking?.verdict.headline ?? plainHeadline(analysed)}</h2>
<div class="answer">
${matters !== undefined && html`<p class="matters">${matters}</p>`}
${placeList(analysed)}
</div>
${planFigure(analysed)}
<div class="beside">
<div>${more.map((s) => html`<p>${s}</p>`)}${remarks(analysed)}</div>
<div>${sideFigure(analysed)}${keyFacts(analysed)}</div>
</div>
</section>
`;
}

/** Without a ranking the lowest mode is the news. */
function plainHeadline({ modes, excitation }: Analysed): string {
  const first = modes.described[0];
  const why = excitation ? "no place for a sensor stack" : "no motors";
  if (!first) return `No modes were computed, and the file has ${why}, so nothing is ranked.`;
  return `The lowest mode lies at ${hertz(first.frequency)}: ${first.name}. The file has ${why}, so no places are ranked.`;
}

function placeList({ ranking }: Analysed): Part {
  const candidates = ranking?.candidates ?? [];
  const rest = candidates.length - MOST_LISTED;
  const labels = placeLabels(candidates);
  if (candidates.length === 0) return "";
  return html`<ol class="places">${candidates.slice(0, MOST_LISTED).map((c, i) => placeLine(c, i, labels[i]))}</ol>
${rest > 0 && html`<p>and ${rest} more places in the <a href="#ranking">table</a>.</p>`}`;
}

/** What else is worth knowing. */
function remarks({ ranking }: Analysed): Part {
  const items = ranking?.verdict.remarks ?? [];
  return items.length > 0 && html`<div class="remarks">${list(items)}</div>`;
}

function placeLine(c: RankedCandidate, i: number, text: string): Html {
  const kind = standing(c, i);
  const kinds = (hard: boolean) => [
    ...new Set(c.flags.filter((f) => f.hard === hard).map((f) => f.kind)),
  ];
  const [against, mind] = [kinds(true).join(", "), kinds(false).join(", ")];
  const why = html`${against !== "" && ` – avoid: ${against}`}${mind !== "" && ` – mind: ${mind}`}`;
  const above = Math.abs(c.decibel) < 0.05 ? "" : `, ${decibels(c.decibel)}`;
  const level = `${degreesPerSecond(c.sensed.gyro)}${above}`;
  return html`<li class="${kind}">${inlineMark(kind, text)}<span class="spoken">${text}:</span> <span><strong>${named(c.candidate.name)}</strong> ${sideWord(c.candidate)} ${named(c.plate)}: ${level}${c.tied && " (tie)"}${c.candidate.designed && " – as drawn in the file"}${c.found && " – found by the search"}${why}</span></li>`;
}

function keyFacts({ excitation, mass: all, modes, ranking }: Analysed): Html {
  const pairs: (readonly [Part, Part])[] = [["all-up mass", mass(all.mass)]];
  if (excitation) {
    const { hover } = excitation.speeds;
    pairs.push([
      "hover",
      html`${rpm(hover)} <small>${hertz(hover / (2 * Math.PI))} once per turn</small>`,
    ]);
  }
  const first = modes.described.find((m) => m.motion.softMount <= 0.5) ?? modes.described[0];
  if (first) {
    const whose = first.motion.softMount > 0.5 ? "lowest mode" : "lowest mode of the frame itself";
    pairs.push([whose, html`${hertz(first.frequency)} <small>${first.name}</small>`]);
  }
  const last = ranking?.candidates.at(-1);
  if (ranking && last && ranking.candidates.length > 1) {
    const levels = ranking.candidates.map((c) => c.decibel);
    const span = Math.max(...levels) - Math.min(...levels);
    pairs.push([
      "quietest to loudest place ranked",
      html`${span.toFixed(1)}\u00a0dB <small>of gyro noise</small>`,
    ]);
  }
  return facts(pairs);
}
