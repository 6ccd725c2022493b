/** Filters between the sensor and the control loop; what an accelerometer reads where it sits and what is believed. */

import type { Family } from "../case.ts";
import { ANALOGUE_FILTERS } from "./analogue-filters.ts";
import { ATTITUDE_FILTER } from "./attitude-filter.ts";
import { CHIPS } from "./chips.ts";
import { DIGITAL_FILTERS } from "./digital-filters.ts";
import { LEVER_ARM } from "./lever-arm.ts";

export const SENSING: readonly Family[] = [
  DIGITAL_FILTERS,
  ANALOGUE_FILTERS,
  CHIPS,
  LEVER_ARM,
  ATTITUDE_FILTER,
];
