/**
 * The page's own script as text.
 *
 * It is written as ordinary functions in client/, which the compiler checks and tests call, and put
 * into the page by their own source text (Function.prototype.toString). The other ways were worse: a
 * program in a template string is checked by nobody, and a file of its own would need a bundler and a
 * path that holds before and after compilation. The price: such a function sees nothing of its module,
 * so it takes what it needs as arguments and imports types only.
 */

import { startCharts, themed } from "./client/charts.ts";
import { lineVertices, shapeTraces, shapeUpdate, vertexMotion } from "./client/geometry.ts";
import { squareSizes, startMaps } from "./client/maps.ts";
import { startModes } from "./client/modes.ts";
import { start } from "./client/start.ts";
import type { Tools } from "./client/types.ts";
import { unpackUnit } from "./shape-codec.ts";

const TOOLS: Tools = {
  unpackUnit,
  themed,
  squareSizes,
  vertexMotion,
  lineVertices,
  shapeTraces,
  shapeUpdate,
};

export function clientScript(): string {
  const tools = Object.entries(TOOLS).map(([name, f]) => `  ${name}: ${f.toString()},`);
  return [
    '"use strict";',
    "(() => {",
    // Some compilers wrap inner functions in a call that keeps their names; here it does nothing.
    "const __name = (f) => f;",
    `const tools = {\n${tools.join("\n")}\n};`,
    `const starters = { startCharts: ${startCharts.toString()}, startModes: ${startModes.toString()}, startMaps: ${startMaps.toString()} };`,
    `(${start.toString()})(window, tools, starters);`,
    "})();",
  ].join("\n");
}
