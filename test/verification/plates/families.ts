/** Thin plates: free, held, orthotropic, cut, holed, turned, and how fast they converge. */

import type { Family } from "../case.ts";
import { CANTILEVER_PLATES } from "./cantilever-plates.ts";
import { CROSS_PLY } from "./cross-ply.ts";
import { FREE_RECTANGLES } from "./free-rectangles.ts";
import { HELD_SQUARES } from "./held-squares.ts";
import { HOLES } from "./holes.ts";
import { OFF_GRID } from "./off-grid.ts";
import { ORDERS } from "./orders.ts";
import { TURNED_PLATES } from "./turned-plates.ts";

export const PLATES: readonly Family[] = [
  FREE_RECTANGLES,
  CANTILEVER_PLATES,
  HELD_SQUARES,
  CROSS_PLY,
  OFF_GRID,
  HOLES,
  TURNED_PLATES,
  ORDERS,
];
