/** Plates turned in the plan: every edge cuts the cells, the frequencies are those of the plate at rest. */

import { type Case, type Family, modes } from "../case.ts";
import { frequencies } from "../frequencies.ts";
import { FREE, type RectangleValues } from "./rectangle-values.ts";
import { asMeasured, shapeCase, WHY_MEASURED } from "./shape-cases.ts";
import { thinParameter, thinSheet } from "./thin-plate.ts";

const CELLS = 24;
const [SQUARE, SQUARE_NU_0] = FREE;

/** lambda of a free thin square turned by an angle, with cells of 1/cells of its side. */
export function turnedParameters(nu: number, degrees: number, cells: number): number[] {
  const { thickness, material } = thinSheet(1, nu);
  const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  const outline = [
    [0, 0],
    [c, s],
    [c - s, s + c],
    [-s, c],
  ].map((point) => point.map((v) => `${v} m`));
  const plates = { sheet: { material: "stuff", thickness, z: 0, outline } };
  const frame = { meshSize: `${1 / cells} m`, materials: { stuff: material }, plates };
  return frequencies(frame, { modes: 8 }).map((f) => thinParameter(f, nu));
}

function square(
  { nu, lambda }: RectangleValues,
  degrees: number,
  measured: readonly number[],
): Case {
  return {
    name: `Free square turned by ${degrees} degrees, nu = ${nu}`,
    source: "Converged thin-plate values: Ritz with 24 x 24 Legendre products (computed here).",
    model: `Free square of 1 m, h = 1 mm, turned in the plan; lambda = omega a^2 sqrt(rho h/D). Cells of side/${CELLS}.`,
    why: `${WHY_MEASURED} Cut edges take twist from their members, which is soft and of first order.`,
    checks: modes(lambda, "", asMeasured(measured), "lambda"),
    solve: () => turnedParameters(nu, degrees, CELLS),
  };
}

export const TURNED_PLATES: Family = {
  title: "Plates turned in the plan",
  source: "Ritz, converged",
  cases: [
    square(SQUARE, 20, [0.32, 0.06, 0.06, 0.33, 0.33, 0.11, 0.11, 0.41]),
    square(SQUARE, 30, [0.33, 0.13, 0.14, 0.38, 0.38, 0.25, 0.25, 0.41]),
    square(SQUARE_NU_0, 30, [0.38, 0.13, 0.12, 0.44, 0.44, 0.21, 0.21, 0.48]),
    shapeCase({
      shape: "warp askew",
      name: "Square with its warp at 30 degrees, turned",
      turned: 20,
      measured: [0.08, 0.11, 0.06, 0.2, 0, 0.27, 0.26, 0.37],
      why: "The laminate's D11 and D22 change with the angle as well.",
    }),
    shapeCase({
      shape: "tabs",
      name: "Rectangle with two tabs, turned",
      turned: 30,
      measured: [0.21, 0.02, 0.12, 0.03, 0.01, 0.1, 0.08, 0.02],
      why: "Cut edges make soft what inward corners make stiff.",
    }),
    shapeCase({
      shape: "L",
      name: "L-shaped plate, turned",
      turned: 30,
      measured: [0.14, 0.61, 0.32, 0.13, 0.03, 0.17, 0.36, 0.08],
      why: "Cut edges make soft what the inward corner makes stiff.",
    }),
    shapeCase({
      shape: "round hole",
      name: "Square with a round hole, turned",
      turned: 30,
      measured: [0.49, 0.33, 0.06, 0.42, 0.42, 0.14, 0.14, 0.46],
      why: "Soft for the cut edges.",
    }),
    shapeCase({
      shape: "four windows",
      name: "Rectangle with four windows, turned",
      turned: 20,
      measured: [0.43, 1.95, 2.63, 0.82, 0.82, 1.06, 1.57, 0.12],
      why: "Stiff for 16 inward corners.",
    }),
  ],
};
