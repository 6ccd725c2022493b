/** The charts that need no code of their own. Runs in the page: gets from outside only what it is handed. */

import type { Fitting } from "./figures.ts";
import type { Tools } from "./tools.ts";
import type { Browser, Host, PageData } from "./types.ts";

/** Places the charts that need no code of their own. */
export function startCharts(browser: Browser, data: PageData, tools: Tools, host: Host): Fitting {
  const touch = browser.matchMedia("(pointer: coarse)").matches;
  const fitting = { wideOnly: data.wideOnly, touch };
  for (const [id, figure] of Object.entries(data.charts ?? {})) {
    if (browser.document.getElementById(id) === null) continue;
    host.place(id, (at, c) => tools.drawFigure(at, figure, c, tools, fitting));
  }
  return fitting;
}
