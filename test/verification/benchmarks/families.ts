/** Published frame and plate benchmarks. */

import type { Family } from "../case.ts";
import { FV4 } from "./nafems-fv4.ts";

export const BENCHMARKS: readonly Family[] = [FV4];
