/** Leissa's tables of plates, few-term Ritz values: the plate's frequencies lie below every one. */

import { type Case, type Check, type Family, modes } from "../case.ts";
import { plateLambda } from "./rectangle.ts";
import { CANTILEVER, FREE, parameters, ritzBound } from "./thin-square.ts";

const SQUARE_FREE = ["13.489", "19.789", "24.432", "35.024", "35.024", "61.526"];
const SQUARE_CANTILEVER = ["3.4917", "8.5246", "21.429", "27.331", "31.111", "54.443"];

/** What the mesh may lie below the converged plate in modes 4 and 6 of the square cantilever. */
const SLACK = 2e-4;

const bounds = (published: readonly string[], converged: readonly string[]) =>
  modes(published, "", (reference, i) => ritzBound(reference, Number(converged[i]), SLACK));

const ARTICLE =
  "A. W. Leissa, The free vibration of rectangular plates, J. Sound and Vibration 31 (1973) 257-293, " +
  "values from memory; 36-term Ritz method.";
const THIN = "nu = 0.3; lambda = omega a^2 sqrt(rho h/D)";
const WHY_SQUARE =
  "Upper bounds, 0.2 to 1 % above the converged plate: ours must not lie above them, nor more than 2e-4 (the " +
  "mesh) below the converged plate.";

const SQUARES: readonly Case[] = [
  {
    name: "Leissa 1973, free square plate",
    source: ARTICLE,
    model: `Free square plate, thickness a/2000, ${THIN}. 32 x 32 cells.`,
    why: WHY_SQUARE,
    checks: bounds(SQUARE_FREE, FREE),
    solve: () => parameters("free", 5, 32).slice(0, SQUARE_FREE.length),
  },
  {
    name: "Leissa 1973, cantilevered square plate",
    source: ARTICLE,
    model: `Square plate clamped at one edge, thickness a/2000, ${THIN}. 32 x 32 cells.`,
    why: WHY_SQUARE,
    checks: bounds(SQUARE_CANTILEVER, CANTILEVER),
    solve: () => parameters("cantilever", 5, 32).slice(0, SQUARE_CANTILEVER.length),
  },
];

interface Row {
  readonly mode: number;
  readonly published: string;
  readonly converged: number;
}

interface Aspect {
  /** a/b, a from the root */
  readonly ratio: number;
  /** along a */
  readonly cells: number;
  /** The book lists kinds of motion, not an order: `mode` is the place among all modes. */
  readonly rows: readonly Row[];
}

const ASPECTS: readonly Aspect[] = [
  {
    ratio: 0.5,
    cells: 16,
    rows: [
      { mode: 1, published: "3.508", converged: 3.4928 },
      { mode: 2, published: "5.372", converged: 5.3509 },
      { mode: 3, published: "10.26", converged: 10.1805 },
      { mode: 5, published: "21.96", converged: 21.8379 },
      { mode: 6, published: "24.85", converged: 24.6698 },
    ],
  },
  {
    ratio: 1,
    cells: 32,
    rows: [
      { mode: 1, published: "3.494", converged: 3.471 },
      { mode: 2, published: "8.547", converged: 8.5062 },
      { mode: 3, published: "21.44", converged: 21.2839 },
      { mode: 4, published: "27.46", converged: 27.1987 },
      { mode: 5, published: "31.17", converged: 30.9543 },
    ],
  },
  {
    ratio: 2,
    cells: 40,
    rows: [
      { mode: 1, published: "3.472", converged: 3.4392 },
      { mode: 2, published: "14.93", converged: 14.8016 },
      { mode: 3, published: "21.61", converged: 21.4333 },
      { mode: 4, published: "48.71", converged: 48.1767 },
      { mode: 7, published: "94.49", converged: 93.1017 },
    ],
  },
  {
    ratio: 5,
    cells: 40,
    rows: [
      { mode: 1, published: "3.450", converged: 3.3975 },
      { mode: 2, published: "21.52", converged: 21.2652 },
      { mode: 3, published: "34.73", converged: 33.9136 },
      { mode: 5, published: "105.9", converged: 103.7333 },
    ],
  },
];

const place = (ratio: number, mode: number) => `a/b = ${ratio}, mode ${mode}`;

const checks: readonly Check[] = ASPECTS.flatMap(({ ratio, rows }) =>
  rows.map(({ mode, published, converged }) => ({
    quantity: place(ratio, mode),
    unit: "",
    reference: published,
    tolerance: ritzBound(published, converged, SLACK),
  })),
);

function solveAspect({ ratio, cells, rows }: Aspect): number[] {
  const plate = { ratio, thickness: 1, clampedRoot: true };
  const found = plateLambda(plate, cells, Math.max(...rows.map(({ mode }) => mode)));
  return rows.map(({ mode }) => found[mode - 1]);
}

const RECTANGLES: Case = {
  name: "Leissa 1969, cantilevered rectangles",
  source:
    "A. W. Leissa, Vibration of Plates, NASA SP-160 (1969), tables after Barton and Young, from memory. " +
    "Left out: the mode across a/b = 5 (563.9), which cannot be told from its neighbours.",
  model: `Plates clamped at one edge of length b, thickness a/1000, ${THIN}. 16 cells along a for a/b = 1/2, 32 for 1, 40 for 2 and 5.`,
  why:
    "Upper bounds, 0.4 to 2.4 % above the converged plate (Ritz method with 24 x 24 or more Legendre " +
    "products): ours must not lie above them, nor more than 2e-4 (the mesh) below the converged plate.",
  checks,
  solve: () => ASPECTS.flatMap(solveAspect),
};

export const RITZ_TABLES: Family = {
  title: "Few-term tables of free and cantilevered plates (Leissa)",
  source: "Leissa (1969, 1973)",
  cases: [...SQUARES, RECTANGLES],
};
