/** Torsion constant of the rectangle, J = beta b t^3 with b >= t. */

import { torsionBeta } from "../../../src/material/torsion.ts";
import { type Check, type Family, lastDigit, type Tolerance } from "../case.ts";
import { rounded } from "./entries.ts";

/** b/t and beta. */
type Row = readonly [ratio: number, beta: string];

// biome-ignore format: table
const SERIES: readonly Row[] = [
  [1, "0.1405770150"], [1.1, "0.1539836482"], [1.2, "0.1661189101"], [1.3, "0.1770592069"],
  [1.4, "0.1869039975"], [1.5, "0.1957607089"], [1.8, "0.2174311533"], [2, "0.2286816771"],
  [2.3, "0.2421251530"], [2.4, "0.2458913468"], [2.5, "0.2493650747"], [2.8, "0.2583262987"],
  [3, "0.2633169310"], [4, "0.2808129583"], [5, "0.2913167542"], [6, "0.2983195073"],
  [7.5, "0.3053222722"], [8, "0.3070729635"], [10, "0.3123250375"], [20, "0.3228291854"],
  [100, "0.3312325037"], [Number.POSITIVE_INFINITY, "0.3333333333"],
];

// biome-ignore format: table
const PRINTED: readonly Row[] = [
  [1, "0.141"], [1.1, "0.154"], [1.2, "0.166"], [1.4, "0.186"], [1.5, "0.196"], [2, "0.229"],
  [2.3, "0.242"], [2.5, "0.249"], [2.8, "0.258"], [3, "0.263"], [4, "0.281"], [5, "0.291"],
  [7.5, "0.305"], [10, "0.312"], [Number.POSITIVE_INFINITY, "0.333"],
];

/** Printed too low by more than a unit of the last digit. */
const PRINTED_LOW: readonly Row[] = [
  [1.3, "0.175"],
  [1.8, "0.216"],
];

/** Ours lies one to two units of the third digit above, with 0.1 for rounding. */
const ONE_TO_TWO_UNITS: Tolerance = { kind: "absolute", low: 1e-3, high: 2.1e-3 };

const MODEL =
  "J = beta b t^3 of a solid rectangle with the sides b >= t; the function that all strips, arms and " +
  "rectangular members take their torsion from.";
const MANUAL = 'Manual page "Rectangular Sections", table of the torsion constant.';

export const RECTANGLE_TORSION: Family = {
  title: "Torsion constant of the rectangle",
  source: "Saint-Venant series; printed table",
  cases: [
    {
      name: "Rectangle in torsion, exact series",
      source:
        "S. P. Timoshenko & J. N. Goodier, Theory of Elasticity, torsion of rectangular bars (section " +
        "from memory), the series with its exact tail in 25-digit arithmetic.",
      model: MODEL,
      why: "Half a unit of the tenth digit.",
      checks: SERIES.map((row) => check(row, rounded(row[1]))),
      solve: () => SERIES.map(([ratio]) => torsionBeta(ratio)),
    },
    {
      name: "Rectangle in torsion, printed table",
      headline: true,
      source: MANUAL,
      model: MODEL,
      why: "One unit of the last digit: the table rounds some values and cuts others.",
      checks: PRINTED.map((row) => check(row, lastDigit(row[1]))),
      solve: () => PRINTED.map(([ratio]) => torsionBeta(ratio)),
    },
    {
      name: "Rectangle in torsion, two values printed low",
      source: MANUAL,
      model: MODEL,
      why:
        "The series gives 0.1771 and 0.2174: the table is one to two units too low here, and ours must be " +
        "above it.",
      checks: PRINTED_LOW.map((row) => check(row, ONE_TO_TWO_UNITS)),
      solve: () => PRINTED_LOW.map(([ratio]) => torsionBeta(ratio)),
    },
  ],
};

function check([ratio, reference]: Row, tolerance: Tolerance): Check {
  const shown = Number.isFinite(ratio) ? ratio : "infinity";
  return { quantity: `beta at b/t = ${shown}`, unit: "", reference, tolerance };
}
