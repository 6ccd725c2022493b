/** Runs in the page once all of it is there. */

import type { Theme } from "../palette.ts";
import type { startCharts } from "./charts.ts";
import type { startMaps } from "./maps.ts";
import type { startModes } from "./modes.ts";
import type { Browser, PageData, Tools } from "./types.ts";

export interface Starters {
  readonly startCharts: typeof startCharts;
  readonly startModes: typeof startModes;
  readonly startMaps: typeof startMaps;
}

/** Draws everything, again whenever the scheme changes, and in the light theme for printing. */
export function start(browser: Browser, tools: Tools, starters: Starters): void {
  const { document } = browser;
  const source = document.getElementById("report-data");
  if (source === null) throw new Error("the page has no data");
  const data = JSON.parse(source.textContent ?? "") as PageData;
  const dark = browser.matchMedia("(prefers-color-scheme: dark)");
  const charts = starters.startCharts(browser, data, tools);
  const maps = data.maps && starters.startMaps(browser, data.maps, tools);
  const modes = data.shapes && starters.startModes(browser, data.shapes, tools);
  const draw = (theme: Theme, everything = false) => {
    charts(theme, everything);
    maps?.(theme);
    modes?.(theme);
  };
  const redraw = () => draw(dark.matches ? data.themes.dark : data.themes.light);
  dark.addEventListener("change", redraw);
  browser.addEventListener("beforeprint", () => {
    for (const folded of document.querySelectorAll("details")) folded.open = true;
    draw(data.themes.light, true);
  });
  browser.addEventListener("afterprint", redraw);
  redraw();
}
