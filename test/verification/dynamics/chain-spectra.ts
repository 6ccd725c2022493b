/** Unit masses on unit springs in a row, whose natural frequencies are known in closed form. */

import { lowestModes } from "../../../src/linalg/modes.ts";
import { chain, type Ends } from "../../linalg/chains.ts";
import { type Case, type Family, modes, withinAbsolute } from "../case.ts";

const FORMULAS: Record<Ends, string> = {
  "fixed-free": "4 sin^2((2 i - 1) pi/(4 n + 2))",
  "fixed-fixed": "4 sin^2(i pi/(2 n + 2))",
  "free-free": "4 sin^2((i - 1) pi/(2 n))",
};

const SPECTRA: readonly (readonly [ends: Ends, ...lambda: string[]])[] = [
  ["fixed-free", "1.000000000000"],
  ["fixed-free", "0.381966011250", "2.618033988750"],
  ["fixed-free", "0.198062264195", "1.554958132087", "3.246979603717"],
  [
    "fixed-free",
    "0.081014052771",
    "0.690278532109",
    "1.715370323453",
    "2.830830026004",
    "3.682507065662",
  ],
  ["fixed-fixed", "2.000000000000"],
  ["fixed-fixed", "1.000000000000", "3.000000000000"],
  ["fixed-fixed", "0.585786437627", "2.000000000000", "3.414213562373"],
  [
    "fixed-fixed",
    "0.267949192431",
    "1.000000000000",
    "2.000000000000",
    "3.000000000000",
    "3.732050807569",
  ],
  ["free-free", "0.000000000000", "2.000000000000"],
  ["free-free", "0.000000000000", "1.000000000000", "3.000000000000"],
  [
    "free-free",
    "0.000000000000",
    "0.381966011250",
    "1.381966011250",
    "2.618033988750",
    "3.618033988750",
  ],
];

function chainCase([ends, ...lambda]: (typeof SPECTRA)[number]): Case {
  const n = lambda.length;
  const size = n === 1 ? "1 mass" : `${n} masses`;
  return {
    name: `Chain, ${ends}, ${size}`,
    source: `Closed form: lambda_i = ${FORMULAS[ends]}.`,
    model: `${size} of 1 kg, springs of 1 N/m, straight into the eigen-solver; no motion is given to it beforehand, so it finds the zero of a free chain itself.`,
    why: "Exact: the twelve decimals printed.",
    checks: modes(lambda, "1/s^2", withinAbsolute(1e-12), "lambda"),
    solve: () => {
      const { K, M } = chain(n, ends);
      return [...lowestModes(K, M, { count: n }).lambda];
    },
  };
}

export const CHAIN_SPECTRA: Family = {
  title: "Chains of masses and springs",
  source: "closed form",
  cases: SPECTRA.map(chainCase),
};
