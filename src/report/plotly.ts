/** The plot library that the page carries with it. */

import { readFileSync } from "node:fs";
import { createRequire } from "node:module";

/** Source text of the plot library as one script for browsers. */
export function readPlotly(): string {
  const require = createRequire(import.meta.url);
  return readFileSync(require.resolve("plotly.js-dist-min/plotly.min.js"), "utf8");
}
