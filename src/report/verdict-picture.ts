/** The picture of the verdict: the quiet map in the frame seen from above, its scale, and what its signs mean. */

import { canSit } from "../ranking/types.ts";
import { saveButtons } from "./figure.ts";
import { type Html, html, named, type Part } from "./html.ts";
import { extremes, mapPlaceWords, QUANTITIES } from "./map-quantities.ts";
import { tileScale } from "./map-scale.ts";
import { inlineMark, standing } from "./markers.ts";
import { degreesPerSecond, millimetres } from "./numbers.ts";
import { quoted, sideWord } from "./place-names.ts";
import { overhangs, planDrawing } from "./plan.ts";
import { quietLayers, scaleOf } from "./quiet-layer.ts";
import { sideDrawing } from "./side.ts";
import type { Analysed } from "./types.ts";

/** Places told of a picture. */
const MOST_TOLD = 8;

/** From above, with the map and its scale. */
export function planFigure(analysed: Analysed): Html {
  const places = analysed.ranking?.map.places ?? [];
  const finding = [mapFinding(analysed), pictureFinding(analysed)]
    .filter((f) => f !== "")
    .join(" ");
  return html`<figure class="picture">
<div class="drawings">${planDrawing(analysed, finding)}</div>
<figcaption>${
    places.length > 0 &&
    html`<div class="tile-key"><span>gyro noise over the flight mix</span>${tileScale(scaleOf(places, QUANTITIES[0]), "deg/s rms")}</div>
<p class="quiet">${mapCaption(analysed)}</p>`
  }${key(analysed)}</figcaption>
${saveButtons("plan")}
</figure>
`;
}

/** From the side. */
export function sideFigure(analysed: Analysed): Html {
  return html`<figure class="side-picture">${sideDrawing(analysed, pictureFinding(analysed))}<figcaption><p class="quiet">From its right-hand side, front to the right.</p></figcaption>${saveButtons("side")}</figure>
`;
}

/** What the map in the picture shows. */
export function mapFinding(analysed: Analysed): string {
  const [main] = quietLayers(analysed);
  const best = analysed.ranking?.candidates[0];
  if (!main || !best) return "";
  const { least, most, low, high } = extremes(main.shown, QUANTITIES[0]);
  return `Gyro noise on the plate ${quoted(main.plate.name)}: least ${degreesPerSecond(low)} rms at ${mapPlaceWords(least)}, most ${degreesPerSecond(high)} rms at ${mapPlaceWords(most)}; the best place, ${quoted(best.candidate.name)}, reads ${degreesPerSecond(best.sensed.gyro)} rms.`;
}

/** Which plates are seen, and what is between the places that were computed. */
function mapCaption(analysed: Analysed): Part {
  const { ranking, model } = analysed;
  const layers = quietLayers(analysed);
  const [main, ...others] = layers;
  if (!ranking || !main) return "";
  const beside =
    others.length > 0
      ? html`, and what lies beside it of ${listed(others.map((l) => named(l.plate.name)))}`
      : "";
  const hidden = model.plates.length > layers.length || others.length > 0;
  const free = layers.some((l) => l.shown.some(canSit));
  return html`Shown: the plate ${named(main.plate.name)}${beside}. ${hidden && html`Every plate by itself: <a href="#map">quiet map</a>. `}The box is the stack at the best place. Tiles between the places that were computed are interpolated${!free && ", and none of those computed here has room for the stack as drawn"}. ${free && html`Within the thin outline it could sit as well: its screws fit and nothing drawn is in the way.`}`;
}

function listed(items: readonly Part[]): Part {
  return items.map((item, i) => html`${i > 0 && (i === items.length - 1 ? " and " : ", ")}${item}`);
}

/** What the picture shows, for those who do not see it. */
export function pictureFinding(analysed: Analysed): string {
  const candidates = analysed.ranking?.candidates ?? [];
  const shown = candidates.slice(0, MOST_TOLD).map((c, i) => {
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

/** What the signs of the picture mean. */
function key(analysed: Analysed): Part {
  const ranked = analysed.ranking !== undefined;
  return html`<p class="key">${ranked && html`<span>${inlineMark("best", "")} best</span> <span>${inlineMark("fine", "")} will do</span> <span>${inlineMark("avoid", "")} avoid</span>`} <span><svg class="inline-mark" viewBox="-18 -18 36 36" aria-hidden="true"><g class="cg"><circle class="cg-ground" r="10"/><path class="cg-quarters" d="M0 0L10 0A10 10 0 0 1 0 10ZM0 0L-10 0A10 10 0 0 1 0 -10Z"/></g></svg> centre of gravity</span>${ranked && html` <span><svg class="inline-mark" viewBox="-18 -18 36 36" aria-hidden="true"><circle class="place-dot" r="6"/></svg> dot: the exact place</span>`}${overhangs(analysed).length > 0 && html` <span><svg class="inline-mark" viewBox="0 0 32 32" aria-hidden="true"><rect class="overhang" x="2" y="8" width="28" height="16" fill="url(#plan-hatch)"/></svg> reaches past its last support</span>`}</p>`;
}
