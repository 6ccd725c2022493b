/** Squares held all round. */

import type { Case, Family } from "../case.ts";
import { clamped, outOfPlaneOnly, simplySupported } from "../sheet.ts";
import { CLAMPED_SQUARE, HINGED_SQUARE } from "./rectangle-values.ts";
import { lambdas, meshTolerance, thinParameters, thinSheet } from "./thin-plate.ts";

const CELLS = 24;
/** measured: 0.03 at most, in modes of many waves both ways */
const C = 0.04;
const SQUARE = thinSheet(1, 0.3);

/** @param fixSlope whether the slope along the edge is held too, not only the grid's points */
export function hinged(fixSlope: boolean): object {
  return { ...outOfPlaneOnly(SQUARE), ...simplySupported(SQUARE, fixSlope) };
}
export const CLAMPED_ALL_ROUND = { ...outOfPlaneOnly(SQUARE), ...clamped(SQUARE) };

const WHY =
  `Second order, from below: C (k h)^2 with k^2 = lambda/a^2 and h the cell; C = ${C}, measured 0.03 or ` +
  "less.";
const MODEL = `Square of 1 m, h = 1 mm, nu = 0.3; lambda = omega a^2 sqrt(rho h/D). ${CELLS} x ${CELLS} cells.`;

function held(
  name: string,
  how: string,
  source: string,
  references: readonly number[],
  supports: object,
): Case {
  return {
    name,
    source,
    model: `${MODEL} ${how}`,
    why: WHY,
    checks: lambdas(
      references.map((l) => Number(l.toPrecision(9))),
      meshTolerance(C, 1, CELLS),
    ),
    solve: () => thinParameters(1, 0.3, supports, CELLS, references.length),
  };
}

const EXACT = "Closed form pi^2 (m^2 + n^2).";

export const HELD_SQUARES: Family = {
  title: "Square plates held all round",
  source: "closed form; Ritz, converged",
  cases: [
    held(
      "Simply supported square",
      "Along each edge no deflection and no slope.",
      EXACT,
      HINGED_SQUARE,
      hinged(true),
    ),
    held(
      "Simply supported square, z only",
      "The points of the edges held in z alone, as a user would write it.",
      EXACT,
      HINGED_SQUARE,
      hinged(false),
    ),
    held(
      "Clamped square",
      "Every edge held fast.",
      "Converged thin-plate values: Ritz with Legendre products (computed here).",
      CLAMPED_SQUARE,
      CLAMPED_ALL_ROUND,
    ),
  ],
};
