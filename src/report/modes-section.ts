/** The mode shapes: a moving picture and the table that chooses what it shows. */

import type { ModeDescription, Share } from "../modes/types.ts";
import { saveButtons } from "./figure.ts";
import { type Html, html, joined, named, type Part } from "./html.ts";
import { modeLink } from "./mode-link.ts";
import { heardModes } from "./modes-that-matter.ts";
import { hertz, percent, three } from "./numbers.ts";
import { motionScale } from "./palette.ts";
import { type Column, section, table } from "./section.ts";
import type { Analysed } from "./types.ts";
import { pictureHint, viewButtons } from "./view-controls.ts";
import { term } from "./words.ts";

/** Parts named per mode. */
const MAIN_PARTS = 3;
/** Parts with less of a mode's energy than this are not named. */
const LEAST_SHARE = 0.05;

/**
 * The mode shown first: of those whose shapes are in the page the one that causes most at the best place,
 * or the lowest.
 *
 * @param drawn shapes in the page, from the lowest
 */
export function firstMode(analysed: Pick<Analysed, "ranking" | "modes">, drawn: number): number {
  const heard = heardModes(analysed).find((m) => m && m.number <= drawn);
  return (heard ?? analysed.modes.described[0])?.number ?? 0;
}

/** @param words said of each mode that is in the page, from the lowest: see modeWords */
export function modesSection(analysed: Analysed, words: readonly string[]): Html {
  const { modes } = analysed;
  if (modes.described.length === 0)
    return section("modes", "Mode shapes", "No modes were computed.");
  const drawn = words.length;
  const first = firstMode(analysed, drawn);
  return section(
    "modes",
    "Mode shapes",
    {
      finding: finding(analysed, first),
      how: html`Left alone after a knock, the frame rings in these shapes, each at its own ${term("natural-frequency", "frequency")}. A motor that turns at the same frequency keeps the shape alive. The picture is slowed down and exaggerated.`,
    },
    html`<div class="modes-layout">
<figure class="stage">
<div class="chart shape-chart" id="shape-chart"><p class="waiting">${words[first - 1]}</p></div>
${controls()}
${scale()}
<figcaption id="mode-words" aria-live="polite">${words[first - 1]}</figcaption>
${pictureHint("shape-chart", "Point at it for how much a place moves and turns.")}
${saveButtons("shape-chart")}
</figure>
${table("Choose a mode to see it move", columns(first, drawn), modes.described, { className: "modes", boxId: "modes-box" })}
</div>`,
  );
}

/** How many shapes there are, which of them is heard most at the best place, and which is shown first. */
function finding(analysed: Analysed, first: number): Part {
  const { modes, ranking } = analysed;
  const all = modes.described;
  const [lowest, highest] = [all[0], all[all.length - 1]];
  const range =
    all.length === 1
      ? `One shape was worked out, at ${hertz(lowest.frequency)}.`
      : `${all.length} shapes were worked out, from ${hertz(lowest.frequency)} to ${hertz(highest.frequency)}.`;
  const best = ranking?.candidates[0];
  const [most] = heardModes(analysed);
  if (!best || !most) return range;
  const link = (m: ModeDescription) =>
    html`${modeLink(m.number, `mode ${m.number}`)} at ${hertz(m.frequency)}`;
  const start = html`${range} At the best place, ${named(best.candidate.name)}, most noise comes through the shape of`;
  if (most.number === first) return html`${start} ${link(most)}: ${most.name}.`;
  return html`${start} mode ${most.number} at ${hertz(most.frequency)}: ${most.name}. It is not among the shapes in this page; the picture begins with ${link(all[first - 1])}.`;
}

function controls(): Html {
  return html`<div class="controls">
<button type="button" id="mode-play" aria-pressed="false">Play</button>
<span class="steps" role="group" aria-label="mode"><button type="button" id="mode-back" aria-label="previous mode">‹ mode</button><button type="button" id="mode-next" aria-label="next mode">mode ›</button></span>
<label>size <input type="range" id="mode-size" min="0" max="30" step="1" value="9"></label>
<label>speed <input type="range" id="mode-speed" min="0.25" max="2" step="0.25" value="1"></label>
</div>
<div class="controls">
<fieldset class="switch"><legend>colour by</legend>
<label><input type="radio" name="mode-by" id="mode-by-moving" value="moving" checked> movement</label>
<label><input type="radio" name="mode-by" id="mode-by-turning" value="turning"> turning</label>
</fieldset>
<label><input type="checkbox" id="mode-ghost" checked> at rest</label>
<label><input type="checkbox" id="mode-bodies" checked> bodies</label>
</div>
<div class="controls">
${viewButtons()}
<button type="button" id="mode-clip" hidden>save a clip</button>
</div>`;
}

/** Ten bands, as the picture has them. */
function scale(): Html {
  const colours = motionScale(10);
  const stops = colours.map(([, c], i) => `${c} ${10 * i}% ${10 * (i + 1)}%`).join(", ");
  return html`<div class="motion-scale"><span>stands still</span><span class="strip" style="background: linear-gradient(90deg, ${stops})"></span><span class="by-moving">moves most</span><span class="by-turning">turns most</span><span class="whole">Relative to the largest that is shown of this mode; each band is a tenth of it.</span></div>`;
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
      head: html`motion<br><small>main parts by share of the strain energy</small>`,
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

/**
 * What a mode is, in words; text for the page and for those who do not see the picture.
 *
 * @param at how much the best place moves and turns, relative to what moves and turns most
 */
export function modeWords(
  { modes, ranking }: Pick<Analysed, "modes" | "ranking">,
  number: number,
  at?: { readonly move: number; readonly turn: number },
): string {
  const mode = modes.described[number - 1];
  if (!mode) return "";
  const moving = mode.shares
    .filter((s) => s.kinetic >= LEAST_SHARE)
    .toSorted((a, b) => b.kinetic - a.kinetic)
    .slice(0, MAIN_PARTS)
    .map((s) => `${s.part} ${percent(s.kinetic, 2)}`);
  const motion =
    moving.length > 0 ? ` Largest shares of the energy of motion: ${moving.join(", ")}.` : "";
  const best = ranking?.candidates[0];
  const there =
    best && at
      ? ` The best place, “${best.candidate.name}”, moves ${percent(at.move, 2)} and turns ${percent(at.turn, 2)} as much as what moves and turns most.`
      : "";
  return `Mode ${mode.number}, ${hertz(mode.frequency)}: ${mode.name}${mode.symmetry ? ` (${mode.symmetry})` : ""}.${motion}${there}`;
}
