/** Rectangles clamped at one edge, from broad to narrow. */

import type { Case, Family } from "../case.ts";
import { clamped, outOfPlaneOnly } from "../sheet.ts";
import { CLAMPED_AT_ONE_EDGE, type RectangleValues } from "./rectangle-values.ts";
import { ritzParameters } from "./ritz-values.ts";
import { lambdas, meshTolerance, thinParameters, thinSheet } from "./thin-plate.ts";

const CELLS = 24;
const C = 0.02;
/** Error of the clamped edge: this times h/b. */
const EDGE = 0.003;

export function cantileverSupports(ratio: number, nu: number): object {
  const sheet = thinSheet(ratio, nu);
  return { ...outOfPlaneOnly(sheet), ...clamped(sheet, ["x = 0"]) };
}

function cantilever({ ratio, shown, nu }: RectangleValues): Case {
  const references = ritzParameters(ratio, nu, true);
  const cellOverWidth = (Math.max(1, 1 / ratio) / CELLS) * ratio;
  return {
    name: `Cantilever plate a/b = ${shown}, nu = ${nu}`,
    source:
      "Converged thin-plate values: Ritz with C1 splines crowded towards the clamped edge " +
      "(test/verification/plates/ritz); 32 x 32 Legendre products lie up to 8e-5 above.",
    model: `Clamped along x = 0, free elsewhere; a = 1 m from the clamped edge, a/b = ${shown}, h = 1 mm; lambda = omega a^2 sqrt(rho h/D). ${CELLS} cells along the longer side, at least 6 across.`,
    why: `C (k h)^2 of a second-order element, C = ${C} as for free plates, and ${EDGE} h/b for the ends of the clamped edge, where curvature is infinite (measured 0.0024).`,
    checks: lambdas(references, meshTolerance(C, ratio, CELLS, EDGE * cellOverWidth)),
    solve: () => thinParameters(ratio, nu, cantileverSupports(ratio, nu), CELLS, references.length),
  };
}

export const CANTILEVER_PLATES: Family = {
  title: "Plates clamped at one edge",
  source: "Ritz, converged",
  cases: CLAMPED_AT_ONE_EDGE.map(cantilever),
};
