/** NAFEMS FV12: a free thin square plate, held in its plane: three rigid-body motions, then bending. */

import { type Check, type Family, lastDigit, modes, within } from "../case.ts";
import {
  FREE,
  hertz,
  limit,
  NAFEMS,
  PLATE,
  parameters,
  RITZ_FREE,
  ritzBound,
} from "./thin-square.ts";

interface Row {
  /** counted with the three rigid-body motions */
  readonly mode: number;
  readonly published: string;
  /** of the thin plate, Hz, where the published value is only an upper bound */
  readonly bounds?: number;
}

const ROWS: readonly Row[] = [
  { mode: 4, published: "1.622" },
  { mode: 5, published: "2.360" },
  { mode: 6, published: "2.922" },
  { mode: 7, published: "4.233", bounds: 4.19024 },
  { mode: 8, published: "4.233", bounds: 4.19024 },
  { mode: 9, published: "7.416", bounds: 7.356 },
  { mode: 10, published: "7.392", bounds: 7.356 },
];

/** Below the thin plate: rotary inertia of 50 mm takes 6e-5 from mode 9. */
const SLACK = 1e-4;

const checks: readonly Check[] = ROWS.map(({ mode, published, bounds }) => ({
  quantity: `mode ${mode}`,
  unit: "Hz",
  reference: published,
  tolerance: bounds === undefined ? lastDigit(published) : ritzBound(published, bounds, SLACK),
}));

const HELD = `Square plate, ${PLATE}, free at its edges, ux = uy = rz = 0 everywhere`;
const THIN = `${HELD}, 5 mm thick, where rotary inertia counts for nothing; lambda = omega a^2 sqrt(rho h/D).`;

export const FV12: Family = {
  title: "Free square plate (FV12)",
  source: "NAFEMS R0015",
  cases: [
    {
      name: "FV12, published",
      headline: true,
      source: `${NAFEMS}; mode 10 is a later value from elements of higher order.`,
      model: `${HELD}, 50 mm thick. 32 x 32 cells. Modes 1 to 3 are rigid.`,
      why:
        "Modes 4 to 6: one unit of the last digit printed. From mode 7 on the printed values are upper " +
        "bounds (few terms, or few elements), 0.5 to 1 % above the converged plate: ours must not lie above " +
        "them, nor more than 1e-4 (rotary inertia) below the converged 4.19024 and 7.35600 Hz.",
      checks,
      solve: () => hertz("free", 50, 32).slice(0, ROWS.length),
    },
    {
      name: "FV12, converged thin plate",
      source: RITZ_FREE,
      model: `${THIN} 64 x 64 cells. Elastic modes only.`,
      why:
        "The grid converges with the square of the cell: mode 1 is 0.219, 0.063, 0.017, 0.0043 % high with 8, " +
        "16, 32, 64 cells a side, modes 6 and 7 twice that and mode 8 less than any.",
      checks: modes(FREE, "", within(1.2e-4)),
      solve: () => parameters("free", 5, 64),
    },
    {
      name: "FV12, limit of the mesh",
      source: RITZ_FREE,
      model: `${THIN} 32 x 32 and 64 x 64 cells, extrapolated by the square of the cell.`,
      why: "What terms of higher order leave.",
      checks: modes(FREE, "", within(5e-6)),
      solve: () => limit("free", 5),
    },
  ],
};
