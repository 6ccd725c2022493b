/** Runs in the page once all of it is there. */

import type { startCharts } from "./charts.ts";
import type { startContents } from "./contents.ts";
import type { createHost } from "./host.ts";
import type { libraryLoader } from "./library.ts";
import type { startMaps } from "./maps.ts";
import type { startModes } from "./modes.ts";
import type { startSaving } from "./save.ts";
import type { Browser, PageData, Tools } from "./types.ts";
import type { startWords } from "./words.ts";

export interface Starters {
  readonly createHost: typeof createHost;
  readonly libraryLoader: typeof libraryLoader;
  readonly startCharts: typeof startCharts;
  readonly startContents: typeof startContents;
  readonly startMaps: typeof startMaps;
  readonly startModes: typeof startModes;
  readonly startSaving: typeof startSaving;
  readonly startWords: typeof startWords;
}

/** Gives every figure its place and every control its effect. */
export function start(browser: Browser, tools: Tools, starters: Starters): void {
  const source = browser.document.getElementById("report-data");
  if (source === null) throw new Error("the page has no data");
  const data = JSON.parse(source.textContent ?? "") as PageData;
  const host = starters.createHost(browser, data, starters.libraryLoader(browser));
  starters.startCharts(browser, data, tools, host);
  if (data.maps) starters.startMaps(browser, data.maps, tools, host);
  if (data.shapes) starters.startModes(browser, data.shapes, tools, host);
  starters.startSaving(browser, data, host);
  starters.startWords(browser);
  starters.startContents(browser);
}
