/**
 * Rectangles so thin that rotary inertia does not count: 1 m along x, 1 mm thick. It lowers a frequency
 * by lambda (h/a)^2/24, 6e-6 of the highest one here.
 */

import { modes, type Tolerance, within } from "../case.ts";
import { frequencies } from "../frequencies.ts";
import { frequencyParameter, type Sheet, sheetFrame } from "../sheet.ts";

const STEEL = { kind: "isotropic", E: "200 GPa", density: "8000 kg/m^3" };

/** @param ratio a/b, the side along x over the side along y */
export function thinSheet(ratio: number, nu: number): Sheet {
  return { a: 1, b: 1 / ratio, thickness: "1 mm", material: { ...STEEL, nu } };
}

/** lambda of a thin sheet. */
export function thinParameter(frequency: number, nu: number): number {
  return frequencyParameter(frequency, { a: 1, h: 1e-3, E: 200e9, nu, rho: 8000 });
}

/** The first lambda of a thin rectangle with about `cells` cells along its longer side. */
export function thinParameters(
  ratio: number,
  nu: number,
  supports: object,
  cells: number,
  count: number,
): number[] {
  const along = Math.round(cells * Math.min(1, ratio));
  const frame = sheetFrame(thinSheet(ratio, nu), along, supports);
  return frequencies(frame, { modes: count }).map((f) => thinParameter(f, nu));
}

/**
 * |error| <= C (k h)^2 + edge: k^2 = lambda/a^2 is the square of the wave number, h = side/cells the side
 * of a cell; the error of a second-order element in a wave that is smooth.
 */
export function meshTolerance(C: number, ratio: number, cells: number, edge = 0) {
  const h = Math.max(1, 1 / ratio) / cells;
  return (lambda: string): Tolerance => within(C * Number(lambda) * h * h + edge);
}

/** Checks "lambda 1", ... */
export function lambdas(
  references: readonly (number | string)[],
  tolerance: (lambda: string) => Tolerance,
) {
  return modes(references, "", tolerance, "lambda");
}
