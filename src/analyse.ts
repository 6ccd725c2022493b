/** One frame through all stages. */

import type { Excitation } from "./excitation/types.ts";
import type { FrameFile } from "./frame/types.ts";
import type { System } from "./matrices/assemble.ts";
import type { MassProperties, MassReport } from "./matrices/mass.ts";
import type { Mesh } from "./mesh/types.ts";
import type { Model } from "./model/types.ts";
import type { Modes } from "./modes/types.ts";
import type { Ranking } from "./ranking/types.ts";

export interface Analysis {
  readonly file: FrameFile;
  readonly model: Model;
  readonly mesh: Mesh;
  readonly system: System;
  readonly mass: MassReport;
  /** the same from R'MR; undefined where supports hold the frame */
  readonly assembledMass?: MassProperties;
  readonly modes: Modes;
  /** undefined without propulsion */
  readonly excitation?: Excitation;
  /** undefined without propulsion or without a place to rank */
  readonly ranking?: Ranking;
  readonly warnings: readonly string[];
}
