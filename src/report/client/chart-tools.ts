/** Functions of the page that draw and compute its flat charts. */

import type { drawFigure, fewerTicks, fittedLayout, themed } from "./figures.ts";
import type {
  allPlacesFigure,
  labelledLines,
  placeFigure,
  sweepFigure,
  sweptOrders,
} from "./levels.ts";
import type { modeBands, modePoints } from "./mode-bands.ts";
import type { labelPlaces, powersFrom, spreadLevels, sweepDensity } from "./sweep.ts";

export interface ChartTools {
  readonly themed: typeof themed;
  readonly fewerTicks: typeof fewerTicks;
  readonly fittedLayout: typeof fittedLayout;
  readonly drawFigure: typeof drawFigure;
  readonly modePoints: typeof modePoints;
  readonly modeBands: typeof modeBands;
  readonly unpackUnit: (text: string) => Float64Array;
  readonly powersFrom: typeof powersFrom;
  readonly spreadLevels: typeof spreadLevels;
  readonly sweepDensity: typeof sweepDensity;
  readonly labelPlaces: typeof labelPlaces;
  readonly sweptOrders: typeof sweptOrders;
  readonly labelledLines: typeof labelledLines;
  readonly placeFigure: typeof placeFigure;
  readonly allPlacesFigure: typeof allPlacesFigure;
  readonly sweepFigure: typeof sweepFigure;
}
