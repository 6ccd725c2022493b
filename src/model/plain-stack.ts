/** The stack that candidates are judged with where the file describes none. */

import type { StackDef } from "../frame/types-stack.ts";

/**
 * One small board. Mass: published, 8.8 g for a controller board of 36 x 36 mm (specification of a
 * board), rounded. Holes 20 mm apart for M3, size and height: common practice, no source.
 */
export const PLAIN_STACK: Pick<StackDef, "mass" | "size" | "holes" | "height" | "chip"> = {
  mass: 9e-3,
  size: [0.03, 0.03, 0.015],
  holes: { spacing: [0.02, 0.02], turned: 0, footprint: 6e-3 },
  height: 8e-3,
  chip: [0, 0, 0],
};
