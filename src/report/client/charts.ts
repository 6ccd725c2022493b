/** The flat charts. Runs in the page: functions get from outside only what they are handed. */

import type { Figure } from "../figure.ts";
import type { Theme } from "../palette.ts";
import type { Browser, Element, PageData, Tools } from "./types.ts";

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

/** Draws the flat charts and connects their controls; returns what draws them again in a theme. */
export function startCharts(browser: Browser, data: PageData, tools: Tools) {
  const { Plotly, document } = browser;
  const touch = browser.matchMedia("(pointer: coarse)").matches;
  // A finger on a chart must be able to scroll the page.
  const config = { displayModeBar: false, responsive: true, scrollZoom: false };
  const draw = (id: string, figure: Figure | undefined, theme: Theme) => {
    const at = document.getElementById(id);
    if (at === null || figure === undefined) return;
    const narrow = at.clientWidth < 520;
    const coloured = tools.themed(figure.layout, theme);
    const layout = {
      ...coloured,
      dragmode: touch ? false : "zoom",
      ...(narrow && {
        font: { ...(coloured.font as object), size: 11 },
        xaxis: { ...(coloured.xaxis as object), nticks: 4, tickangle: 0 },
        yaxis: { ...(coloured.yaxis as object), ...tools.themed(figure.narrowAxis, theme) },
        annotations: (coloured.annotations as { readonly name?: string }[] | undefined)?.filter(
          (a) => a.name !== data.wideOnly,
        ),
      }),
    };
    Plotly.react(at, tools.themed(figure.traces, theme), layout, config);
  };
  const boxes = Array.from(document.querySelectorAll("input[name=curve]"));
  const switches = Array.from(document.querySelectorAll("input[name=quantity]"));
  const spectrum = (): Figure | undefined => {
    const { spectra } = data;
    if (spectra === undefined) return undefined;
    const accel = switches.some((s) => s.checked && s.value === "accel");
    const figure = accel ? spectra.accel : spectra.gyro;
    const traces = figure.traces.map((t, i) => ({
      ...t,
      x: spectra.x,
      visible: boxes[i]?.checked ?? true,
    }));
    return { ...figure, traces };
  };
  let shown = data.themes.light;
  const plain = Object.entries(data.charts ?? {});
  const drawn = new Set<string>();
  /** @param everything those that were never in sight too, for printing */
  const redraw = (theme: Theme, everything = false) => {
    shown = theme;
    for (const [id, figure] of plain) {
      if (everything) drawn.add(id);
      if (drawn.has(id)) draw(id, figure, theme);
    }
    draw("campbell-chart", data.campbell, theme);
    draw("spectra-chart", spectrum(), theme);
    draw("filters-chart", data.filters, theme);
  };
  for (const control of [...boxes, ...switches]) {
    control.addEventListener("change", () => draw("spectra-chart", spectrum(), shown));
  }
  for (const waiting of document.querySelectorAll(".chart.tall, .chart.bars"))
    (waiting as Element).replaceChildren();
  for (const [id, figure] of plain) {
    const at = document.getElementById(id);
    if (at === null) continue;
    const seen = (entries: readonly { readonly isIntersecting: boolean }[]) => {
      if (drawn.has(id) || !entries.some((e) => e.isIntersecting)) return;
      drawn.add(id);
      draw(id, figure, shown);
    };
    // A little before it comes into sight.
    new browser.IntersectionObserver(seen, { rootMargin: "400px" }).observe(at);
  }
  return redraw;
}
