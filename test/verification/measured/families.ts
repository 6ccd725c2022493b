/** What was measured on real structures. */

import type { Family } from "../case.ts";
import { STRIP_BEAMS, STRIP_PLATES } from "./carbon-strips.ts";
import { FLAX_PLATE } from "./flax-plate.ts";
import { SPAR_WING } from "./wing.ts";

export const MEASURED: readonly Family[] = [SPAR_WING, STRIP_BEAMS, STRIP_PLATES, FLAX_PLATE];
