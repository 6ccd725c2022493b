/** A cantilever with a body at its tip: the plainest model of an arm with its motor. */

import { type Family, lastDigit, modes } from "../case.ts";
import { aboveBeam, ELEMENTS, squares, unitBeam, WHY_ABOVE } from "../unit-beam.ts";
import { table } from "./rows.ts";

/** In units of the beam: mass, inertia about its own centre, how far that lies beyond the tip. */
export interface TipBody {
  readonly mu: number;
  readonly j?: number;
  readonly e?: number;
}

export function withTipBody({ mu, j = 0, e = 0 }: TipBody, elements = ELEMENTS): object {
  const inertia = { xx: 0, yy: `${j} kg m^2`, zz: `${j} kg m^2` };
  const body = { mass: `${mu} kg`, at: [`${1 + e} m`, 0, 0], inertia, on: "right" };
  return unitBeam("clamped", "free", elements, { bodies: { body } });
}

type Row = TipBody & { readonly values: string };

const POINT_MASSES: readonly Row[] = [
  { mu: 0, values: "3.51601526850 22.0344915647 61.6972144135" },
  { mu: 0.1, values: "2.96783834678 19.3558010099 55.5182455488" },
  { mu: 0.5, values: "2.01629898181 16.9014177210 51.7009208918" },
  { mu: 1, values: "1.55729786120 16.2500851582 50.8958428312" },
  { mu: 2, values: "1.15819710738 15.8608899924 50.4476396654" },
  { mu: 5, values: "0.756937338929 15.6023458804 50.1623388957" },
  { mu: 10, values: "0.541375032901 15.5115131197 50.0643469734" },
];

const CENTRED: readonly Row[] = [
  { mu: 0, j: 0.01, values: "3.38430480281 14.3021299497 33.9498856308" },
  { mu: 0.5, j: 0.001, values: "2.01339574844 16.5058089322 48.2600197342" },
  { mu: 0.5, j: 0.01, values: "1.98752557509 13.4034419380 32.3450568971" },
  { mu: 0.5, j: 0.05, values: "1.87858503193 8.20178415592 26.4838691254" },
  { mu: 1, j: 0.001, values: "1.55592762587 15.9207219947 47.8203964391" },
  { mu: 1, j: 0.01, values: "1.54367680341 13.2395885595 32.0695808101" },
  { mu: 1, j: 0.1, values: "1.42962634499 6.27532570078 24.7516044657" },
  { mu: 1, j: 1, values: "0.867899771008 3.39057215366 24.0185576700" },
  { mu: 2, j: 0.05, values: "1.13013574237 8.14486103702 25.0081604251" },
  { mu: 5, j: 0.1, values: "0.741076057386 6.08764058474 23.6441895254" },
];

const ECCENTRIC: readonly Row[] = [
  { mu: 1, j: 0, e: 0.1, values: "1.38612620646 13.5477909006 42.8013635331" },
  { mu: 1, j: 0.01, e: 0.1, values: "1.37573373792 11.8510626795 33.7627631719" },
  { mu: 0.5, j: 0.002, e: 0.05, values: "1.91421827364 14.8324343519 42.5805255495" },
  { mu: 2, j: 0.01, e: -0.05, values: "1.23251723390 13.8343054364 29.7795535102" },
];

const exact = (rows: readonly Row[], name: (row: Row) => string) => ({
  why: WHY_ABOVE,
  ...table({
    rows,
    name,
    solve: (row, count) => squares(withTipBody(row), count),
    tolerance: (reference) => aboveBeam(reference),
  }),
});

const BEAM = "Clamped Euler-Bernoulli beam of unit length, mass and stiffness, 64 elements";
const LETTERS = "c, s = cos x, sin x; C, S = cosh x, sinh x; mu = M/(rho A L)";

export const TIP_BODY: Family = {
  title: "Cantilever with a body at its tip",
  source: "frequency equations; Math. Probl. Eng. 2017",
  cases: [
    {
      name: "Cantilever with a tip mass",
      source:
        "Roots of 1 + c C + mu x (c S - s C) = 0 in 30-digit arithmetic, equal to those of the boundary " +
        "determinant; the equation in I. A. Karnovsky & O. I. Lebed, Formulas for Structural Dynamics (2004), eq. 7.18.",
      model: `${BEAM}, and a point mass at its tip. ${LETTERS}. x^2 of three modes.`,
      ...exact(POINT_MASSES, ({ mu }) => `mu = ${mu}`),
    },
    {
      name: "Cantilever with its own mass at the tip, printed",
      source:
        "Frequency Equation of Flexural Vibrating Cantilever Beam Considering the Rotary Inertial Moment of an " +
        "Attached Mass, Mathematical Problems in Engineering 2017, article 1568019, table 1, columns without " +
        "rotary inertia. (Those with it have the sign of j reversed: they rise as j grows.)",
      model: "The same beam with mu = 1, 96 elements: x^2.",
      why: "One unit of the last digit printed.",
      checks: modes(["1.557298", "16.25009", "50.89584", "105.1983", "179.2320"], "", lastDigit),
      solve: () => squares(withTipBody({ mu: 1 }, 96), 5),
    },
    {
      name: "Cantilever with tip mass and rotary inertia",
      source:
        "Roots of 1 + c C + mu x (c S - s C) - j x^3 (s C + c S) + mu j x^4 (1 - c C) = 0 in 30-digit " +
        "arithmetic, equal to those of the boundary determinant.",
      model: `${BEAM}, and a body centred at its tip. ${LETTERS}, j = J/(rho A L^3). x^2 of three modes.`,
      ...exact(CENTRED, ({ mu, j }) => `mu = ${mu}, j = ${j}`),
    },
    {
      name: "Cantilever with an eccentric tip body",
      source: "Roots of the 4 x 4 boundary determinant in 30-digit arithmetic.",
      model:
        `${BEAM}, and a body whose centre of gravity lies e L beyond the tip (negative: inboard), j about that ` +
        "centre. x^2 of three modes.",
      ...exact(ECCENTRIC, ({ mu, j, e }) => `mu = ${mu}, j = ${j}, e = ${e}`),
    },
  ],
};
