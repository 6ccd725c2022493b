/** Plain figures as the plot library gets them. Runs in the page: functions stand alone. */

import type { Figure } from "../figure.ts";
import type { Theme } from "../palette.ts";

/** What a figure is told of its place, and what draws it there. */
export interface Drawing<At> {
  readonly theme: Theme;
  readonly narrow: boolean;
  /** size of the page's text, 1 where it is 16 px */
  readonly text: number;
  readonly Plotly: {
    react(at: At, traces: readonly unknown[], layout: unknown, config: unknown): Promise<unknown>;
  };
}

interface Sized {
  readonly clientWidth: number;
  readonly clientHeight: number;
}

export interface FittingTools {
  readonly themed: typeof themed;
  readonly fewerTicks: typeof fewerTicks;
  readonly fittedLayout: typeof fittedLayout;
}

/** A copy of plain data with the colours' names ("--ink") replaced by the theme's colours. */
export function themed<T>(value: T, theme: Theme): T {
  const colours = theme as unknown as Record<string, string>;
  const fill = (v: unknown): unknown => {
    if (typeof v === "string") {
      const name = v.slice(2);
      return v.startsWith("--") && Object.hasOwn(colours, name) ? colours[name] : v;
    }
    if (Array.isArray(v)) return v.map(fill);
    if (typeof v !== "object" || v === null || ArrayBuffer.isView(v)) return v;
    return Object.fromEntries(Object.entries(v).map(([k, e]) => [k, fill(e)]));
  };
  return fill(value) as T;
}

/** An axis with ticks written out. */
export interface TickedAxis {
  readonly type?: string;
  readonly range: readonly number[];
  readonly tickvals: readonly number[];
  readonly ticktext: readonly string[];
}

/** The ticks of a logarithmic axis that lie at least `gap` apart, a share of the axis; the first stays. */
export function fewerTicks(
  { range, tickvals, ticktext }: TickedAxis,
  gap: number,
): Pick<TickedAxis, "tickvals" | "ticktext"> {
  let last = Number.NEGATIVE_INFINITY;
  const kept = tickvals.map((value) => {
    const at = (Math.log10(value) - range[0]) / (range[1] - range[0]);
    if (at - last < gap) return false;
    last = at;
    return true;
  });
  return {
    tickvals: tickvals.filter((_, i) => kept[i]),
    ticktext: ticktext.filter((_, i) => kept[i]),
  };
}

/** What the page is, for its figures. */
export interface Fitting {
  /** name of annotations that narrow charts leave out */
  readonly wideOnly: string;
  /** a finger on a chart must be able to scroll the page */
  readonly touch: boolean;
}

/** A figure's layout in the colours of the page and for the width of its place. */
export function fittedLayout(
  { layout, narrowAxis }: Figure,
  { theme, narrow, text }: Pick<Drawing<never>, "theme" | "narrow" | "text">,
  { clientWidth: width, clientHeight: height }: Sized,
  { themed, fewerTicks }: Pick<FittingTools, "themed" | "fewerTicks">,
  { wideOnly, touch }: Fitting,
): Record<string, unknown> {
  type Note = { readonly name?: string; readonly font?: { readonly size?: number } };
  const { annotations, font, xaxis, yaxis, margin, ...rest } = themed(layout, theme) as Record<
    string,
    unknown
  >;
  const notes = (annotations ?? []) as readonly Note[];
  const size = (wide: number) => (narrow ? Math.min(wide, 11) : wide) * text;
  const x = xaxis as TickedAxis;
  const ticks =
    x.type === "log" && x.tickvals !== undefined
      ? fewerTicks(x, (54 * text) / Math.max(120, width - 120))
      : narrow
        ? { nticks: 4 }
        : {};
  return {
    ...rest,
    width,
    height,
    // Words beside and below the chart need room in their own size.
    margin: Object.fromEntries(
      Object.entries((margin ?? {}) as Record<string, number>).map(([k, v]) => [
        k,
        Math.round(v * Math.max(1, text)),
      ]),
    ),
    dragmode: touch ? false : "zoom",
    font: { ...(font as object), size: size(13) },
    xaxis: { ...x, ...ticks, ...(narrow && { tickangle: 0 }) },
    yaxis: { ...(yaxis as object), ...(narrow && themed(narrowAxis ?? {}, theme)) },
    annotations: notes
      .filter((a) => !narrow || a.name !== wideOnly)
      .map((a) => ({ ...a, font: { ...a.font, size: size(a.font?.size ?? 12) } })),
  };
}

/** Draws a figure in its place. */
export function drawFigure<At extends Sized>(
  at: At,
  figure: Figure,
  c: Drawing<At>,
  tools: FittingTools,
  fitting: Fitting,
): Promise<unknown> {
  const config = { displayModeBar: false, responsive: false, scrollZoom: false };
  const layout = tools.fittedLayout(figure, c, at, tools, fitting);
  return c.Plotly.react(at, tools.themed(figure.traces, c.theme), layout, config);
}
