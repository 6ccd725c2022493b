/** The quiet map of gyro noise as a layer of the frame seen from above. */

import { borderDistance, bounds, contains, type Polygon } from "../model/polygon.ts";
import type { PlatePart } from "../model/types.ts";
import { cellsBetween } from "../ranking/cells.ts";
import { canSit, type MapPlace } from "../ranking/types.ts";
import { fine, fromAbove, path, polygonPath } from "./drawing.ts";
import { nearest, weightsAt } from "./field.ts";
import { type Html, html } from "./html.ts";
import { extremes, QUANTITIES, type Quantity } from "./map-quantities.ts";
import { type Scale, shareOf, tileColour, tileSide } from "./map-scale.ts";
import { rounded } from "./numbers.ts";
import type { Analysed } from "./types.ts";

/** Steps of colour and size. */
const LEVELS = 24;
/** Tiles along the longest plate. */
const TILES = 32;
/** A difference of less than this, 3 dB, must not look like a large one. */
const LEAST_RATIO = Math.SQRT2;

/** The map's scale for a quantity, of all plates. */
export function scaleOf(places: readonly MapPlace[], quantity: Quantity): Scale {
  const { low, high } = extremes(places, quantity);
  const { byRatio } = quantity;
  // Values that the page shows alike count as alike.
  const [least, most] = [low, high].map((v) => rounded(v, 3) ?? 0);
  return { low: least, high: byRatio ? Math.max(most, LEAST_RATIO * least) : most, byRatio };
}

/** What the picture shows of one plate. */
export interface Layer {
  readonly plate: PlatePart;
  readonly number: number;
  /** plates that lie over it in the picture */
  readonly above: readonly PlatePart[];
  readonly shown: readonly MapPlace[];
}

/**
 * The plate of the best place, and of the others what lies beside it; none where there is no map.
 * First the one that lies on top of the picture.
 */
export function quietLayers({ ranking, model }: Analysed): Layer[] {
  if (!ranking || ranking.map.places.length === 0) return [];
  const best = ranking.candidates[0].candidate.plate;
  const order = model.plates
    .map((plate, number) => ({ plate, number }))
    .sort((a, b) => Number(b.number === best) - Number(a.number === best) || b.plate.z - a.plate.z);
  return order.flatMap(({ plate, number }, k) => {
    const above = order.slice(0, k);
    const shown = ranking.map.places.filter(
      (p) => p.plate === plate.name && !above.some((a) => contains(a.plate.outline, p.x, p.y)),
    );
    return shown.length > 0 ? [{ plate, number, above: above.map((a) => a.plate), shown }] : [];
  });
}

/** Tiles for every place, cut off at the edges of the plates. */
export function quietMapLayer(analysed: Analysed): Html {
  const places = analysed.ranking?.map.places ?? [];
  const layers = quietLayers(analysed);
  if (layers.length === 0) return html``;
  const scale = scaleOf(places, QUANTITIES[0]);
  const sizes = analysed.model.plates.map(({ outline }) => {
    const [x0, y0, x1, y1] = bounds(outline);
    return Math.max(x1 - x0, y1 - y0);
  });
  const cell = Math.max(...sizes) / TILES;
  return html`<g class="quiet-map">${layers.toReversed().map((l) => sheet(l, places, scale, cell))}</g>`;
}

function sheet(
  { plate, number, above }: Layer,
  all: readonly MapPlace[],
  scale: Scale,
  cell: number,
): Html {
  const id = `plan-plate-${number + 1}`;
  const outline = polygonPath([plate.outline, ...plate.holes]);
  const known = all.filter((p) => p.plate === plate.name);
  const shares = known.map((p) => shareOf(p.gyro, scale));
  const [x0, y0, x1, y1] = bounds(plate.outline);
  const [xs, ys] = [cellsBetween(x0, x1, cell), cellsBetween(y0, y1, cell)];
  const [high, wide] = [xs.each * 1e3, ys.each * 1e3];
  const isSeen = (x: number, y: number) =>
    touches(plate.outline, x, y, cell) && !above.some((p) => contains(p.outline, x, y));
  /** by colour: tiles of one level are one path, which keeps the page small */
  const tiles = new Map<string, string[]>();
  const border: string[] = [];
  const isFree = (x: number, y: number) =>
    contains(plate.outline, x, y) && canSit(known[nearest(known, x, y)]);
  for (const x of xs.middles) {
    for (const y of ys.middles) {
      if (!isSeen(x, y)) continue;
      const weights = weightsAt(known, x, y);
      const exact = shares.reduce((sum, v, i) => sum + v * weights[i], 0);
      const share = Math.round(exact * LEVELS) / LEVELS;
      const side = tileSide(share);
      const [u, v] = fromAbove(x, y, 0);
      const at = `M${fine(u - (side * wide) / 2)} ${fine(v - (side * high) / 2)}`;
      const d = `${at}h${fine(side * wide)}v${fine(side * high)}h${fine(-side * wide)}z`;
      const colour = tileColour(share);
      tiles.set(colour, [...(tiles.get(colour) ?? []), d]);
      if (!isFree(x, y)) continue;
      // Sides of this cell behind which the stack cannot sit.
      const [left, top] = [u - wide / 2, v - high / 2];
      if (!isFree(x + xs.each, y)) border.push(`M${fine(left)} ${fine(top)}h${fine(wide)}`);
      if (!isFree(x - xs.each, y)) border.push(`M${fine(left)} ${fine(top + high)}h${fine(wide)}`);
      if (!isFree(x, y + ys.each)) border.push(`M${fine(left)} ${fine(top)}v${fine(high)}`);
      if (!isFree(x, y - ys.each)) border.push(`M${fine(left + wide)} ${fine(top)}v${fine(high)}`);
    }
  }
  const drawn = Array.from(tiles, ([fill, d]) => html`<path fill="${fill}" d="${d.join("")}"/>`);
  return html`<clipPath id="${id}"><path clip-rule="evenodd" d="${outline}"/></clipPath>${path(outline, "map-ground")}<g clip-path="url(#${id})">${drawn}${path(border.join(""), "free-ground")}${path(border.join(""), "free-edge")}</g>${path(outline, "map-edge")}`;
}

/** Whether a cell may have some of the plate in it. */
function touches(outline: Polygon, x: number, y: number, width: number): boolean {
  return contains(outline, x, y) || borderDistance(outline, x, y) < 0.7 * width;
}
