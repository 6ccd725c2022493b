/** How fast the elements converge: the order measured from two meshes, one twice as fine. */

import { type Case, type Family, withinAbsolute } from "../case.ts";
import { squares, unitBeam } from "../unit-beam.ts";
import { flatBending } from "./supported-beam.ts";
import { type Motion, unitRod, waveNumbers } from "./unit-rod.ts";

interface Measured {
  readonly quantity: string;
  readonly order: 2 | 4;
  /** how far the next term of the error may move it */
  readonly slack: number;
  readonly exact: number;
  /** the number of elements of the coarser mesh */
  readonly elements: number;
  readonly solve: (elements: number) => number;
}

const ends = ["fixed", "free"] as const;
const rodMode = (motion: Motion) => (n: number) => waveNumbers(unitRod(motion, ends, n), 2)[1];

const MEASURED: readonly Measured[] = [
  {
    quantity: "bending, cantilever mode 3",
    order: 4,
    slack: 0.03,
    exact: 61.6972144135,
    elements: 16,
    solve: (n) => squares(unitBeam("clamped", "free", n), 3)[2],
  },
  {
    quantity: "bending, free beam mode 2",
    order: 4,
    slack: 0.03,
    exact: 61.6728228679,
    elements: 16,
    solve: (n) => squares(unitBeam("free", "free", n), 2)[1],
  },
  {
    quantity: "bending with rotary inertia, L/h = 10, mode 2",
    order: 4,
    slack: 0.03,
    exact: (2 * Math.PI) ** 2 / Math.sqrt(1 + (2 * Math.PI) ** 2 / 1200),
    elements: 16,
    solve: (n) => flatBending("rayleigh", 10, "5/6", n)[1],
  },
  {
    quantity: "stretching, fixed-free mode 2",
    order: 2,
    slack: 1e-3,
    exact: 1.5 * Math.PI,
    elements: 32,
    solve: rodMode("stretching"),
  },
  {
    quantity: "twisting, fixed-free mode 2",
    order: 2,
    slack: 1e-3,
    exact: 1.5 * Math.PI,
    elements: 32,
    solve: rodMode("twisting"),
  },
  {
    quantity: "bending with shear, L/h = 10, mode 2",
    order: 2,
    slack: 0.03,
    exact: 37.096158848,
    elements: 16,
    solve: (n) => flatBending("timoshenko", 10, "5/6", n)[1],
  },
];

function measuredOrder({ exact, elements, solve }: Measured): number {
  const error = (n: number) => solve(n) / exact - 1;
  return Math.log2(error(elements) / error(2 * elements));
}

const ORDERS: Case = {
  name: "Order of convergence",
  source:
    "Leading terms of the errors: (k h)^4/1440 in bending, (k h)^2/24 in stretching and twisting; a shear strain that is " +
    "constant along the element makes it 2 with shear.",
  model:
    "log2 of the error with n elements over that with 2n, against the exact frequency: n = 16, and 32 for stretching and twisting.",
  why: "The next term of the error.",
  checks: MEASURED.map(({ quantity, order, slack }) => ({
    quantity,
    unit: "",
    reference: String(order),
    tolerance: withinAbsolute(slack),
  })),
  solve: () => MEASURED.map(measuredOrder),
};

export const CONVERGENCE: Family = {
  title: "Convergence of beam elements",
  source: "error terms",
  cases: [ORDERS],
};
