/** All families, in the order of the table. */

import { BEAMS } from "./beams/families.ts";
import { BENCHMARKS } from "./benchmarks/families.ts";
import { DYNAMICS } from "./dynamics/families.ts";
import { LAMINATES } from "./laminates/families.ts";
import { MEASURED } from "./measured/families.ts";
import { PLATES } from "./plates/families.ts";
import { SENSING } from "./sensing/families.ts";
import type { Area } from "./table.ts";

export const AREAS: readonly Area[] = [
  { title: "Beams, rods and shafts", families: BEAMS },
  { title: "Published benchmarks", families: BENCHMARKS },
  { title: "Plates", families: PLATES },
  { title: "Laminates and torsion", families: LAMINATES },
  { title: "What shakes and what answers", families: DYNAMICS },
  { title: "Sensors and filters", families: SENSING },
  { title: "Measured structures", families: MEASURED },
];
