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
import { startContents } from "./client/contents.ts";
import { lineVertices, shapeTraces, shapeUpdate, vertexMotion } from "./client/geometry.ts";
import { createHost } from "./client/host.ts";
import { libraryLoader } from "./client/library.ts";
import { squareSizes, startMaps } from "./client/maps.ts";
import { startModes } from "./client/modes.ts";
import { startSaving } from "./client/save.ts";
import { type Starters, start } from "./client/start.ts";
import type { Tools } from "./client/types.ts";
import { startWords } from "./client/words.ts";
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

const STARTERS: Starters = {
  createHost,
  libraryLoader,
  startCharts,
  startContents,
  startMaps,
  startModes,
  startSaving,
  startWords,
};

export function clientScript(): string {
  const written = (functions: object) =>
    Object.entries(functions).map(([name, f]) => `  ${name}: ${f.toString()},`);
  return [
    '"use strict";',
    "(() => {",
    // Some compilers wrap inner functions in a call that keeps their names; here it does nothing.
    "const __name = (f) => f;",
    `const tools = {\n${written(TOOLS).join("\n")}\n};`,
    `const starters = {\n${written(STARTERS).join("\n")}\n};`,
    `(${start.toString()})(window, tools, starters);`,
    "})();",
  ].join("\n");
}
