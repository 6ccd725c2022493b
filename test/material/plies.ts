/** Plies of the published examples, and small helpers of the laminate tests. */

import type { Layer } from "../../src/material/lamination.ts";
import type { Ply } from "../../src/material/ply.ts";
import { parseStack } from "../../src/material/stack.ts";

/**
 * Carbon/epoxy T300/5208 as used throughout S. W. Tsai and H. T. Hahn, Introduction to Composite
 * Materials (1980), and A. K. Kaw, Mechanics of Composite Materials. G13, G23, density and loss
 * factors are not part of those examples; the values here are invented.
 */
export const T300_5208: Ply = {
  E1: 181e9,
  E2: 10.3e9,
  G12: 7.17e9,
  nu12: 0.28,
  G13: 6e9,
  G23: 3e9,
  density: 1600,
  thickness: 0.125e-3,
  lossFactor: 0.01,
};

/** Layers of one ply in the order of a stack; thickness (m) per ply if not the ply's own. */
export function layers(ply: Ply, stack: string, thickness = ply.thickness): readonly Layer[] {
  return parseStack(stack).map((degrees) => ({
    ply,
    angle: (degrees * Math.PI) / 180,
    thickness,
  }));
}
