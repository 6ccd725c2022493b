/** Carbon/epoxy T300/5208 of the textbook tables, and what is said of it in all of them. */

import { type LaminateStiffness, laminateStiffness } from "../../../src/material/lamination.ts";
import { layers, T300_5208 } from "../../material/plies.ts";

/** As a frame file has it; the density is no part of the tables and invented. */
export const T300_5208_IN_FILE = {
  E1: "181 GPa",
  E2: "10.3 GPa",
  G12: "7.17 GPa",
  nu12: 0.28,
  density: "1600 kg/m^3",
};

export const PLY = "T300/5208: E1 = 181, E2 = 10.3, G12 = 7.17 GPa, nu12 = 0.28, plies of 0.125 mm";

/** How the references without a printed source were made. */
export const COMPUTED =
  "Computed by another program in double precision, from the definitions in A. K. Kaw, Mechanics of " +
  "Composite Materials, chapter 4 (definitions from memory).";

/** A, B, D of a stack of T300/5208; thickness (m) per ply if not 0.125 mm. */
export function stiffnessOf(stack: string, thickness?: number): LaminateStiffness {
  return laminateStiffness(layers(T300_5208, stack, thickness));
}
