/** Stretching rods and twisting shafts. */

import type { Case, Family } from "../case.ts";
import { table } from "./rows.ts";
import {
  aboveRod,
  endBody,
  MOTIONS,
  type Motion,
  type RodEnd,
  unitRod,
  WHY_ABOVE_ROD,
  waveNumbers,
} from "./unit-rod.ts";

/** What each motion is called, and what the numbers are ratios of. */
const WORDS = {
  stretching: {
    what: "Rod",
    model:
      "Rod of unit length, E A and mass, 100 elements: x = omega L sqrt(rho/E) of three modes.",
    body: "mass",
  },
  twisting: {
    what: "Shaft",
    model:
      "Shaft of unit length, G J and rotary inertia, 100 elements: x = omega L sqrt(rho Ip/(G J)) of three modes.",
    body: "disc",
  },
} as const;

const plainEnds = (motion: Motion): Case => ({
  name: `${WORDS[motion].what} with plain ends`,
  source: "Closed form: x = (2n - 1) pi/2 fixed and free, x = n pi otherwise.",
  model: WORDS[motion].model,
  why: WHY_ABOVE_ROD,
  ...table<{ ends: readonly [RodEnd, RodEnd]; values: string }>({
    rows: [
      { ends: ["fixed", "free"], values: "1.57079632679 4.71238898038 7.85398163397" },
      { ends: ["fixed", "fixed"], values: "3.14159265359 6.28318530718 9.42477796077" },
      { ends: ["free", "free"], values: "3.14159265359 6.28318530718 9.42477796077" },
    ],
    name: ({ ends }) => ends.join("-"),
    solve: ({ ends }, count) => waveNumbers(unitRod(motion, ends), count),
    tolerance: aboveRod,
  }),
});

interface OneBody {
  /** the rod's own mass, or inertia, over the body's */
  readonly alpha: number;
  readonly values: string;
}

const ONE_BODY: readonly OneBody[] = [
  { alpha: 0.01, values: "0.0998336385511 3.14477252311 6.28477645233" },
  { alpha: 0.1, values: "0.311052848200 3.17309717669 6.29905935990" },
  { alpha: 0.5, values: "0.653271187094 3.29231002128 6.36162039207" },
  { alpha: 1, values: "0.860333589019 3.42561845948 6.43729817917" },
  { alpha: 2, values: "1.07687398631 3.64359716743 6.57833373272" },
  { alpha: 5, values: "1.31383771649 4.03356779034 6.90959579542" },
  { alpha: 10, values: "1.42887001121 4.30580141312 7.22810977163" },
  { alpha: 100, values: "1.55524512926 4.66576514173 7.77637407785" },
];

function withOneBody(motion: Motion, alpha: number): object {
  const bodies = { end: endBody(motion, "right", 1 / alpha) };
  return unitRod(motion, ["fixed", "free"], undefined, bodies);
}

const oneBody = (motion: Motion): Case => ({
  name: `${WORDS[motion].what} with a ${WORDS[motion].body} at its free end`,
  source: `Roots of x tan x = alpha in 30-digit arithmetic, alpha the ${WORDS[motion].what.toLowerCase()}'s own over the ${WORDS[motion].body}'s.`,
  model: WORDS[motion].model,
  why: WHY_ABOVE_ROD,
  ...table({
    rows: ONE_BODY,
    name: ({ alpha }) => `alpha = ${alpha}`,
    solve: ({ alpha }, count) => waveNumbers(withOneBody(motion, alpha), count),
    tolerance: aboveRod,
  }),
});

interface TwoBodies {
  /** in units of the rod's own */
  readonly q: readonly [number, number];
  readonly values: string;
}

const TWO_BODIES: readonly TwoBodies[] = [
  { q: [1, 1], values: "1.30654237419 3.67319440630 6.58462004256" },
  { q: [2, 2], values: "0.960188873915 3.43101430538 6.43819715056" },
  { q: [1, 0.5], values: "1.50941034469 3.87124436755 6.72017110936" },
  { q: [5, 5], values: "0.622105696401 3.26398905443 6.34619435339" },
];

function withTwoBodies(motion: Motion, [q1, q2]: readonly [number, number]): object {
  const bodies = { first: endBody(motion, "left", q1), second: endBody(motion, "right", q2) };
  return unitRod(motion, ["free", "free"], undefined, bodies);
}

const twoBodies = (motion: Motion): Case => ({
  name: `Free ${WORDS[motion].what.toLowerCase()} with a ${WORDS[motion].body} at each end`,
  source: `Roots of tan x = -(q1 + q2) x/(1 - q1 q2 x^2) in 30-digit arithmetic, q the ${WORDS[motion].body}'s share of the ${WORDS[motion].what.toLowerCase()}'s own.`,
  model: WORDS[motion].model,
  why: WHY_ABOVE_ROD,
  ...table({
    rows: TWO_BODIES,
    name: ({ q }) => `q = ${q.join(" and ")}`,
    solve: ({ q }, count) => waveNumbers(withTwoBodies(motion, q), count),
    tolerance: aboveRod,
  }),
});

export const RODS_AND_SHAFTS: Family = {
  title: "Stretching rods and twisting shafts",
  source: "wave equation",
  cases: [...MOTIONS.map(plainEnds), ...MOTIONS.map(oneBody), ...MOTIONS.map(twoBodies)],
};
