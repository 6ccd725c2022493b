/** All functions that those of the page use of each other. */

import type { ChartTools } from "./chart-tools.ts";
import type { Browser, Element, Stage, StageOptions } from "./types.ts";
import type { unpack } from "./unpack.ts";
import type { ViewerTools } from "./viewer-tools.ts";

/** Functions that the others use; each is in the page under its own name. */
export interface Tools extends ChartTools, ViewerTools {
  readonly unpack: typeof unpack;
  readonly squareSizes: (shares: readonly number[], room: number) => number[];
  readonly createStage: (browser: Browser, tools: ViewerTools, options: StageOptions) => Stage;
  readonly recordClip: (browser: Browser, canvas: Element, duration: number) => Promise<string>;
}
