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
import type { Browser, PageData, PageResponse } from "./types.ts";
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
  let packed: PageResponse;
  try {
    packed = await tools.unpack(browser, "report-data");
  } catch (problem) {
    for (const place of browser.document.querySelectorAll(".waiting")) {
      place.textContent = `${place.textContent} (${(problem as Error).message})`;
    }
    // hides what has no effect
    browser.document.body.setAttribute("data-still", "");
    return;
  }
  const data = JSON.parse(await packed.text()) as PageData;
  const host = starters.createHost(browser, data, starters.libraryLoader(browser, tools));
  /** What one figure's script cannot do must not stop the others'. */
  const begin = (starter: () => void) => {
    try {
      starter();
    } catch (problem) {
      browser.setTimeout(() => {
        throw problem;
      }, 0);
    }
  };
  begin(() => starters.startSaving(browser, data, host));
  const fitting = starters.startCharts(browser, data, tools, host);
  const { campbell, spectra, maps, shapes } = data;
  if (campbell) begin(() => starters.startCampbell(data, campbell, tools, host, fitting));
  if (spectra) begin(() => starters.startSpectra(browser, data, spectra, tools, host, fitting));
  if (maps) begin(() => starters.startMaps(browser, maps, tools, host));
  if (shapes) {
    begin(() => starters.startModes(browser, shapes, tools, host));
    begin(() => starters.startFrame(browser, shapes, tools, host));
  }
}
