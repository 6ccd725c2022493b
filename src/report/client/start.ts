/** Runs in the page once all of it is there. */

import type { startCampbell } from "./campbell.ts";
import type { startCharts } from "./charts.ts";
import type { startContents } from "./contents.ts";
import type { startFrame } from "./frame-view.ts";
import type { createHost } from "./host.ts";
import type { libraryLoader } from "./library.ts";
import type { startMaps } from "./maps.ts";
import type { startModes } from "./modes.ts";
import type { startSaving } from "./save.ts";
import type { startSpectra } from "./spectra.ts";
import type { Browser, PageData, Tools } from "./types.ts";
import type { startWords } from "./words.ts";

export interface Starters {
  readonly createHost: typeof createHost;
  readonly libraryLoader: typeof libraryLoader;
  readonly startCampbell: typeof startCampbell;
  readonly startCharts: typeof startCharts;
  readonly startContents: typeof startContents;
  readonly startFrame: typeof startFrame;
  readonly startMaps: typeof startMaps;
  readonly startModes: typeof startModes;
  readonly startSaving: typeof startSaving;
  readonly startSpectra: typeof startSpectra;
  readonly startWords: typeof startWords;
}

/** Gives every figure its place and every control its effect. */
export function start(browser: Browser, tools: Tools, starters: Starters): void {
  const source = browser.document.getElementById("report-data");
  if (source === null) throw new Error("the page has no data");
  const data = JSON.parse(source.textContent ?? "") as PageData;
  const host = starters.createHost(browser, data, starters.libraryLoader(browser));
  const fitting = starters.startCharts(browser, data, tools, host);
  if (data.campbell) starters.startCampbell(data, data.campbell, tools, host, fitting);
  if (data.spectra) starters.startSpectra(browser, data, data.spectra, tools, host, fitting);
  if (data.maps) starters.startMaps(browser, data.maps, tools, host);
  if (data.shapes) {
    starters.startModes(browser, data.shapes, tools, host);
    starters.startFrame(browser, data.shapes, tools, host);
  }
  starters.startSaving(browser, data, host);
  starters.startWords(browser);
  starters.startContents(browser);
}
