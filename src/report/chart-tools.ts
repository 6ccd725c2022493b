/** The functions that the page's flat charts use of each other; each is in the page under its own name. */

import { modeBands, modePoints } from "./client/campbell.ts";
import type { ChartTools } from "./client/chart-tools.ts";
import { drawFigure, fewerTicks, fittedLayout, themed } from "./client/charts.ts";
import {
  allPlacesFigure,
  labelledLines,
  placeFigure,
  sweepFigure,
  sweptOrders,
} from "./client/levels.ts";
import { labelPlaces, powersFrom, spreadLevels, sweepDensity } from "./client/sweep.ts";
import { unpackUnit } from "./unit-codec.ts";

export const CHART_TOOLS: ChartTools = {
  themed,
  fewerTicks,
  fittedLayout,
  drawFigure,
  modePoints,
  modeBands,
  unpackUnit,
  powersFrom,
  spreadLevels,
  sweepDensity,
  labelPlaces,
  sweptOrders,
  labelledLines,
  placeFigure,
  allPlacesFigure,
  sweepFigure,
};
