/** Points with bands, lying, in rows that have names: one series of marks for each variant. */

import { type Figure, MARGIN, plainLayout, type Trace } from "./figure.ts";
import { plotText } from "./html.ts";
import { rounded } from "./numbers.ts";
import { seriesMark } from "./series-marks.ts";

/** Names longer than this are cut beside the chart; the tables have them whole. */
const LONGEST_NAME = 26;
/** Rows of a group are this far apart; a group takes 1. */
const SPREAD = 0.72;
const MARK = 10;

export interface BandMark {
  /** place of the row, from 0; between rows for the variants of a group */
  readonly at: number;
  readonly series: number;
  readonly middle: number;
  readonly low?: number;
  readonly high?: number;
  /** what the label says */
  readonly words: string;
  /** beside the mark */
  readonly note?: string;
  /** the note stands to the left: at the right end of the chart */
  readonly noteBefore?: boolean;
}

export interface Row {
  readonly name: string;
  /** instead, where the chart is narrow */
  readonly short?: string;
}

export interface BandFigureInput {
  readonly rows: readonly Row[];
  readonly marks: readonly BandMark[];
  /** names of the series */
  readonly series: readonly string[];
  /** longest name beside the chart, in signs */
  readonly longestName?: number;
  readonly xaxis: Readonly<Record<string, unknown>>;
  /** drawn before the marks */
  readonly under?: readonly Trace[];
  readonly shapes?: readonly unknown[];
  readonly annotations?: readonly unknown[];
  readonly topMargin?: number;
}

/** Where the nth of so many variants lies in its row. */
export function placeInRow(row: number, n: number, of: number): number {
  return of < 2 ? row : row + SPREAD * (n / (of - 1) - 0.5) * Math.min(1, of / 4);
}

export function bandFigure(input: BandFigureInput): Figure {
  const { rows, marks, series } = input;
  const at = rows.map((_, i) => i);
  const traces = series.map((name, n): Trace => {
    const own = marks.filter((m) => m.series === n);
    const { colour, symbol } = seriesMark(n);
    const width = (of: (m: BandMark) => number | undefined) =>
      own.map((m) => rounded(Math.abs((of(m) ?? m.middle) - m.middle)));
    return {
      type: "scatter",
      mode: "markers",
      name: plotText(name),
      x: own.map((m) => rounded(m.middle)),
      y: own.map((m) => rounded(m.at)),
      marker: { color: colour, symbol, size: MARK, line: { width: 1.5, color: colour } },
      error_x: {
        type: "data",
        symmetric: false,
        array: width((m) => m.high),
        arrayminus: width((m) => m.low),
        color: colour,
        thickness: 2.2,
        width: 5,
        visible: own.some((m) => m.low !== undefined),
      },
      customdata: own.map((m) => plotText(m.words)),
      hovertemplate: "%{customdata}<extra></extra>",
    };
  });
  const noted = marks.filter((m) => m.note !== undefined);
  const notes: Trace = {
    type: "scatter",
    mode: "text",
    x: noted.map((m) => rounded(m.high ?? m.middle)),
    y: noted.map((m) => rounded(m.at)),
    text: noted.map((m) => `\u2002\u2002${plotText(m.note ?? "")}\u2002\u2002`),
    textposition: noted.map((m) => (m.noteBefore ? "middle left" : "middle right")),
    hoverinfo: "skip",
    cliponaxis: false,
  };
  const layout = plainLayout(
    input.xaxis,
    {
      tickmode: "array",
      tickvals: at,
      ticktext: rows.map((r) => plotText(cut(r.name, input.longestName))),
      range: [rows.length - 0.4, -0.6],
      ticklen: 0,
      showgrid: false,
      fixedrange: true,
    },
    {
      margin: { ...MARGIN, t: input.topMargin ?? 12 },
      hovermode: "closest",
      shapes: [...stripes(rows.length), ...(input.shapes ?? [])],
      annotations: input.annotations ?? [],
    },
  );
  return {
    traces: [...(input.under ?? []), ...traces, ...(noted.length > 0 ? [notes] : [])],
    layout,
    narrowAxis: { ticktext: rows.map((r) => plotText(cut(r.short ?? r.name, SHORTEST))) },
  };
}

/** Names beside a narrow chart. */
const SHORTEST = 12;

/** Every other row on another ground, so that the eye stays in its row. */
function stripes(rows: number) {
  return Array.from({ length: Math.floor(rows / 2) }, (_, i) => ({
    type: "rect",
    layer: "below",
    xref: "paper",
    x0: 0,
    x1: 1,
    y0: 2 * i + 0.5,
    y1: 2 * i + 1.5,
    fillcolor: "--sunken",
    opacity: 0.45,
    line: { width: 0 },
  }));
}

/** An upright line through the whole chart. */
export function uprightLine(x: number, dash = "dot", colour = "--muted") {
  const at = rounded(x);
  const line = { color: colour, width: 1.4, dash };
  return { type: "line", layer: "below", yref: "paper", x0: at, x1: at, y0: 0, y1: 1, line };
}

/** A band of values through the whole chart. */
export function uprightBand(from: number, to: number, colour: string, opacity = 0.8) {
  return {
    type: "rect",
    layer: "below",
    yref: "paper",
    x0: rounded(from),
    x1: rounded(to),
    y0: 0,
    y1: 1,
    fillcolor: colour,
    opacity,
    line: { width: 0 },
  };
}

/** Words at the top of an upright line. */
export function topNote(
  x: number | null,
  text: string,
  more: Readonly<Record<string, unknown>> = {},
) {
  return {
    x,
    y: 1,
    yref: "paper",
    yanchor: "bottom",
    text: plotText(text),
    showarrow: false,
    font: { size: 12, color: "--muted" },
    ...more,
  };
}

export function cut(name: string, longest = LONGEST_NAME): string {
  const signs = Array.from(name);
  return signs.length > longest ? `${signs.slice(0, longest - 1).join("")}…` : name;
}
