/** The flat charts. Runs in the page: functions get from outside only what they are handed. */

import type { Figure } from "../figure.ts";
import type { Theme } from "../palette.ts";
import type { Browser, DrawContext, Element, Host, PageData, Tools } from "./types.ts";

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

/** Places the flat charts and connects their controls. */
export function startCharts(browser: Browser, data: PageData, tools: Tools, host: Host): void {
  const { document } = browser;
  const touch = browser.matchMedia("(pointer: coarse)").matches;
  // A finger on a chart must be able to scroll the page.
  const config = { displayModeBar: false, responsive: false, scrollZoom: false };
  const draw = (at: Element, figure: Figure, { theme, Plotly, narrow, text }: DrawContext) => {
    const coloured = tools.themed(figure.layout, theme);
    const layout = {
      ...coloured,
      width: at.clientWidth,
      height: at.clientHeight,
      dragmode: touch ? false : "zoom",
      font: { ...(coloured.font as object), size: (narrow ? 11 : 13) * text },
      ...(narrow && {
        xaxis: { ...(coloured.xaxis as object), nticks: 4, tickangle: 0 },
        yaxis: { ...(coloured.yaxis as object), ...tools.themed(figure.narrowAxis, theme) },
        annotations: (coloured.annotations as { readonly name?: string }[] | undefined)?.filter(
          (a) => a.name !== data.wideOnly,
        ),
      }),
    };
    return Plotly.react(at, tools.themed(figure.traces, theme), layout, config);
  };
  const boxes = Array.from(document.querySelectorAll("input[name=curve]"));
  const switches = Array.from(document.querySelectorAll("input[name=quantity]"));
  const { spectra } = data;
  const spectrum = (both: NonNullable<typeof spectra>): Figure => {
    const accel = switches.some((s) => s.checked && s.value === "accel");
    const figure = accel ? both.accel : both.gyro;
    const traces = figure.traces.map((t, i) => ({
      ...t,
      x: both.x,
      visible: boxes[i]?.checked ?? true,
    }));
    return { ...figure, traces };
  };
  const plain = { ...data.charts, "campbell-chart": data.campbell, "filters-chart": data.filters };
  for (const [id, figure] of Object.entries(plain)) {
    if (figure !== undefined && document.getElementById(id) !== null) {
      host.place(id, (at, context) => draw(at, figure, context));
    }
  }
  if (spectra === undefined) return;
  const place = host.place("spectra-chart", (at, c) => draw(at, spectrum(spectra), c));
  for (const control of [...boxes, ...switches]) control.addEventListener("change", place.redraw);
}
