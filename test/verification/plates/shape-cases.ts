/** Plates of shapes.json as cases: how each is meshed, and how near it comes. */

import { type Case, modes, type Tolerance, within } from "../case.ts";
import { RITZ_SOURCE, ritzFrequencies, SHAPES } from "./ritz-values.ts";
import { shapeFrequencies } from "./shape-frame.ts";

export interface ShapeCase {
  /** in shapes.json */
  readonly shape: string;
  readonly name: string;
  /** degrees */
  readonly turned?: number;
  /** the mesh of a frame that asks for none */
  readonly defaultMesh?: boolean;
  /** size of the error of each mode when the case was written, per cent */
  readonly measured: readonly number[];
  /** what the error comes from */
  readonly why: string;
}

const CELLS = 24;

/** No theory gives the error of cut cells: half as much again as measured, and 0.05 % more. */
export function asMeasured(
  percent: readonly number[],
): (reference: string, i: number) => Tolerance {
  return (_, i) => within((1.5 * percent[i] + 0.05) / 100);
}
export const WHY_MEASURED = "Half as much again as measured, and 0.05 % more.";

export function shapeCase(of: ShapeCase): Case {
  const { shape, name, turned = 0, defaultMesh = false, measured, why } = of;
  const turn = turned === 0 ? "" : ` All of it turned by ${turned} degrees in the plan.`;
  const mesh = defaultMesh
    ? "mesh size as by default, 8 cells across the shorter side"
    : `${CELLS} cells along the longer side`;
  return {
    name,
    source: `${RITZ_SOURCE}.`,
    model: `${SHAPES[shape].note}${turn} 2 mm thick; ${mesh}.`,
    why: `${WHY_MEASURED} ${why}`,
    checks: modes(ritzFrequencies(shape), "Hz", asMeasured(measured)),
    solve: () => shapeFrequencies(shape, defaultMesh ? { turned } : { cells: CELLS, turned }),
  };
}
