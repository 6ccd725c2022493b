/** NAFEMS FV13: a simply supported thin square plate; pi^2 (m^2 + n^2) exactly. */

import { below, type Check, type Family, unitOfLastDigit, within } from "../case.ts";
import { hertz, limit, NAFEMS, PLATE, parameters } from "./thin-square.ts";

interface Row {
  /** half-waves along x and y */
  readonly m: number;
  readonly n: number;
  readonly published: string;
  /** pi^2 (m^2 + n^2) */
  readonly thin: string;
  /** pi^2 (m^2 + n^2)/sqrt(1 + (h k)^2/12), k^2 = pi^2 (m^2 + n^2)/a^2, h = 50 mm */
  readonly rotary: string;
}

const row = (m: number, n: number, published: string, thin: string, rotary: string): Row => ({
  m,
  n,
  published,
  thin,
  rotary,
});

const ROWS: readonly Row[] = [
  row(1, 1, "2.377", "19.7392088022", "19.7388029435"),
  row(1, 2, "5.942", "49.3480220054", "49.3454855059"),
  row(2, 1, "5.942", "49.3480220054", "49.3454855059"),
  row(2, 2, "9.507", "78.9568352087", "78.9503420704"),
  row(1, 3, "11.884", "98.6960440109", "98.6858987951"),
  row(3, 1, "11.884", "98.6960440109", "98.6858987951"),
  row(2, 3, "15.449", "128.304857214", "128.287712592"),
  row(3, 2, "15.449", "128.304857214", "128.287712592"),
];

const CELLS = 64;

/**
 * What the grid takes from the frequency of m by n half-waves, leading term, p = (m pi/N)^2 and
 * q = (n pi/N)^2 for N cells a side: reading the twist from the corners of a cell loses (p + q)/12 of
 * its energy, multiplying mean curvatures (p + q)/6 of theirs. A tenth more for what this leaves out.
 */
function meshError({ m, n }: Row): number {
  const nu = 0.3;
  const pq = (m * m + n * n) * (Math.PI / CELLS) ** 2;
  const [twist, poisson] = [2 * (1 - nu), 2 * nu].map(
    (c) => (c * (m * n) ** 2) / (m * m + n * n) ** 2,
  );
  return (1.1 * (twist / 12 + poisson / 6) * pq) / 2;
}

const rotaryInertia = ({ thin, rotary }: Row) => 1 - Number(rotary) / Number(thin);

const quantity = ({ m, n }: Row) => `(${m}, ${n})`;

function published(of: Row): Check {
  const digit = unitOfLastDigit(of.published) / Number(of.published);
  const low = -(meshError(of) + rotaryInertia(of) + digit);
  return {
    quantity: quantity(of),
    unit: "Hz",
    reference: of.published,
    tolerance: { kind: "relative", low, high: digit },
  };
}

const thin = (of: Row): Check => ({
  quantity: quantity(of),
  unit: "",
  reference: of.thin,
  tolerance: below(meshError(of)),
});

/** The next term of the mesh error goes with the fourth power of the wave number. */
const rotary = (of: Row): Check => ({
  quantity: quantity(of),
  unit: "",
  reference: of.rotary,
  tolerance: within(1.2e-7 * (of.m ** 2 + of.n ** 2) ** 2),
});

const HINGED = `Square plate, ${PLATE}, deflection and slope along the edge zero at all four edges`;
const MODES = "Checks are named by their half-waves (m, n).";
const WAVES =
  "with p = (m pi/N)^2, q = (n pi/N)^2 for N cells a side, reading the twist from the corners of a cell " +
  "loses (p + q)/12 of its energy and multiplying mean curvatures (p + q)/6 of theirs, which explains " +
  "the error to 4 %";

export const FV13: Family = {
  title: "Simply supported square plate (FV13)",
  source: "NAFEMS R0015",
  cases: [
    {
      name: "FV13, published",
      headline: true,
      source: `${NAFEMS}; the number of the test from memory.`,
      model: `${HINGED}, 50 mm thick. ${CELLS} x ${CELLS} cells. ${MODES}`,
      why:
        "One unit of the last digit printed; below it also what the grid of cells and rotary inertia, up to " +
        "1.3e-4, take away.",
      checks: ROWS.map(published),
      solve: () => hertz("hinged", 50, CELLS),
    },
    {
      name: "FV13, exact thin plate",
      source: "Closed form: lambda = pi^2 (m^2 + n^2), lambda = omega a^2 sqrt(rho h/D).",
      model: `${HINGED}, 5 mm thick. ${CELLS} x ${CELLS} cells. ${MODES}`,
      why: `From below, as the mesh explains: ${WAVES}; a tenth more is allowed.`,
      checks: ROWS.map(thin),
      solve: () => parameters("hinged", 5, CELLS),
    },
    {
      name: "FV13, limit of the mesh, with rotary inertia",
      source:
        "Closed form: lambda = pi^2 (m^2 + n^2)/sqrt(1 + (h k)^2/12), k^2 = pi^2 (m^2 + n^2)/a^2.",
      model: `${HINGED}, 50 mm thick. 32 x 32 and 64 x 64 cells, extrapolated by the square of the cell. ${MODES}`,
      why:
        "The next term of the mesh error, 1.2e-7 (m^2 + n^2)^2. Rotary inertia takes 2.1e-5 to 1.3e-4, so " +
        "every row sees it.",
      checks: ROWS.map(rotary),
      solve: () => limit("hinged", 50),
    },
  ],
};
