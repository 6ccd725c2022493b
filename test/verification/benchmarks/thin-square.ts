/**
 * The square plate of the published tests, 10 m x 10 m, and its frequencies on a grid of cells; also
 * what they come to as the grid is refined. Solved once for each grid.
 */

import { below, type Tolerance } from "../case.ts";
import { solveFrame } from "../frequencies.ts";
import {
  clamped,
  outOfPlaneOnly,
  plateParameter,
  type Sheet,
  STEEL,
  sheetFrame,
  simplySupported,
} from "../sheet.ts";

/**
 * mm. The tests ask for 50, where rotary inertia counts: (h k)^2/24, 1e-5 to 2e-4 in the modes used
 * here. A tenth of it is a thin plate to 2e-6.
 */
export type Thickness = 50 | 5;
export type Held = "free" | "hinged" | "cantilever";

const SIDE = 10;

function sheetOf(thickness: Thickness): Sheet {
  return { a: SIDE, b: SIDE, thickness: `${thickness} mm`, material: STEEL };
}

function supportsOf(held: Held, sheet: Sheet): object {
  switch (held) {
    case "free":
      return outOfPlaneOnly(sheet);
    case "hinged":
      return { ...outOfPlaneOnly(sheet), ...simplySupported(sheet) };
    case "cantilever":
      return clamped(sheet, ["x = 0"]);
  }
}

const solved = new Map<string, readonly number[]>();

/** The lowest eight elastic modes, Hz. */
export function hertz(held: Held, thickness: Thickness, cells: number): readonly number[] {
  const key = `${held} ${thickness} ${cells}`;
  const known = solved.get(key);
  if (known) return known;
  const sheet = sheetOf(thickness);
  const { modes } = solveFrame(sheetFrame(sheet, cells, supportsOf(held, sheet)), { modes: 8 });
  const found = modes.described.map((mode) => mode.frequency);
  solved.set(key, found);
  return found;
}

/** lambda = omega a^2 sqrt(rho h/D). */
export function parameters(held: Held, thickness: Thickness, cells: number): number[] {
  return hertz(held, thickness, cells).map((f) => plateParameter(f, SIDE) * (50 / thickness));
}

/** lambda with 32 and 64 cells a side, carried on to none at all by the square of their size. */
export function limit(held: Held, thickness: Thickness): number[] {
  const coarse = parameters(held, thickness, 32);
  return parameters(held, thickness, 64).map((fine, i) => (4 * fine - coarse[i]) / 3);
}

/**
 * For a Ritz value of few terms, an upper bound: ours must not lie above it, and below the converged
 * value by no more than `slack`.
 */
export function ritzBound(published: string, converged: number, slack: number): Tolerance {
  return below(1 - converged / Number(published) + slack);
}

/** lambda of thin square plates, nu = 0.3, as printed below. */
export const FREE = "13.46820 19.59614 24.27020 34.80089 34.80089 61.09323 61.09323 63.68613".split(
  " ",
);
export const CANTILEVER = "3.4710 8.5062 21.2839 27.1987 30.9543 54.1838".split(" ");

export const RITZ_FREE =
  "Thin-plate theory: Ritz method with 24 x 24 Legendre products, converged to all digits shown.";
export const RITZ_CANTILEVER =
  "Thin-plate theory: Ritz method with 32 x 32 Legendre products, converged to 2e-5 (the clamped corner " +
  "slows it down).";

export const NAFEMS =
  "F. Abbassian, D. J. Dawswell & N. C. Knowles, Selected Benchmarks for Natural Frequency Analysis, " +
  "NAFEMS R0015 (1987), as quoted elsewhere";

export const PLATE = "10 m x 10 m, E = 200 GPa, nu = 0.3, rho = 8000 kg/m^3";
