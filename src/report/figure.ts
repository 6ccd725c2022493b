/** What all charts share: traces and layout for the plot library, with colours named by purpose. */

import { type Html, html } from "./html.ts";

/**
 * A chart as plain data. Colours are written as "--name" and filled in by the page's script from the
 * light or the dark theme.
 */
export interface Figure {
  readonly traces: readonly Trace[];
  readonly layout: Readonly<Record<string, unknown>>;
  /** what the vertical axis has instead where the chart is narrow */
  readonly narrowAxis?: Readonly<Record<string, unknown>>;
}

/** The parts of a trace that are used here; the plot library knows many more. */
export interface Trace {
  readonly type: "scatter" | "bar";
  readonly mode?: "lines" | "markers" | "text";
  /** absent where the charts of a group share theirs */
  readonly x?: readonly (number | null)[];
  readonly y: readonly (number | null)[];
  readonly name?: string;
  readonly text?: readonly string[];
  readonly line?: Readonly<Record<string, unknown>>;
  readonly marker?: Readonly<Record<string, unknown>>;
  readonly hovertemplate?: string;
  readonly hoverinfo?: string;
  /** more about each point, for the label */
  readonly customdata?: readonly unknown[];
  /** of bars: lying, their thickness and where they lie beside their place on the axis */
  readonly orientation?: "h";
  readonly width?: number;
  readonly offset?: number;
  readonly textposition?: string | readonly string[];
  readonly cliponaxis?: boolean;
  readonly visible?: boolean;
  readonly connectgaps?: boolean;
  /** "y2" for an axis of its own */
  readonly yaxis?: string;
  readonly fill?: string;
  readonly fillcolor?: string;
  readonly opacity?: number;
  /** limits to the left and right of each point */
  readonly error_x?: Readonly<Record<string, unknown>>;
}

/** The figures that are there. */
export function thereOf(
  figures: Readonly<Record<string, Figure | undefined>>,
): Readonly<Record<string, Figure>> {
  const there = Object.entries(figures).filter(([, figure]) => figure !== undefined);
  return Object.fromEntries(there) as Record<string, Figure>;
}

/** Around a chart, pixels; below there is room for the axis' title and some air under it. */
export const MARGIN = { l: 12, r: 16, t: 34, b: 62 };

/** Annotations of this name are left out where a chart is narrow. */
export const WIDE_ONLY = "wide only";

/** Layout of a plain chart: no title (the page has one), no legend, quiet grid. */
export function plainLayout(
  x: Readonly<Record<string, unknown>>,
  y: Readonly<Record<string, unknown>>,
  more: Readonly<Record<string, unknown>> = {},
): Readonly<Record<string, unknown>> {
  const axis = {
    gridcolor: "--line",
    linecolor: "--muted",
    zeroline: false,
    ticks: "outside",
    tickcolor: "--muted",
    ticklen: 5,
    automargin: true,
    separatethousands: true,
  };
  return {
    paper_bgcolor: "rgba(0,0,0,0)",
    plot_bgcolor: "--surface",
    font: { family: "system-ui, sans-serif", size: 13, color: "--ink" },
    hoverlabel: {
      bgcolor: "--surface",
      bordercolor: "--muted",
      font: { color: "--ink" },
      align: "left",
      namelength: -1,
    },
    separators: ".\u202f",
    showlegend: false,
    margin: MARGIN,
    xaxis: { ...axis, ...x },
    yaxis: { ...axis, ...y },
    ...more,
  };
}

/**
 * The place of a chart in the page. The script draws into it; before, or without a script, the
 * `finding` stands there: what the chart shows, in words. `rows` gives a chart of bars its height.
 */
export function chartBox(id: string, className: string, finding: string, rows?: number): Html {
  return html`<div class="chart ${className}" id="${id}" role="img" aria-label="${finding}"${rows !== undefined && html` style="--rows: ${rows}"`}><p class="waiting">${finding}</p></div>
${saveButtons(id)}`;
}

/** Saves a figure of the page, or a drawing, as a file. */
export function saveButtons(id: string): Html {
  const button = (format: string) =>
    html`<button type="button" data-save="${format}" data-of="${id}" aria-label="save this figure as ${format.toUpperCase()}">${format.toUpperCase()}</button>`;
  return html`<p class="save"><span role="status"></span> <span aria-hidden="true">save as</span> ${button("svg")} ${button("png")}</p>`;
}
