/** A frame with the space in which its variants are solved. */

import type { System } from "../matrices/assemble.ts";
import type { Vec3 } from "../model/types.ts";
import type { Meshed } from "./meshed.ts";
import type { Space } from "./space.ts";

export interface Basis {
  readonly base: Meshed;
  readonly system: System;
  readonly space: Space;
  /** of the base's stiffness, mass and stiffness weighed by loss, packed as in projection.ts */
  readonly whole: Readonly<Record<"K" | "M" | "H", Float64Array>>;
  /** the point about which all variants' rigid motions are taken, m */
  readonly about: Vec3;
}
