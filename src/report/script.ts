/**
 * The page's own script as text.
 *
 * It is written as ordinary functions in client/, which the compiler checks and tests call, and put
 * into the page by their own source text (Function.prototype.toString). The other ways were worse: a
 * program in a template string is checked by nobody, and a file of its own would need a bundler and a
 * path that holds before and after compilation. The price: such a function sees nothing of its module,
 * so it takes what it needs as arguments and imports types only.
 */

import { CHART_TOOLS } from "./chart-tools.ts";
import { project } from "./client/camera.ts";
import { startCampbell } from "./client/campbell.ts";
import { startCharts } from "./client/charts.ts";
import { recordClip } from "./client/clip.ts";
import { startContents } from "./client/contents.ts";
import { startFrame } from "./client/frame-view.ts";
import { createHost } from "./client/host.ts";
import { libraryLoader } from "./client/library.ts";
import { squareSizes, startMaps } from "./client/maps.ts";
import { startModes } from "./client/modes.ts";
import { pick } from "./client/picking.ts";
import { composePicture, paintOverlay, rgbOf, scaleColours } from "./client/picture.ts";
import { newRaster, rasterise, shadeTable } from "./client/raster.ts";
import { startSaving } from "./client/save.ts";
import { readMotion, readScene, sceneMotion } from "./client/scene.ts";
import { startSpectra } from "./client/spectra.ts";
import { createStage, kindColours } from "./client/stage.ts";
import { type Starters, start } from "./client/start.ts";
import { edgesOf, inSight } from "./client/strokes.ts";
import { paintedAreas, svgPicture } from "./client/svg-picture.ts";
import type { Tools } from "./client/tools.ts";

import { unpack } from "./client/unpack.ts";
import { startWords } from "./client/words.ts";
import { unpackIntegers } from "./shape-codec.ts";

const TOOLS: Tools = {
  ...CHART_TOOLS,
  unpackIntegers,
  unpack,
  squareSizes,
  readScene,
  sceneMotion,
  readMotion,
  project,
  newRaster,
  shadeTable,
  rasterise,
  inSight,
  edgesOf,
  pick,
  paintedAreas,
  svgPicture,
  composePicture,
  paintOverlay,
  rgbOf,
  scaleColours,
  kindColours,
  createStage,
  recordClip,
};

const STARTERS: Starters = {
  createHost,
  libraryLoader,
  startCampbell,
  startCharts,
  startContents,
  startFrame,
  startMaps,
  startModes,
  startSaving,
  startSpectra,
  startWords,
};

export function clientScript(): string {
  const written = (functions: object) =>
    Object.entries(functions).map(([name, f]) => `  ${name}: ${withoutNotes(f.toString())},`);
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

/** The same code without indentation and without comments that have lines of their own. */
function withoutNotes(code: string): string {
  const bare = code.replace(/^[ \t]+/gm, "");
  return bare.replace(/^\/\*[\s\S]*?\*\/[ \t]*\n/gm, "").replace(/^\/\/.*\n/gm, "");
}
