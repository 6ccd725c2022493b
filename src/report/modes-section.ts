/** The mode shapes: a moving picture and the table that chooses what it shows. */

import type { ModeDescription, Share } from "../modes/types.ts";
import { type Html, html, joined, named, type Part } from "./html.ts";
import { hertz, percent, three } from "./numbers.ts";
import { type Column, section, table } from "./section.ts";
import type { Analysed } from "./types.ts";

/** Parts named per mode. */
const MAIN_PARTS = 3;
/** Parts with less of a mode's energy than this are not named. */
const LEAST_SHARE = 0.05;

/**
 * The mode shown first: the one that causes most at the best place, or the lowest. Causes are modes with
 * the stack at that place, the shapes those with the stack as drawn, so the nearest frequency tells.
 */
export function firstMode({ ranking, modes }: Pick<Analysed, "ranking" | "modes">): number {
  const cause = ranking?.candidates[0]?.causes.find((c) => c.mode > 0);
  const [lowest] = modes.described;
  if (!cause || !lowest) return lowest?.number ?? 0;
  const off = (m: ModeDescription) => Math.abs(m.frequency - cause.frequency);
  return modes.described.reduce((a, b) => (off(b) < off(a) ? b : a)).number;
}

/** @param drawn how many shapes, from the lowest, are in the page */
export function modesSection(analysed: Analysed, drawn: number): Html {
  const { modes } = analysed;
  if (modes.described.length === 0)
    return section("modes", "Mode shapes", "No modes were computed.");
  const first = Math.min(firstMode(analysed), drawn);
  const lead =
    "Left alone after a knock, the frame rings in these shapes, each at its own frequency. A motor that turns at the same frequency keeps the shape alive. The picture is slowed down and exaggerated; colours run from dark blue (stands still) to yellow (moves most).";
  return section(
    "modes",
    "Mode shapes",
    lead,
    html`<div class="modes-layout">
<figure class="stage">
<div class="chart shape-chart" id="shape-chart" role="img" aria-label="${modeWords(analysed, first)}"><p class="waiting">The mode shape is drawn by the page's own script.</p></div>
${controls()}
<figcaption id="mode-words" aria-live="polite">${modeWords(analysed, first)}</figcaption>
</figure>
${table("Choose a mode to see it move", columns(first, drawn), modes.described, { className: "modes", boxId: "modes-box" })}
</div>`,
  );
}

function controls(): Html {
  const views = [
    ["corner", "from a corner"],
    ["above", "from above"],
    ["front", "from the front"],
    ["side", "from the side"],
  ] as const;
  return html`<div class="controls">
<button type="button" id="mode-play" aria-pressed="false">Play</button>
<label>size <input type="range" id="mode-size" min="0" max="30" step="1" value="10"></label>
<label><input type="checkbox" id="mode-ghost" checked> at rest</label>
<label><input type="checkbox" id="mode-bodies" checked> bodies</label>
<span class="views" role="group" aria-label="view">${views.map(([id, words]) => html`<button type="button" data-view="${id}">${words}</button>`)}</span>
</div>`;
}

function columns(first: number, drawn: number): Column<ModeDescription>[] {
  return [
    {
      head: "mode",
      cell: (m) => {
        const chosen = m.number === first ? " checked" : "";
        const missing = m.number > drawn ? " disabled" : "";
        return html`<label class="choice"><input type="radio" name="mode" value="${m.number}"${{ html: chosen + missing }}> ${m.number}</label>`;
      },
    },
    { head: html`frequency<br><small>Hz</small>`, number: true, cell: (m) => three(m.frequency) },
    {
      head: html`damping<br><small>%</small>`,
      number: true,
      cell: (m) => three(100 * m.damping, 2),
    },
    {
      head: html`motion<br><small>main parts by share of the bending energy</small>`,
      names: true,
      cell: (m) =>
        html`${m.name}${m.symmetry && html` <small>${m.symmetry}</small>`}<br><small>${mainParts(m.shares)}</small>`,
    },
  ];
}

function mainParts(shares: readonly Share[]): Part {
  const main = shares
    .filter((s) => s.strain >= LEAST_SHARE)
    .toSorted((a, b) => b.strain - a.strain)
    .slice(0, MAIN_PARTS);
  if (main.length === 0) return html`<span class="quiet">many, little each</span>`;
  return joined(
    main.map((s) => html`${named(s.part)} ${percent(s.strain, 2)}`),
    ", ",
  );
}

/** What a mode is, in words; text for the page and for those who do not see the picture. */
export function modeWords(
  { modes, ranking }: Pick<Analysed, "modes" | "ranking">,
  number: number,
): string {
  const mode = modes.described[number - 1];
  if (!mode) return "";
  const moving = mode.shares
    .filter((s) => s.kinetic >= LEAST_SHARE)
    .toSorted((a, b) => b.kinetic - a.kinetic)
    .slice(0, MAIN_PARTS)
    .map((s) => `${s.part} ${percent(s.kinetic, 2)}`);
  const motion = moving.length > 0 ? ` Most of the energy of motion: ${moving.join(", ")}.` : "";
  const best = ranking?.candidates[0];
  const turn = best?.motion.find((m) => m.mode === number);
  const turning =
    best && turn
      ? ` The best place, “${best.candidate.name}”, turns ${percent(turn.rotationShare, 2)} as much as the place that turns most here.`
      : "";
  return `Mode ${mode.number}, ${hertz(mode.frequency)}: ${mode.name}${mode.symmetry ? ` (${mode.symmetry})` : ""}.${motion}${turning}`;
}
