/** The frame at rest as a picture that can be turned, and what its colours stand for. */

import { saveButtons } from "./figure.ts";
import { type Html, html } from "./html.ts";
import { grams } from "./numbers.ts";
import type { Analysed } from "./types.ts";
import { pictureHint, viewButtons } from "./view-controls.ts";

/** The kinds of parts in the order of the legend, with their words and the theme's colour. */
const KINDS = [
  ["plate", "plates", "plate"],
  ["arm", "arms", "series5"],
  ["post", "standoffs and members", "series1"],
  ["motor", "motors", "series7"],
  ["stack", "sensor stack as drawn", "accent"],
  ["body", "other bodies, as boxes", "series2"],
] as const;

type Kind = (typeof KINDS)[number][0];

/** For the section on the model; the script draws it (client/frame-view.ts). */
export function frameFigure(analysed: Analysed): Html | false {
  const { model, mass, modes } = analysed;
  if (modes.described.length === 0) return false;
  const count: Readonly<Record<Kind, number>> = {
    plate: model.plates.length,
    arm: model.arms.length,
    post: model.standoffs.length + model.members.length,
    motor: model.bodies.filter((b) => b.role === "motor").length,
    stack: model.bodies.filter((b) => b.role === "stack").length,
    body: model.bodies.filter((b) => b.role === "body" && b.size !== undefined).length,
  };
  const shown = KINDS.filter(([kind]) => count[kind] > 0);
  const heaviest = mass.parts.reduce((a, b) => (b.mass > a.mass ? b : a));
  const words = `The frame as it was read: ${shown.map(([kind, name]) => `${count[kind]} ${name}`).join(", ")}; ${grams(mass.mass)} in all, the heaviest part is ${heaviest.name} with ${grams(heaviest.mass)}.`;
  return html`<figure class="stage frame-stage">
<div class="chart shape-chart" id="frame-chart" data-words="${words}"><p class="waiting">${words}</p></div>
<div class="controls">
<label><input type="checkbox" id="frame-bodies" checked> bodies</label>
${viewButtons()}
</div>
<ul class="legend">${shown.map(([kind, name, colour]) => html`<li>${swatch(kind, colour)} ${name}</li>`)}</ul>
${pictureHint("frame-chart", "Point at a part for its name and mass.")}
${saveButtons("frame-chart")}
</figure>`;
}

/** Each kind has a shape of its own too: stripes for arms, a post, a disc, see-through boxes. */
function swatch(kind: Kind, colour: string): Html {
  const fill = `fill: var(--${colour})`;
  const inside = {
    plate: html`<rect x="1" y="2" width="26" height="10" style="${fill}"/>`,
    arm: html`<rect x="1" y="2" width="26" height="10" style="${fill}"/><path d="M3 12 13 2M9 12 19 2M15 12 25 2M21 12 27 6" class="stripes"/>`,
    post: html`<rect x="12" y="0" width="5" height="14" style="${fill}"/>`,
    motor: html`<ellipse cx="14" cy="7" rx="9" ry="6" style="${fill}"/>`,
    stack: html`<rect x="5" y="2" width="18" height="10" style="${fill}" fill-opacity=".45"/>`,
    body: html`<rect x="2" y="1" width="24" height="12" style="${fill}" fill-opacity=".45"/>`,
  }[kind];
  return html`<svg class="part-swatch" viewBox="0 0 28 14" aria-hidden="true">${inside}</svg>`;
}
