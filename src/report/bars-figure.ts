/** Lying bars in rows whose names stand above them, so that long names have room on narrow pages. */

import { cut, topNote, uprightLine } from "./band-figure.ts";
import { type Figure, MARGIN, plainLayout, type Trace } from "./figure.ts";
import { type Html, html, plotText } from "./html.ts";
import { rounded, three } from "./numbers.ts";
import { signedTicks } from "./ticks.ts";

/** One of the bars that each row may have. */
export interface BarWay {
  readonly name: string;
  /** a colour of the theme, as "--name" */
  readonly colour: string;
  readonly hatched: boolean;
}

export interface Bar {
  /** position in the list of ways */
  readonly way: number;
  readonly value: number;
  /** beside the bar's end */
  readonly text: string;
  /** what the label says */
  readonly words: string;
}

export interface BarRow {
  readonly name: string;
  /** behind the name where there is room */
  readonly more?: string;
  readonly bars: readonly Bar[];
}

export interface BarsFigureInput {
  readonly ways: readonly BarWay[];
  readonly rows: readonly BarRow[];
  /** of the axis, with its unit */
  readonly title: string;
  /** what lies to the left and to the right of 0 */
  readonly sides: readonly [left: string, right: string];
}

/** Thickness of a bar, where the upper of two begins, and the name's place above, of the room for a row. */
const THICKNESS = 0.26;
const FIRST = -0.2;
const ALONE = -0.1;
const NAME = -0.37;
/** Longer names are cut in the middle; the tables have them whole. */
const LONGEST = 46;
/** Room for figures beside the bars, of the axis. */
const ROOM = 0.3;

export function barsFigure({ ways, rows, title, sides }: BarsFigureInput): Figure {
  const traces = ways.map(({ name, colour, hatched }, k): Trace => {
    const own = rows.flatMap(({ bars }, i) =>
      bars.flatMap((b) => (b.way === k ? [{ ...b, at: i }] : [])),
    );
    return {
      type: "bar",
      orientation: "h",
      name,
      x: own.map((b) => rounded(b.value)),
      y: own.map((b) => b.at),
      width: THICKNESS,
      offset: (ways.length > 1 ? FIRST : ALONE) + k * 1.08 * THICKNESS,
      marker: {
        color: colour,
        ...(hatched && {
          pattern: { shape: "/", bgcolor: colour, fgcolor: "--surface", size: 8, solidity: 0.25 },
        }),
      },
      text: own.map((b) => ` ${plotText(b.text)} `),
      textposition: "outside",
      cliponaxis: false,
      customdata: own.map((b) => plotText(b.words)),
      hovertemplate: "%{customdata}<extra></extra>",
    };
  });
  const values = rows.flatMap((r) => r.bars.map((b) => b.value));
  const [low, high] = [Math.min(0, ...values), Math.max(0, ...values)];
  const span = high - low || 1;
  // a side without bars needs no figures
  const range = [low - (low < 0 ? ROOM : 0.04) * span, high + (high > 0 ? ROOM : 0.04) * span];
  const layout = plainLayout(
    { title: { text: plotText(title), standoff: 8 }, range, ...signedTicks(low, high, 6) },
    { visible: false, range: [rows.length - 0.5, -0.55], fixedrange: true },
    {
      margin: { ...MARGIN, t: 30 },
      hovermode: "closest",
      barmode: "overlay",
      shapes: [uprightLine(0, "solid")],
      annotations: [
        ...(low < 0 ? [topNote(0, `← ${sides[0]} `, { xanchor: "right" })] : []),
        ...(high > 0 ? [topNote(0, ` ${sides[1]} →`, { xanchor: "left" })] : []),
        ...rows.map(rowName),
      ],
    },
  );
  return { traces, layout };
}

function rowName({ name, more = "" }: BarRow, i: number) {
  const whole = `${name}${more}`;
  const fits = Array.from(whole).length <= LONGEST;
  return {
    x: 0,
    xref: "paper",
    xanchor: "left",
    y: i + NAME,
    text: plotText(fits ? whole : middleCut(name, LONGEST)),
    showarrow: false,
    font: { size: 12, color: "--ink" },
    bgcolor: "--surface",
    borderpad: 0,
  };
}

/** Names of inputs differ at their ends: what does not fit is left out of the middle. */
export function middleCut(name: string, longest: number): string {
  const signs = Array.from(name);
  if (signs.length <= longest) return name;
  const head = Math.floor((longest - 1) * 0.4);
  return `${cut(name, head + 1)}${signs.slice(signs.length - (longest - 1 - head)).join("")}`;
}

/** The ways for a legend. */
export function waysLegend(ways: readonly BarWay[]): Html {
  return html`<ul class="legend">${ways.map((w) => html`<li>${waySwatch(w)} ${w.name}</li>`)}</ul>`;
}

function waySwatch({ colour, hatched }: BarWay): Html {
  const strokes = [5, 13, 21, 29].map(
    (x) => html`<line x1="${x - 5}" y1="10" x2="${x + 5}" y2="0"/>`,
  );
  return html`<svg class="swatch" viewBox="0 0 34 10" aria-hidden="true"><rect width="34" height="10" style="fill: var(${colour})"/>${hatched && html`<g style="stroke: var(--surface)" stroke-width="2">${strokes}</g>`}</svg>`;
}

/** With its sign, two digits: for effects. */
export function effect(value: number): string {
  if (Math.abs(value) < 0.005) return "0";
  return `${value < 0 ? "\u2212" : "+"}${three(Math.abs(value), 2)}`;
}
