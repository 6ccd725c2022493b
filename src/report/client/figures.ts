/** Plain figures as they are handed to the plot library. Runs in the page: functions stand alone. */

import type { Figure } from "../figure.ts";
import type { Theme } from "../palette.ts";
import type { DrawContext } from "./host.ts";
import type { Element } from "./types.ts";

/** A copy of plain data with the colours' names ("--ink") replaced by the theme's colours. */
export function themed<T>(value: T, theme: Theme): T {
  const colours = theme as unknown as Record<string, string>;
  const fill = (v: unknown): unknown => {
    if (typeof v === "string") return v.startsWith("--") ? (colours[v.slice(2)] ?? v) : v;
    if (Array.isArray(v)) return v.map(fill);
    if (typeof v !== "object" || v === null) return v;
    return Object.fromEntries(Object.entries(v).map(([k, e]) => [k, fill(e)]));
  };
  return fill(value) as T;
}

/**
 * Ticks of a logarithmic axis that lie at least `gap` apart, the first one kept; both in shares of the
 * axis.
 */
export function fewerTicks(
  ticks: { readonly tickvals: readonly number[]; readonly ticktext: readonly string[] },
  range: readonly number[],
  gap: number,
): { tickvals: number[]; ticktext: string[] } {
  const tickvals: number[] = [];
  const ticktext: string[] = [];
  let last = Number.NEGATIVE_INFINITY;
  ticks.tickvals.forEach((value, i) => {
    const at = (Math.log10(value) - range[0]) / (range[1] - range[0]);
    if (at - last < gap) return;
    last = at;
    tickvals.push(value);
    ticktext.push(ticks.ticktext[i]);
  });
  return { tickvals, ticktext };
}

/** What stands beside a figure where it is drawn. */
export interface Fitting {
  readonly themed: typeof themed;
  readonly fewerTicks: typeof fewerTicks;
  /** name of annotations that narrow charts leave out */
  readonly wideOnly: string;
  /** a finger on the chart must be able to scroll the page */
  readonly touch: boolean;
}

/** The layout in the colours and at the width of its place. */
export function fittedLayout(
  { layout, narrowAxis }: Figure,
  { theme, narrow }: DrawContext,
  width: number,
  { themed, fewerTicks, wideOnly, touch }: Fitting,
): Record<string, unknown> {
  const coloured = themed(layout, theme) as Record<string, unknown>;
  const fitted = { ...coloured, dragmode: touch ? false : "zoom" };
  if (!narrow) return fitted;
  const x = coloured.xaxis as Record<string, unknown>;
  const ticks =
    x.type === "log" && x.tickvals !== undefined
      ? fewerTicks(
          x as unknown as { tickvals: number[]; ticktext: string[] },
          x.range as number[],
          54 / Math.max(120, width - 120),
        )
      : { nticks: 4 };
  const smaller = (a: Record<string, unknown>) => ({
    ...a,
    font: { ...(a.font as object), size: 11 },
  });
  return {
    ...fitted,
    font: { ...(coloured.font as object), size: 11 },
    xaxis: { ...x, tickangle: 0, ...ticks },
    yaxis: { ...(coloured.yaxis as object), ...(themed(narrowAxis ?? {}, theme) as object) },
    annotations: ((coloured.annotations ?? []) as Record<string, unknown>[])
      .filter((a) => a.name !== wideOnly)
      .map(smaller),
  };
}

/** Draws a figure into its place. */
export function drawFigure(
  at: Element,
  figure: Figure,
  c: DrawContext,
  fitting: Fitting & { readonly fittedLayout: typeof fittedLayout },
): Promise<unknown> {
  const layout = fitting.fittedLayout(figure, c, at.clientWidth, fitting);
  const config = { displayModeBar: false, responsive: true, scrollZoom: false };
  return c.Plotly.react(at, fitting.themed(figure.traces, c.theme), layout, config);
}
