/** The answer first: in words, and as the picture that proves it. */

import type { RankedCandidate } from "../ranking/types.ts";
import { type Html, html, named, type Part } from "./html.ts";
import { inlineMark, placeLabels, standing } from "./markers.ts";
import { decibels, degreesPerSecond, hertz, mass, millimetres, rpm } from "./numbers.ts";
import { sideWord } from "./place-names.ts";
import { overhangs, planDrawing } from "./plan.ts";
import { facts, list } from "./section.ts";
import { sideDrawing } from "./side.ts";
import type { Analysed } from "./types.ts";

/** Places listed beside the picture. */
const MOST_LISTED = 8;

export function verdictSection(analysed: Analysed): Html {
  const { ranking } = analysed;
  const finding = pictureFinding(analysed);
  return html`<section id="verdict" class="verdict" aria-labelledby="verdict-heading">
<h2 id="verdict-heading">${ranking?.verdict.headline ?? plainHeadline(analysed)}</h2>
<div class="words">
${ranking?.verdict.sentences.map((s) => html`<p>${s}</p>`)}
${placeList(analysed)}
${remarks(analysed)}
${keyFacts(analysed)}
</div>
<figure class="picture">
<div class="drawings">${planDrawing(analysed, finding)}${sideDrawing(analysed, finding)}</div>
<figcaption>${caption(analysed)}</figcaption>
</figure>
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

/** What the picture shows, for those who do not see it. */
export function pictureFinding(analysed: Analysed): string {
  const candidates = analysed.ranking?.candidates ?? [];
  const shown = candidates.slice(0, MOST_LISTED).map((c, i) => {
    const kind = { best: "the best place", fine: "", avoid: "to be avoided" }[standing(c, i)];
    return `${c.place}: ${c.candidate.name}, ${sideWord(c.candidate)} ${c.plate}, ${millimetres(c.fromCg)} from the centre of gravity${kind ? `, ${kind}` : ""}.`;
  });
  const past = overhangs(analysed).map(
    (o) =>
      `Hatched: ${o.plate} reaches ${millimetres(o.length)} past its last support to the ${o.direction}.`,
  );
  return [
    `${analysed.model.plates.length} plates, ${analysed.model.arms.length} arms.`,
    ...shown,
    ...past,
  ].join(" ");
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

/** What the signs of the picture mean. */
function caption(analysed: Analysed): Part {
  const ranked = analysed.ranking !== undefined;
  return html`<p class="key">${ranked && html`<span>${inlineMark("best", "")} best</span> <span>${inlineMark("fine", "")} will do</span> <span>${inlineMark("avoid", "")} avoid</span>`} <span><svg class="inline-mark" viewBox="-18 -18 36 36" aria-hidden="true"><g class="cg"><circle class="cg-ground" r="10"/><path class="cg-quarters" d="M0 0L10 0A10 10 0 0 1 0 10ZM0 0L-10 0A10 10 0 0 1 0 -10Z"/></g></svg> centre of gravity</span>${ranked && html` <span><svg class="inline-mark" viewBox="-18 -18 36 36" aria-hidden="true"><circle class="place-dot" r="6"/></svg> dot: the exact place</span>`}${overhangs(analysed).length > 0 && html` <span><svg class="inline-mark" viewBox="0 0 32 32" aria-hidden="true"><rect class="overhang" x="2" y="8" width="28" height="16" fill="url(#plan-hatch)"/></svg> reaches past its last support</span>`}</p>`;
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
      "quietest to loudest",
      html`${span.toFixed(1)}\u00a0dB <small>of gyro noise</small>`,
    ]);
  }
  return facts(pairs);
}
