/** Torsion of sections, laminates, and what follows from them for arms and plates. */

import type { Family } from "../case.ts";
import { COMPLETE_MATRICES } from "./complete-matrices.ts";
import { COUPLED_PLATES } from "./coupled-plates.ts";
import { FEW_PLIES } from "./few-plies.ts";
import { ORTHOTROPIC_TORSION } from "./orthotropic-torsion.ts";
import { QUASI_ISOTROPIC } from "./quasi-isotropic.ts";
import { RECTANGLE_TORSION } from "./rectangle-torsion.ts";
import { TEXTBOOK_TABLES } from "./textbook-tables.ts";

export const LAMINATES: readonly Family[] = [
  RECTANGLE_TORSION,
  ORTHOTROPIC_TORSION,
  TEXTBOOK_TABLES,
  QUASI_ISOTROPIC,
  COMPLETE_MATRICES,
  FEW_PLIES,
  COUPLED_PLATES,
];
