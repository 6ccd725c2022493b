/** How sure the ranking of one frame is, and what moves it. */

import type { ComparisonStudy } from "./results.ts";
import type { SensitivityStudy } from "./sensitivity-study.ts";

export interface HowSure {
  /** of the frame alone, over samples of its spreads */
  readonly sampled: ComparisonStudy;
  readonly moved: SensitivityStudy;
}
