/** A cantilever whose root turns on a spring: the plainest model of a clamped arm. */

import type { Family } from "../case.ts";
import { aboveBeam, ELEMENTS, squares, unitBeam, WHY_ABOVE } from "../unit-beam.ts";
import { BOLTED_ARM } from "./bolted-arm.ts";
import { table } from "./rows.ts";

/** Pinned at its left end and held there by springs about y and z; a mass at the tip where given. */
export function onRootSpring(kappa: number, mu = 0, elements = ELEMENTS): object {
  const root = { between: ["left", "ground"], ry: kappa, rz: kappa };
  const bodies = mu > 0 ? { tip: { mass: `${mu} kg`, on: "right" } } : {};
  return unitBeam("pinned", "free", elements, { springs: { root }, bodies });
}

interface Row {
  readonly kappa: number;
  readonly mu?: number;
  readonly values: string;
}

const SPRINGS: readonly Row[] = [
  { kappa: 0.01, values: "0.173001292566 15.4276505051 49.9748785376" },
  { kappa: 0.1, values: "0.541375032901 15.5115131197 50.0643469734" },
  { kappa: 0.2, values: "0.756937338929 15.6023458804 50.1623388957" },
  { kappa: 0.5, values: "1.15819710738 15.8608899924 50.4476396654" },
  { kappa: 1, values: "1.55729786120 16.2500851582 50.8958428312" },
  { kappa: 2, values: "2.01629898181 16.9014177210 51.7009208918" },
  { kappa: 5, values: "2.61274786135 18.2078144154 53.5585785859" },
  { kappa: 10, values: "2.96783834678 19.3558010099 55.5182455488" },
  { kappa: 20, values: "3.20829198306 20.3646433771 57.5522798153" },
  { kappa: 50, values: "3.38300060848 21.2522120093 59.6255237652" },
  { kappa: 100, values: "3.44765787780 21.6199563706 60.5699716257" },
  { kappa: 1000, values: "3.50900340416 21.9906977748 61.5749644240" },
];

const SPRINGS_AND_MASSES: readonly Row[] = [
  { kappa: 10, mu: 0.5, values: "1.74569660661 14.8267914219 46.3922445793" },
  { kappa: 10, mu: 1, values: "1.35532538553 14.2185931289 45.6207704685" },
  { kappa: 100, mu: 1, values: "1.53300998544 15.9491203357 49.9675198297" },
  { kappa: 100, mu: 5, values: "0.745668032761 15.3081801466 49.2409363169" },
  { kappa: 50, mu: 2, values: "1.12380221389 15.2969748531 48.7386666667" },
];

/**
 * On a soft spring the first mode hardly bends the beam: rounding of the elements' own stiffness, a
 * million times the spring's, shows in it.
 */
const SOFT_ROUNDING = 1e-8;

const exact = (rows: readonly Row[], name: (row: Row) => string) =>
  table({
    rows,
    name,
    solve: ({ kappa, mu }, count) => squares(onRootSpring(kappa, mu), count),
    tolerance: (reference, { kappa }) =>
      aboveBeam(reference, kappa < 1 ? SOFT_ROUNDING : undefined),
  });

const BEAM =
  "Euler-Bernoulli beam of unit length, mass and stiffness, 64 elements, pinned at the root and held there by " +
  "springs k = kappa E I/L";

export const ROOT_SPRING: Family = {
  title: "Cantilever on a root spring",
  source: "frequency equation",
  cases: [
    {
      name: "Root spring",
      source:
        "Roots of kappa (1 + cos x cosh x) + x (cos x sinh x - sin x cosh x) = 0 in 30-digit arithmetic, equal " +
        "to those of the boundary determinant.",
      model: `${BEAM}. x^2 of three modes.`,
      why: `${WHY_ABOVE} With kappa below 1 rounding leaves up to 4e-9: 1e-8 allowed.`,
      ...exact(SPRINGS, ({ kappa }) => `kappa = ${kappa}`),
    },
    {
      name: "Root spring and tip mass",
      source: "Roots of the 4 x 4 boundary determinant in 30-digit arithmetic.",
      model: `${BEAM}, with a point mass mu = M/(rho A L) at the tip. x^2 of three modes.`,
      why: WHY_ABOVE,
      ...exact(SPRINGS_AND_MASSES, ({ kappa, mu }) => `kappa = ${kappa}, mu = ${mu}`),
    },
    BOLTED_ARM,
  ],
};
