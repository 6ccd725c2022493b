/** Where on the plates it is quiet, and where of that the stack fits. */

import { canSit, type MapPlace, type QuietMap, type Ranking } from "../ranking/types.ts";
import { chartBox } from "./figure.ts";
import { type Html, html, named } from "./html.ts";
import { mapsData } from "./map-data.ts";
import { bestOfMap, extremes, mapPlaceWords, QUANTITIES, spotWords } from "./map-quantities.ts";
import { tileScale } from "./map-scale.ts";
import { millimetres, three } from "./numbers.ts";
import { scaleOf } from "./quiet-layer.ts";
import { section, table } from "./section.ts";
import type { Analysed } from "./types.ts";

/** undefined where the ranking has no map. */
export function mapSection(analysed: Analysed): Html | undefined {
  const { ranking } = analysed;
  const data = mapsData(analysed);
  if (!ranking || !data) return undefined;
  const [first] = data.quantities;
  return section(
    "map",
    "Quiet map",
    { finding: finding(ranking), how: how(ranking) },
    html`<fieldset class="switch"><legend>show</legend>${QUANTITIES.map((q, i) => html`<label><input type="radio" name="map-quantity" value="${q.key}"${i === 0 && { html: " checked" }}> ${q.name}${q.key === "delayWithout" && html` <small>(low-pass alone)</small>`}</label>`)}</fieldset>
<p id="map-words" aria-live="polite">${first.words}</p>
<figure>${tileScale(scaleOf(ranking.map.places, QUANTITIES[0]), first.unit, "map-tick")}
<div class="maps">${data.maps.map((m) => html`<div><h3>${named(m.plate)}</h3>${chartBox(m.id, "map-chart", m.findings[0])}</div>`)}</div>
<figcaption><ul class="legend">${legend(ranking.map)}</ul></figcaption></figure>`,
    table("Range of the map, plate by plate", rangeColumns(), plateRows(analysed)),
  );
}

/** Where it is quiet, and where of that the stack fits. */
function finding({ map }: Ranking): string {
  const free = map.places.filter(canSit).length;
  const best = bestOfMap(map);
  const { low, high } = extremes(map.places, QUANTITIES[0]);
  const [least, most] = [low, high].map((v) => QUANTITIES[0].words(v));
  const all =
    map.places.length === 1 || least === most
      ? `it reads ${least}`
      : `gyro noise runs from ${least} to ${most}`;
  if (!best) return `The stack fits nowhere beside what is drawn; were that taken out, ${all}.`;
  const reads = `${mapPlaceWords(best)}, at ${QUANTITIES[0].words(best.gyro)}`;
  if (map.places.length === 1) return `There is one place on the plates: ${reads}.`;
  const where =
    free === 1
      ? `The stack fits beside what is drawn at one place of the map only: ${reads}.`
      : `Beside the places of the ranking, the stack fits at ${free} of ${map.places.length} places of this grid; the best of them by score is ${reads}.`;
  return `${where} All over the plates ${all}.`;
}

function how({ map }: Ranking): string {
  const some = map.places.some((p) => !canSit(p));
  return `Plates from above, front at the top. Small and dark is little, large and light is much; all plates have one scale. The grid is coarse: a place between its squares may be a little better.${some ? ` Squares with a heavy outline are places where the stack fits, ${millimetres(map.pitch)} apart. At the others something drawn is in the way, or its screws do not fit: those are read on their pattern drawn together until it does, which reads up to about 1 dB louder. Point at a square to see which.` : ""}`;
}

function legend({ places }: QuietMap): Html {
  const sign = (inside: Html) =>
    html`<svg class="symbol" viewBox="0 0 16 16" aria-hidden="true">${inside}</svg>`;
  const star = "M8 0.6L10 5.7L15.4 6L11.2 9.4L12.6 14.7L8 11.7L3.4 14.7L4.8 9.4L0.6 6L6 5.7Z";
  const tile = (kind: string) =>
    sign(html`<rect class="${kind}" x="3" y="3" width="10" height="10"/>`);
  return html`${places.some((p) => !canSit(p)) && html`<li>${tile("square-mark free")} the stack fits</li>\n<li>${tile("square-mark")} something is in the way, or its screws do not fit</li>\n`}${places.length > 1 && bestOfMap({ places }) && html`<li>${sign(html`<path class="star-mark" d="${star}"/>`)} best spot of the map</li>\n`}<li>${sign(html`<circle class="dot-mark" cx="8" cy="8" r="5"/>`)} place of the ranking, with its number</li>
<li>${sign(html`<g class="cross-mark"><circle cx="8" cy="8" r="6"/><path d="M8 2V14M2 8H14"/></g>`)} centre of gravity</li>${places.some((p) => p.avoid) && html`<li>${sign(html`<path class="avoid-mark" d="M3 3L13 13M3 13L13 3"/>`)} to be avoided: reaches past its last support</li>`}`;
}

interface PlateRow {
  readonly plate: string;
  readonly places: readonly MapPlace[];
}

function plateRows({ ranking, model }: Analysed): PlateRow[] {
  const all = ranking?.map.places ?? [];
  return model.plates.flatMap(({ name }) => {
    const places = all.filter((p) => p.plate === name);
    return places.length > 0 ? [{ plate: name, places }] : [];
  });
}

function rangeColumns() {
  return [
    { head: "plate", names: true, cell: (r: PlateRow) => named(r.plate) },
    { head: "places", number: true, cell: (r: PlateRow) => r.places.length },
    {
      head: html`of these<br><small>stack fits</small>`,
      number: true,
      cell: (r: PlateRow) => r.places.filter(canSit).length,
    },
    ...QUANTITIES.map((q) => ({
      head: html`${q.name}<br><small>${q.unit}</small>`,
      number: true,
      cell: ({ places }: PlateRow) => {
        const { low, high } = extremes(places, q);
        const [least, most] = [three(low), three(high)];
        return least === most ? least : `${least} to ${most}`;
      },
    })),
    {
      head: html`best spot<br><small>by score</small>`,
      cell: ({ places }: PlateRow) => {
        const best = bestOfMap({ places });
        return best === undefined
          ? "none"
          : `${spotWords(best)}, ${best.side > 0 ? "on top" : "underneath"}`;
      },
    },
  ];
}
