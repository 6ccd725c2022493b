/** Fewer modes of a solution. */

import type { SolvedModes } from "./solve.ts";
import type { Modes } from "./types.ts";

/** The first modes of a solution, as if no more had been asked for. */
export function firstModes(solved: SolvedModes, count: number): SolvedModes {
  const { modes } = solved;
  const n = modes.phi.length / modes.lambda.length;
  const kept: Modes = {
    ...modes,
    lambda: modes.lambda.slice(0, count),
    phi: modes.phi.slice(0, n * count),
    shapes: modes.shapes.slice(0, count),
    described: modes.described.slice(0, count),
  };
  return { ...solved, modes: kept };
}
