/** The plot library that the page carries with it. */

import { readFileSync } from "node:fs";
import { createRequire } from "node:module";

/** File name of the library where it lies beside pages; tells its version. */
export function libraryFile(): string {
  const require = createRequire(import.meta.url);
  const { version } = require("plotly.js-dist-min/package.json") as { readonly version: string };
  return `plotly-${version}.min.js`;
}

/** Source text of the plot library as one script for browsers. */
export function readPlotly(): string {
  const require = createRequire(import.meta.url);
  return readFileSync(require.resolve("plotly.js-dist-min/plotly.min.js"), "utf8");
}
