/** Uniform beams with every pair of ends. */

import { type Case, type Family, lastDigit, modes } from "../case.ts";
import { aboveBeam, type End, squares, unitBeam, WHY_ABOVE } from "../unit-beam.ts";
import { table } from "./rows.ts";

interface Pair {
  readonly ends: readonly [End, End];
  /** for x, the wave number times the length */
  readonly equation: string;
  /** x^2 of the first five modes that bend the beam */
  readonly values: string;
}

const FREE = "22.3732854481 61.6728228679 120.903391727 199.859448127 298.555535298";
const PINNED = "15.4182057170 49.9648620318 104.247696459 178.269729495 272.030971305";

const PAIRS: readonly Pair[] = [
  {
    ends: ["clamped", "free"],
    equation: "cos x cosh x + 1 = 0",
    values: "3.51601526850 22.0344915647 61.6972144135 120.901916052 199.859530117",
  },
  { ends: ["free", "free"], equation: "cos x cosh x - 1 = 0", values: FREE },
  { ends: ["clamped", "clamped"], equation: "cos x cosh x - 1 = 0", values: FREE },
  {
    ends: ["pinned", "pinned"],
    equation: "sin x = 0",
    values: "9.86960440109 39.4784176044 88.8264396098 157.913670417 246.740110027",
  },
  { ends: ["clamped", "pinned"], equation: "tan x = tanh x", values: PINNED },
  { ends: ["pinned", "free"], equation: "tan x = tanh x", values: PINNED },
  {
    ends: ["clamped", "guided"],
    equation: "tan x = -tanh x",
    values: "5.59332136202 30.2258479318 74.6388838245 138.791311892 222.682949300",
  },
  {
    ends: ["pinned", "guided"],
    equation: "cos x = 0",
    values: "2.46740110027 22.2066099025 61.6850275068 120.902653913 199.859489122",
  },
];

const BEAM = "Euler-Bernoulli beam of unit length, mass and stiffness";

function exact({ ends, equation, values }: Pair): Case {
  const [left, right] = ends;
  return {
    name: `Beam ${left} and ${right}`,
    source: `Roots of ${equation}, in 30-digit arithmetic.`,
    model: `${BEAM}, 64 elements, ${left} at one end and ${right} at the other: x^2 = omega sqrt(rho A L^4/(E I)).`,
    why: WHY_ABOVE,
    checks: modes(values.split(" "), "", (reference) => aboveBeam(reference)),
    solve: () => squares(unitBeam(left, right), 5),
  };
}

const THOMSON = "W. T. Thomson, Theory of Vibration with Applications, 4th edition";

/** Fine enough that the mesh is out of the last digit printed. */
const FINE = 96;

const APPENDIX: Case = {
  name: "Beams in Thomson's appendix",
  source: `${THOMSON}, appendix D.`,
  model: `${BEAM}, 96 elements: x^2.`,
  why: "One unit of the last digit printed.",
  ...table<{ ends: readonly [End, End]; values: string }>({
    rows: [
      { ends: ["clamped", "clamped"], values: "22.3733 61.6728 120.9034" },
      { ends: ["clamped", "free"], values: "3.5160 22.0345 61.6972" },
      { ends: ["free", "free"], values: "22.3733 61.6728 120.9034" },
    ],
    name: ({ ends }) => ends.join("-"),
    solve: ({ ends }, count) => squares(unitBeam(...ends, FINE), count),
    tolerance: lastDigit,
  }),
};

const SHORT_TABLE: Case = {
  name: "Beams in Thomson's short table",
  source: `${THOMSON}, table 9.5-1.`,
  model: `${BEAM}, 96 elements: x^2.`,
  why: "One unit of the last digit printed. Its 104.0 for the third clamped-pinned mode is left out: the exact value is 104.25.",
  ...table<{ ends: readonly [End, End]; values: string }>({
    rows: [
      { ends: ["pinned", "pinned"], values: "9.87 39.5 88.9" },
      { ends: ["clamped", "free"], values: "3.52 22.0 61.7" },
      { ends: ["free", "free"], values: "22.4 61.7 121.0" },
      { ends: ["clamped", "clamped"], values: "22.4 61.7 121.0" },
      { ends: ["clamped", "pinned"], values: "15.4 50.0" },
      { ends: ["pinned", "free"], values: "15.4 50.0" },
    ],
    name: ({ ends }) => ends.join("-"),
    solve: ({ ends }, count) => squares(unitBeam(...ends, FINE), count),
    tolerance: lastDigit,
  }),
};

const SEVEN_DIGITS: Case = {
  name: "Cantilever to seven digits",
  source:
    "R. D. Blevins, Formulas for Natural Frequency and Mode Shape, table 8-1, as quoted elsewhere.",
  model: `${BEAM}, 96 elements: the wave number x itself, the root of omega sqrt(rho A L^4/(E I)).`,
  why: "One unit of the last digit printed.",
  checks: modes(["1.875104", "4.694091", "7.854757", "10.995541"], "", lastDigit),
  solve: () => squares(unitBeam("clamped", "free", FINE), 4).map(Math.sqrt),
};

export const ENDS_OF_BEAMS: Family = {
  title: "Uniform beams with every pair of ends",
  source: "frequency equations; Thomson",
  cases: [...PAIRS.map(exact), APPENDIX, SHORT_TABLE, SEVEN_DIGITS],
};
