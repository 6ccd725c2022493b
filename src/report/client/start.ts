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
import type { Tools } from "./tools.ts";
import type { Browser, PageData } from "./types.ts";
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
export async function start(browser: Browser, tools: Tools, starters: Starters): Promise<void> {
  starters.startWords(browser);
  starters.startContents(browser);
  // The words are there without it; where it cannot be unpacked they stay alone.
  if (browser.DecompressionStream === undefined) return;
  const packed = await tools.unpack(browser, "report-data");
  const data = JSON.parse(await packed.text()) as PageData;
  const host = starters.createHost(browser, data, starters.libraryLoader(browser, tools));
  const fitting = starters.startCharts(browser, data, tools, host);
  if (data.campbell) starters.startCampbell(data, data.campbell, tools, host, fitting);
  if (data.spectra) starters.startSpectra(browser, data, data.spectra, tools, host, fitting);
  if (data.maps) starters.startMaps(browser, data.maps, tools, host);
  if (data.shapes) {
    starters.startModes(browser, data.shapes, tools, host);
    starters.startFrame(browser, data.shapes, tools, host);
  }
  starters.startSaving(browser, data, host);
}
