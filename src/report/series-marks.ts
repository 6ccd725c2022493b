/** Marks that tell series of points apart by shape as well as by colour. */

import { type Html, html } from "./html.ts";
import { seriesStyle } from "./palette.ts";

export interface SeriesMark {
  /** a colour of the theme, as "--name" */
  readonly colour: string;
  /** as the plot library calls it */
  readonly symbol: string;
}

/** Shapes as the plot library calls them, and their outlines on a square of 16. */
const SHAPES: readonly (readonly [symbol: string, outline: string])[] = [
  ["circle", "M8 2A6 6 0 0 1 8 14A6 6 0 0 1 8 2Z"],
  ["square", "M2.5 2.5H13.5V13.5H2.5Z"],
  ["diamond", "M8 0.5L15.5 8L8 15.5L0.5 8Z"],
  ["triangle-up", "M8 1.5L15 14H1Z"],
  ["cross", "M5.7 1H10.3V5.7H15V10.3H10.3V15H5.7V10.3H1V5.7H5.7Z"],
  ["triangle-down", "M8 14.5L15 2H1Z"],
  ["hourglass", "M2 1.5H14L2 14.5H14Z"],
  ["star", "M8 1L9.8 6.1L15 6.1L10.9 9.3L12.4 14.4L8 11.4L3.6 14.4L5.1 9.3L1 6.1L6.2 6.1Z"],
];

/** Filled, then open; the two together repeat after sixteen. */
export function seriesMark(n: number): SeriesMark {
  const open = Math.floor(n / SHAPES.length) % 2 === 1 ? "-open" : "";
  return { colour: seriesStyle(n).colour, symbol: `${SHAPES[n % SHAPES.length][0]}${open}` };
}

/** The same mark for a legend. */
export function markSymbol(n: number): Html {
  const { colour, symbol } = seriesMark(n);
  const fill = symbol.endsWith("-open") ? "none" : `var(${colour})`;
  return html`<svg class="symbol" viewBox="0 0 16 16" aria-hidden="true"><path d="${SHAPES[n % SHAPES.length][1]}" style="fill: ${fill}; stroke: var(${colour})" stroke-width="1.6"/></svg>`;
}

/** Which mark is whose. */
export function marksLegend(names: readonly string[]): Html {
  return html`<ul class="legend">${names.map((n, i) => html`<li>${markSymbol(i)} <bdi>${n}</bdi></li>`)}</ul>`;
}

/** The line of a curve, as it stands in the chart. */
export function lineSwatch(n: number): Html {
  const { colour, strokes } = seriesStyle(n);
  return html`<svg class="swatch" viewBox="0 0 34 10" aria-hidden="true"><line x1="1" y1="5" x2="33" y2="5" style="stroke: var(${colour})" stroke-width="3" stroke-dasharray="${strokes}"/></svg>`;
}
