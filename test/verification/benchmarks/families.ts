/** Published frame and plate benchmarks. */

import type { Family } from "../case.ts";
import { FV4 } from "./nafems-fv4.ts";
import { FV12 } from "./nafems-fv12.ts";
import { FV13 } from "./nafems-fv13.ts";
import { FV16 } from "./nafems-fv16.ts";
import { RITZ_TABLES } from "./ritz-tables.ts";
import { SYMMETRIC_CROSS } from "./symmetric-cross.ts";
import { SDLL15 } from "./vpcs-sdll15.ts";
import { SDLS01 } from "./vpcs-sdls01.ts";

export const BENCHMARKS: readonly Family[] = [
  FV4,
  SDLL15,
  SYMMETRIC_CROSS,
  FV12,
  FV13,
  FV16,
  SDLS01,
  RITZ_TABLES,
];
