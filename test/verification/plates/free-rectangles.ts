/** Free rectangles: all of bending, twist and Poisson's coupling, with nothing held. */

import type { Case, Family } from "../case.ts";
import { FREE, type RectangleValues } from "./rectangle-values.ts";
import { lambdas, meshTolerance, thinParameters } from "./thin-plate.ts";

const CELLS = 24;
/** measured: 0.014 at most */
const C = 0.02;

function free({ ratio, shown, nu, lambda }: RectangleValues): Case {
  return {
    name: `Free rectangle a/b = ${shown}, nu = ${nu}`,
    source:
      "Converged thin-plate values: Ritz with 24 x 24 Legendre products (computed here); C1 splines give " +
      "the same to 1e-6.",
    model: `Free plate, a = 1 m along x, a/b = ${shown}, h = 1 mm; lambda = omega a^2 sqrt(rho h/D). ${CELLS} cells along the longer side.`,
    why: `Second order: C (k h)^2 with k^2 = lambda/a^2 and h the cell; C = ${C}, measured 0.014 or less.`,
    checks: lambdas(lambda, meshTolerance(C, ratio, CELLS)),
    solve: () => thinParameters(ratio, nu, {}, CELLS, lambda.length),
  };
}

export const FREE_RECTANGLES: Family = {
  title: "Free rectangular plates",
  source: "Ritz, converged",
  cases: FREE.map(free),
};
