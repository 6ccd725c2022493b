/**
 * What n consistent elements must return, not the beam they stand for: element matrices, assembly and
 * eigen-solver to the last digits on coarse meshes.
 */

import { type Family, within } from "../case.ts";
import { type End, squares, unitBeam } from "../unit-beam.ts";
import { table } from "./rows.ts";
import { MOTIONS, type Motion, type RodEnd, unitRod, waveNumbers } from "./unit-rod.ts";

interface BeamRow {
  readonly ends: readonly [End, End];
  readonly elements: number;
  readonly values: string;
}

const CANTILEVER = ["clamped", "free"] as const;
const PINNED = ["pinned", "pinned"] as const;
const FREE = ["free", "free"] as const;

// biome-ignore format: one mesh, one row
const BEAMS: readonly BeamRow[] = [
  { ends: CANTILEVER, elements: 1, values: "3.53273154283676 34.8068931082084" },
  { ends: CANTILEVER, elements: 2, values: "3.51771504162662 22.2214744740826 75.1570830588165 218.1380245556" },
  { ends: CANTILEVER, elements: 4, values: "3.51613027059294 22.0601663079343 62.1748925258688 122.657639397972" },
  { ends: CANTILEVER, elements: 8, values: "3.51602259239693 22.0362534183283 61.7347411919442 121.172750625889" },
  { ends: CANTILEVER, elements: 16, values: "3.51601572837463 22.0346041137158 61.6996671108744 120.92019347167" },
  { ends: PINNED, elements: 1, values: "10.9544511501033 50.1996015920445" },
  { ends: PINNED, elements: 2, values: "9.90855871227804 43.8178046004133 110.139654716948 200.798406368178" },
  { ends: PINNED, elements: 4, values: "9.87216716475395 39.6342348491122 90.4495228677981 175.271218401653" },
  { ends: PINNED, elements: 8, values: "9.86976668208479 39.4886686590158 88.9407216110548 158.536939396449" },
  { ends: PINNED, elements: 16, values: "9.86961457712711 39.4790667283392 88.8337932195211 157.954674636063" },
  { ends: FREE, elements: 1, values: "26.8328157299975 91.6515138991168" },
  { ends: FREE, elements: 2, values: "22.4232457314396 70.1775342794019 175.479907826701 280.348200783353" },
  { ends: FREE, elements: 4, values: "22.3976113664694 62.056841993524 121.860348931455 223.291257358671" },
  { ends: FREE, elements: 8, values: "22.3750898634301 61.7088129957891 121.158598828453 200.925701238175" },
  { ends: FREE, elements: 16, values: "22.3734026443477 61.675249329384 120.9214247518 199.939604647905" },
];

interface RodRow {
  readonly ends: readonly [RodEnd, RodEnd];
  readonly elements: number;
  readonly values: string;
}

const ROOT = ["fixed", "free"] as const;
const BOTH = ["fixed", "fixed"] as const;

// biome-ignore format: one mesh, one row
const RODS: readonly RodRow[] = [
  { ends: ROOT, elements: 1, values: "1.73205080756888" },
  { ends: ROOT, elements: 2, values: "1.61141568234435 5.62930313488348" },
  { ends: ROOT, elements: 4, values: "1.58090801884924 4.98719569904784 9.05940089337861" },
  { ends: ROOT, elements: 8, values: "1.57332082538805 4.78078011675052 8.17190428882695" },
  { ends: ROOT, elements: 16, values: "1.57142722688121 4.72943920047635 7.9330537935186" },
  { ends: BOTH, elements: 2, values: "3.46410161513775" },
  { ends: BOTH, elements: 4, values: "3.2228313646887 6.92820323027551 11.258606269767" },
  { ends: BOTH, elements: 8, values: "3.16181603769847 6.4456627293774 9.97439139809567" },
  { ends: BOTH, elements: 16, values: "3.1466416507761 6.32363207539694 9.56156023350104" },
];

const rods = (motion: Motion) => ({
  name: `Coarse meshes of a ${motion === "stretching" ? "rod" : "shaft"}`,
  source:
    "Closed form: sqrt(6 n^2 (1 - cos t)/(2 + cos t)), t = (2i - 1) pi/(2n) fixed and free, t = i pi/n fixed at both ends.",
  model: `Unit ${motion === "stretching" ? "rod" : "shaft"} of n elements, linear shape functions, consistent mass: omega L/c.`,
  why: "Nothing but rounding: the condition of K, 16^2, times 2.2e-16 is 6e-14.",
  ...table({
    rows: RODS,
    name: ({ ends, elements }) => `${ends.join("-")}, n = ${elements}`,
    solve: ({ ends, elements }, count) => waveNumbers(unitRod(motion, ends, elements), count),
    tolerance: () => within(1e-13),
  }),
});

export const FINITE_ELEMENTS: Family = {
  title: "Exact eigenvalues of coarse meshes",
  source: "element matrices in 30 digits",
  cases: [
    {
      name: "Coarse meshes of a beam",
      source:
        "Assembled matrices in 30-digit arithmetic. One element: sqrt(120) and sqrt(2520) pinned; 3.533 and 34.81 clamped, " +
        "as in R. D. Cook, Concepts and Applications of Finite Element Analysis (from memory).",
      model:
        "Unit Euler-Bernoulli beam of n elements, cubic shape functions, consistent mass: omega sqrt(rho A L^4/(E I)).",
      why: "Nothing but rounding: the condition of K, 16^4, times 2.2e-16 is 1.5e-11; 7e-13 is found.",
      ...table({
        rows: BEAMS,
        name: ({ ends, elements }) => `${ends.join("-")}, n = ${elements}`,
        solve: ({ ends, elements }, count) => squares(unitBeam(...ends, elements), count),
        tolerance: () => within(1e-11),
      }),
    },
    ...MOTIONS.map(rods),
  ],
};
