/** SDLS01: the square plate free in space and clamped at one edge, with Barton's few-term values. */

import { type Case, type Family, modes, within } from "../case.ts";
import { plateHertz, plateLambda } from "./rectangle.ts";
import { CANTILEVER, FREE, RITZ_CANTILEVER, RITZ_FREE, ritzBound } from "./thin-square.ts";

const FREE_HZ = ["33.7119", "49.4558", "61.0513", "87.5160", "87.5160"];
const CANTILEVER_HZ = ["8.7266", "21.3042", "53.5542", "68.2984", "77.7448", "136.0471"];

/** sqrt(D/(rho h))/(2 pi a^2), Hz: E = 210 GPa, rho = 7800 kg/m^3, h = 10 mm, a = 1 m. */
const HZ_PER_LAMBDA = Math.sqrt((210e9 * 0.01 ** 2) / (12 * 0.91 * 7800)) / (2 * Math.PI);

const CELLS = 32;
/** Below the thin plate: rotary inertia of 10 mm takes (h^2/24) k^2, 2.2e-4 from mode 6. */
const SLACK = 5e-4;

const BOOK =
  "M. V. Barton, Vibrations of rectangular and skew cantilever plates, J. Applied Mechanics 18 (1951) " +
  "129-134, as used in Societe Francaise des Mecaniciens, Guide de validation, AFNOR (1990), sheet " +
  "SDLS01/89, as quoted in a benchmark sheet; dimensions from memory, confirmed by the frequencies, which " +
  "are Barton's lambda times one factor.";
const DATA = "Square plate, 1 m x 1 m, E = 210 GPa, nu = 0.3, rho = 7800 kg/m^3";
const LAMBDA = "1 mm thick; lambda = omega a^2 sqrt(rho h/D)";
const GRID = `${CELLS} x ${CELLS} cells`;

interface Boundary {
  readonly name: string;
  readonly words: string;
  readonly published: readonly string[];
  readonly converged: readonly string[];
  readonly ritz: string;
  readonly bounds: string;
  readonly mesh: string;
}

const BOUNDARIES: readonly Boundary[] = [
  {
    name: "free",
    words: "free in space (six rigid-body motions, which are not counted)",
    published: FREE_HZ,
    converged: FREE,
    ritz: RITZ_FREE,
    bounds: "0.2 to 1 %",
    mesh: "0.010 to 0.018 % high with 32 cells a side, modes 6 and 7 0.036 %, mode 8 less than any",
  },
  {
    name: "cantilever",
    words: "one edge clamped",
    published: CANTILEVER_HZ,
    converged: CANTILEVER,
    ritz: RITZ_CANTILEVER,
    bounds: "0.2 to 0.7 %",
    mesh: "0.007 to 0.035 % high with 32 cells a side, modes 4 and 6 up to 0.010 % low",
  },
];

function casesOf({ name, words, published, converged, ritz, bounds, mesh }: Boundary): Case[] {
  const plate = { ratio: 1, clampedRoot: name === "cantilever" };
  const limits = converged.map((lambda) => Number(lambda) * HZ_PER_LAMBDA);
  return [
    {
      name: `SDLS01 ${name}, published`,
      headline: true,
      source: BOOK,
      model: `${DATA}, 10 mm thick, ${words}. ${GRID}.`,
      why:
        `Few-term upper bounds, ${bounds} above the converged plate: ours must not lie above them, nor ` +
        "more than 5e-4 (mesh and rotary inertia) below the converged plate.",
      checks: modes(published, "Hz", (reference, i) => ritzBound(reference, limits[i], SLACK)),
      solve: () => plateHertz({ ...plate, thickness: 10 }, CELLS, published.length),
    },
    {
      name: `SDLS01 ${name}, converged thin plate`,
      source: ritz,
      model: `${DATA}, ${LAMBDA}, ${words}. ${GRID}.`,
      why: `The grid converges with the square of the cell: ${mesh}.`,
      checks: modes(converged, "", within(4e-4)),
      solve: () => plateLambda({ ...plate, thickness: 1 }, CELLS, converged.length),
    },
  ];
}

export const SDLS01: Family = {
  title: "Square plates, free and cantilevered (SDLS01)",
  source: "VPCS, AFNOR (1990)",
  cases: BOUNDARIES.flatMap(casesOf),
};
