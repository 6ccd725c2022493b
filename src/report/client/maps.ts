/** The maps of the plates. Runs in the page: gets from outside only what it is handed. */

import type { MapsData } from "../map-data.ts";
import type { Tools } from "./tools.ts";
import type { Browser, DrawContext, Element, Host } from "./types.ts";

/**
 * Sides of squares, pixels: the place with most fills its room, the one with least half of its width,
 * so that they differ without colour as well.
 *
 * @param shares from the least (0) to the most (1)
 * @param room pixels that every square has, on all plates
 */
export function squareSizes(shares: readonly number[], room: number): number[] {
  return shares.map((share) => room * (0.5 + 0.46 * share));
}

/** Places the maps and connects their switch. */
export function startMaps(browser: Browser, data: MapsData, tools: Tools, host: Host): void {
  const { document } = browser;
  const element = (id: string) => {
    const found = document.getElementById(id);
    if (found === null) throw new Error(`the page has no ${id}`);
    return found;
  };
  const words = element("map-words");
  const switches = Array.from(document.querySelectorAll("input[name=map-quantity]"));
  const config = { displayModeBar: false, responsive: false, scrollZoom: false };
  const column = () => {
    const chosen = switches.find((s) => s.checked)?.value;
    return Math.max(
      0,
      data.quantities.findIndex((q) => q.key === chosen),
    );
  };
  const draw = (at: Element, i: number, { theme, Plotly }: DrawContext) => {
    const { figure, findings, shares } = data.maps[i];
    at.setAttribute("aria-label", findings[column()]);
    const layout = tools.themed(figure.layout, theme) as {
      readonly margin: {
        readonly l: number;
        readonly r: number;
        readonly t: number;
        readonly b: number;
      };
      readonly xaxis: { readonly range: readonly number[] };
      readonly yaxis: { readonly range: readonly number[] };
    };
    const { margin, xaxis, yaxis } = layout;
    const scale = Math.min(
      (at.clientWidth - margin.l - margin.r) / Math.abs(xaxis.range[1] - xaxis.range[0]),
      (at.clientHeight - margin.t - margin.b) / Math.abs(yaxis.range[1] - yaxis.range[0]),
    );
    const [squares, ...marks] = tools.themed(figure.traces, theme);
    const values = shares[column()];
    const marker = {
      ...squares.marker,
      color: values,
      colorscale: data.scale,
      cmin: 0,
      cmax: 1,
      size: tools.squareSizes(values, Math.max(6, data.room * scale)),
    };
    const size = { width: at.clientWidth, height: at.clientHeight };
    return Plotly.react(at, [{ ...squares, marker }, ...marks], { ...layout, ...size }, config);
  };
  const places = data.maps.map(({ id }, i) =>
    host.place(id, (at, context) => draw(at, i, context), { paper: 320 }),
  );
  const say = () => {
    const { ticks, unit, words: said } = data.quantities[column()];
    ticks.forEach((tick, i) => {
      element(`map-tick-${i}`).textContent = tick;
    });
    element("map-tick-unit").textContent = unit;
    if (words.textContent !== said) words.textContent = said;
  };
  for (const control of switches) {
    control.addEventListener("change", () => {
      say();
      for (const place of places) place.redraw();
    });
  }
  // A browser that comes back to the page may have kept another choice.
  say();
}
