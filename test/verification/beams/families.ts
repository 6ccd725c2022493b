import type { Family } from "../case.ts";
import { CONVERGENCE } from "./convergence.ts";
import { END_MASSES } from "./end-masses.ts";
import { ENDS_OF_BEAMS } from "./ends.ts";
import { FINITE_ELEMENTS } from "./finite-elements.ts";
import { MODE_SHAPES } from "./mode-shapes.ts";
import { RODS_AND_SHAFTS } from "./rods-shafts.ts";
import { ROOT_SPRING } from "./root-spring.ts";
import { SOLID_BARS } from "./solid-bars.ts";
import { TIMOSHENKO } from "./timoshenko.ts";
import { TIP_BODY } from "./tip-body.ts";

export const BEAMS: readonly Family[] = [
  ENDS_OF_BEAMS,
  MODE_SHAPES,
  TIP_BODY,
  ROOT_SPRING,
  END_MASSES,
  RODS_AND_SHAFTS,
  SOLID_BARS,
  TIMOSHENKO,
  FINITE_ELEMENTS,
  CONVERGENCE,
];
