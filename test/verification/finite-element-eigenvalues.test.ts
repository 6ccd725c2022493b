/**
 * What n consistent cubic elements must return, not the beam they stand for: omega sqrt(rho A L^4/(E I))
 * of the discrete problem, from assembled matrices in 40-digit arithmetic. Tests the element matrices,
 * the assembly and the eigen-solver to the last digits on coarse meshes.
 *
 * One element: cantilever 3.533 and 34.81 are the textbook values (R. D. Cook, Concepts and
 * Applications of Finite Element Analysis, from memory); pinned at both ends sqrt(120), sqrt(2520).
 */

import { describe, test } from "vitest";
import { expectClose } from "./compare.ts";
import { frequencies, onePerPair } from "./frequencies.ts";
import { angular, type End, unitBeam } from "./unit-beam.ts";

const EXACT: readonly { ends: readonly [End, End]; n: number; omega: readonly number[] }[] = [
  { ends: ["clamped", "free"], n: 1, omega: [3.53273154283676, 34.8068931082084] },
  {
    ends: ["clamped", "free"],
    n: 2,
    omega: [3.51771504162662, 22.2214744740826, 75.1570830588165, 218.1380245556],
  },
  {
    ends: ["clamped", "free"],
    n: 4,
    omega: [3.51613027059294, 22.0601663079343, 62.1748925258688, 122.657639397972],
  },
  {
    ends: ["clamped", "free"],
    n: 8,
    omega: [3.51602259239693, 22.0362534183283, 61.7347411919442, 121.172750625889],
  },
  {
    ends: ["clamped", "free"],
    n: 16,
    omega: [3.51601572837463, 22.0346041137158, 61.6996671108744, 120.92019347167],
  },
  { ends: ["pinned", "pinned"], n: 1, omega: [Math.sqrt(120), Math.sqrt(2520)] },
  {
    ends: ["pinned", "pinned"],
    n: 2,
    omega: [9.90855871227804, 43.8178046004133, 110.139654716948, 200.798406368178],
  },
  {
    ends: ["pinned", "pinned"],
    n: 4,
    omega: [9.87216716475395, 39.6342348491122, 90.4495228677981, 175.271218401653],
  },
  {
    ends: ["pinned", "pinned"],
    n: 8,
    omega: [9.86976668208479, 39.4886686590158, 88.9407216110548, 158.536939396449],
  },
  {
    ends: ["pinned", "pinned"],
    n: 16,
    omega: [9.86961457712711, 39.4790667283392, 88.8337932195211, 157.954674636063],
  },
  { ends: ["free", "free"], n: 1, omega: [26.8328157299975, 91.6515138991168] },
  {
    ends: ["free", "free"],
    n: 2,
    omega: [22.4232457314396, 70.1775342794019, 175.479907826701, 280.348200783353],
  },
  {
    ends: ["free", "free"],
    n: 4,
    omega: [22.3976113664694, 62.056841993524, 121.860348931455, 223.291257358671],
  },
  {
    ends: ["free", "free"],
    n: 8,
    omega: [22.3750898634301, 61.7088129957891, 121.158598828453, 200.925701238175],
  },
  {
    ends: ["free", "free"],
    n: 16,
    omega: [22.3734026443477, 61.675249329384, 120.9214247518, 199.939604647905],
  },
];

describe("exact eigenvalues of coarse beam meshes", () => {
  test.each(EXACT)("$ends.0 and $ends.1, $n elements", ({ ends, n, omega }) => {
    const found = angular(frequencies(unitBeam(...ends, n), { modes: 2 * omega.length }));
    // Nothing but rounding: the condition of K grows as n^4, 1e-12 is reached with 16 elements.
    expectClose(onePerPair(found), omega, 1e-11);
    expectClose(onePerPair(found.slice(1)), omega, 1e-11);
  });
});
