/** Filters between the sensor and the control loop, and what an accelerometer reads where it sits. */

import type { Family } from "../case.ts";
import { ANALOGUE_FILTERS } from "./analogue-filters.ts";
import { CHIPS } from "./chips.ts";
import { DIGITAL_FILTERS } from "./digital-filters.ts";
import { LEVER_ARM } from "./lever-arm.ts";

export const SENSING: readonly Family[] = [DIGITAL_FILTERS, ANALOGUE_FILTERS, CHIPS, LEVER_ARM];
