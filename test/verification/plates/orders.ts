/** How fast plates converge: the order measured from 16 to 32 cells a side. */

import { type Case, type Family, modes, withinAbsolute } from "../case.ts";
import { cantileverSupports } from "./cantilever-plates.ts";
import { CLAMPED_ALL_ROUND, hinged } from "./held-squares.ts";
import { CLAMPED_SQUARE, FREE, HINGED_SQUARE } from "./rectangle-values.ts";
import { ritzParameters } from "./ritz-values.ts";
import { thinParameters } from "./thin-plate.ts";

/** A thin square of nu = 0.3: how it is held, and its lambda. */
export interface Square {
  readonly name: string;
  readonly supports: object;
  readonly lambda: readonly number[];
}

export const FREE_SQUARE: Square = {
  name: "free square",
  supports: {},
  lambda: FREE[0].lambda.slice(0, 6),
};
export const CANTILEVER: Square = {
  name: "square clamped at one edge",
  supports: cantileverSupports(1, 0.3),
  lambda: ritzParameters(1, 0.3, true).slice(0, 6),
};
export const HINGED: Square = {
  name: "simply supported square",
  supports: hinged(true),
  lambda: HINGED_SQUARE.slice(0, 6),
};
export const HINGED_IN_Z: Square = {
  ...HINGED,
  name: "simply supported square, z only",
  supports: hinged(false),
};
export const CLAMPED: Square = {
  name: "clamped square",
  supports: CLAMPED_ALL_ROUND,
  lambda: CLAMPED_SQUARE,
};

/** Relative error of each mode. */
export function errors({ supports, lambda }: Square, cells: number): number[] {
  const found = thinParameters(1, 0.3, supports, cells, lambda.length);
  return found.map((value, i) => value / lambda[i] - 1);
}

/** log2 of the ratio of the errors of each mode with `cells` and with twice as many cells a side. */
export function measuredOrders(square: Square, cells: number): number[] {
  const fine = errors(square, 2 * cells);
  return errors(square, cells).map((e, i) => Math.log2(Math.abs(e / fine[i])));
}

function orders(square: Square, slack: number, model: string, why: string, from = 1): Case {
  const all = modes(
    square.lambda.map(() => 2),
    "",
    withinAbsolute(slack),
    "order of mode",
  );
  return {
    name: `Order of convergence, ${square.name}`,
    source: "Second order, the order of the elements inside the plate.",
    model: `Thin square of nu = 0.3, ${model}; log2 of the ratio of the errors with 16 and 32 cells a side.`,
    why,
    checks: all.slice(from - 1),
    solve: () => measuredOrders(square, 16).slice(from - 1),
  };
}

const HIGHER = "The next order is still felt with 16 cells.";

export const ORDERS: Family = {
  title: "Orders of convergence of plates",
  source: "theory of finite elements",
  cases: [
    orders(FREE_SQUARE, 0.2, "free", HIGHER),
    orders(
      CANTILEVER,
      0.3,
      "clamped at one edge, modes 2 to 6",
      `${HIGHER} Mode 1, whose error is below 2e-4, converges with 1.5 for the infinite curvature at the ends of the clamped edge.`,
      2,
    ),
    orders(HINGED, 0.15, "no deflection and no slope along its edges", HIGHER),
    orders(HINGED_IN_Z, 0.15, "the points of its edges held in z alone", HIGHER),
    orders(CLAMPED, 0.25, "clamped all round", HIGHER),
  ],
};
