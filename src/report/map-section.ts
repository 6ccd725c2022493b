/** Where on the plates it is quiet: every place at which the stack fits. */

import type { MapPlace, QuietMap, Ranking } from "../ranking/types.ts";
import { chartBox } from "./figure.ts";
import { type Html, html, named } from "./html.ts";
import { mapsData } from "./map-data.ts";
import {
  bestOfMap,
  extremes,
  mapPlaceWords,
  QUANTITIES,
  type Quantity,
  spotWords,
} from "./map-quantities.ts";
import { millimetres, signed, three } from "./numbers.ts";
import { motionScale } from "./palette.ts";
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
    mapLead(ranking),
    html`<fieldset class="switch"><legend>show</legend>${QUANTITIES.map((q, i) => html`<label><input type="radio" name="map-quantity" value="${q.key}"${i === 0 && { html: " checked" }}> ${q.name}${q.key === "delayWithout" && html` <small>(low-pass alone)</small>`}</label>`)}</fieldset>
<figure><p class="scale"><span id="map-least">${first.lowWords}</span> ${scale()} <span id="map-most">${first.highWords}</span></p>
<div class="maps">${data.maps.map((m) => html`<div><h3>${named(m.plate)}</h3>${chartBox(m.id, "map-chart", m.findings[0])}</div>`)}</div>
<figcaption><p id="map-words" aria-live="polite">${first.words}</p><ul class="legend">${legend(ranking.map)}</ul></figcaption></figure>`,
    table("Range of the map, plate by plate", rangeColumns(), plateRows(ranking.map)),
  );
}

function mapLead({ map }: Ranking): string {
  const { length } = map.places;
  const best = bestOfMap(map);
  const where = best
    ? ` The best of them by the score of the ranking is ${mapPlaceWords(best)}`
    : "";
  const score = best && length > 1 ? `, score ${signed(best.score)}\u00a0dB` : "";
  const what =
    "Plates from above, front at the top. A square for each place where the stack’s own screw pattern fits and its box has room";
  if (length === 1) return `${what}: there is only one.`;
  return `${what}: ${length} places, ${millimetres(map.pitch)} apart. Small and dark is little, large and light is much; all plates have one scale.${where}${score}.`;
}

/** From small and dark to large and light. */
function scale(): Html {
  const colours = motionScale(5);
  const squares = colours.map(([t, colour], i) => {
    const side = 20 * (0.5 + 0.46 * t);
    const x = 24 * i + 12 - side / 2;
    return html`<rect x="${x.toFixed(1)}" y="${(12 - side / 2).toFixed(1)}" width="${side.toFixed(1)}" height="${side.toFixed(1)}" fill="${colour}"/>`;
  });
  return html`<svg class="map-scale" viewBox="0 0 120 24" role="img" aria-label="from small and dark to large and light">${squares}</svg>`;
}

function legend({ places }: QuietMap): Html {
  const sign = (inside: Html) =>
    html`<svg class="symbol" viewBox="0 0 16 16" aria-hidden="true">${inside}</svg>`;
  const star = "M8 0.6L10 5.7L15.4 6L11.2 9.4L12.6 14.7L8 11.7L3.4 14.7L4.8 9.4L0.6 6L6 5.7Z";
  return html`${places.length > 1 && html`<li>${sign(html`<path class="star-mark" d="${star}"/>`)} best spot of the map</li>\n`}<li>${sign(html`<circle class="dot-mark" cx="8" cy="8" r="5"/>`)} place of the ranking, with its number</li>
<li>${sign(html`<g class="cross-mark"><circle cx="8" cy="8" r="6"/><path d="M8 2V14M2 8H14"/></g>`)} centre of gravity</li>${places.some((p) => p.avoid) && html`<li>${sign(html`<path class="avoid-mark" d="M3 3L13 13M3 13L13 3"/>`)} to be avoided: reaches past its last support</li>`}`;
}

interface PlateRow {
  readonly plate: string;
  readonly places: readonly MapPlace[];
}

function plateRows({ places }: QuietMap): PlateRow[] {
  const plates = [...new Set(places.map((p) => p.plate))];
  return plates.map((plate) => ({ plate, places: places.filter((p) => p.plate === plate) }));
}

const UNITS: Readonly<Record<Quantity["key"], string>> = {
  gyro: "deg/s rms",
  accel: "g rms",
  delayWithout: "ms",
  tilt: "degrees",
};

function rangeColumns() {
  return [
    { head: "plate", names: true, cell: (r: PlateRow) => named(r.plate) },
    { head: "places", number: true, cell: (r: PlateRow) => r.places.length },
    ...QUANTITIES.map((q) => ({
      head: html`${q.name}<br><small>${UNITS[q.key]}</small>`,
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
        const best = bestOfMap({ places, pitch: 0 });
        return best && `${spotWords(best)}, ${best.side > 0 ? "on top" : "underneath"}`;
      },
    },
  ];
}
