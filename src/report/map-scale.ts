/** Colour and size of the maps' tiles: small and dark is little, large and light is much. */

import { type Html, html } from "./html.ts";
import { rounded } from "./numbers.ts";
import { fromOklab, motionColour } from "./palette.ts";

/** Side of a tile with least, of the room it has, and how much more the one with most has. */
const TILE = { least: 0.5, more: 0.46 };
const STEPS = 5;

export interface Scale {
  readonly low: number;
  readonly high: number;
  /** equal steps are equal ratios, as for levels; else equal differences */
  readonly byRatio: boolean;
}

/** Where a value stands from the least (0) to the most (1); in the middle where all are alike. */
export function shareOf(value: number, { low, high, byRatio }: Scale): number {
  if (!(high > low)) return 0.5;
  const share =
    byRatio && low > 0
      ? Math.log(value / low) / Math.log(high / low)
      : (value - low) / (high - low);
  return Math.min(1, Math.max(0, share));
}

/** The value at a share, the inverse of `shareOf`. */
export function valueAt(share: number, { low, high, byRatio }: Scale): number {
  return byRatio && low > 0 ? low * (high / low) ** share : low + share * (high - low);
}

export function tileColour(share: number): string {
  return fromOklab(...motionColour(share));
}

export function tileSide(share: number): number {
  return TILE.least + TILE.more * share;
}

/** What stands under the tiles from least to most; one word in the middle where all values are alike. */
export function tickWords(scale: Scale): string[] {
  const shares = Array.from({ length: STEPS }, (_, i) => i / (STEPS - 1));
  if (!(scale.high > scale.low)) return shares.map((t) => (t === 0.5 ? two(scale.low) : ""));
  return shares.map((t) => two(valueAt(t, scale)));
}

/**
 * Tiles from least to most, each over its value.
 *
 * @param id where the page's script changes the values: their ids are ID-0 to ID-4 and ID-unit
 */
export function tileScale(scale: Scale, unit: string, id?: string): Html {
  const tiles = tickWords(scale).map((word, i) => {
    const share = i / (STEPS - 1);
    const side = 20 * tileSide(share);
    const at = (11 - side / 2).toFixed(1);
    const value =
      id === undefined ? html`<span>${word}</span>` : html`<span id="${id}-${i}">${word}</span>`;
    return html`<span><svg viewBox="0 0 22 22" aria-hidden="true"><rect x="${at}" y="${at}" width="${side.toFixed(1)}" height="${side.toFixed(1)}" fill="${tileColour(share)}"/></svg>${value}</span>`;
  });
  return html`<p class="tile-scale"><span class="spoken">Scale, from small and dark to large and light:</span>${tiles}<span class="unit"${id !== undefined && html` id="${id}-unit"`}>${unit}</span></p>`;
}

/** Two digits, and all there are before the point. */
function two(value: number): string {
  return String(rounded(value, Math.abs(value) >= 100 ? 3 : 2) ?? 0);
}
