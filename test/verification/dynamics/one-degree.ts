/** Steady vibration of one degree of freedom, through the whole forced response. */

import { type Case, type Check, type Family, lastDigit, within } from "../case.ts";
import type { Oscillator } from "./block.ts";
import {
  firstFrequency,
  magnification,
  transmissibility,
  unbalanceAmplitude,
} from "./oscillator.ts";

/** A table over damping (rows) and frequency ratio (columns). */
interface Grid {
  readonly ratios: readonly (readonly [name: string, r: number])[];
  readonly rows: readonly (readonly [zeta: number, ...values: string[]])[];
}

const H: Grid = {
  ratios: plain(0.5, 1, 2, 3),
  rows: [
    [0.01, "1.3332148306", "50.0000000000", "0.3333037077", "0.1249964845"],
    [0.05, "1.3303802105", "10.0000000000", "0.3325950526", "0.1249122020"],
    [0.1, "1.3216372009", "5.0000000000", "0.3304093002", "0.1246499137"],
    [0.2, "1.2883132528", "2.5000000000", "0.3220783132", "0.1236170441"],
  ],
};

// biome-ignore format: one damping ratio, one row
const TR: Grid = {
  ratios: [["0.5", 0.5], ["1", 1], ["sqrt 2", Math.SQRT2], ["2", 2], ["3", 3], ["5", 5]],
  rows: [
    [0.01, "1.3332814897", "50.0099990002", "1.0000000000", "0.3335702440", "0.1252212761", "0.0418741183"],
    [0.05, "1.3320421477", "10.0498756211", "1.0000000000", "0.3391817327", "0.1304121675", "0.0465746433"],
    [0.1, "1.3282289485", "5.0990195136", "1.0000000000", "0.3558617071", "0.1453655301", "0.0588744809"],
    [0.2, "1.3138268831", "2.6925824036", "1.0000000000", "0.4124614907", "0.1930959957", "0.0928476691"],
  ],
};

const UNBALANCED: Grid = {
  ratios: plain(0.5, 1, 2, 5, 20),
  rows: [
    [0.02, "0.3332148780", "25.0000000000", "1.3328595119", "1.0416304996", "1.0025042506"],
    [0.1, "0.3304093002", "5.0000000000", "1.3216372009", "1.0407636178", "1.0024558926"],
  ],
};

function plain(...ratios: number[]) {
  return ratios.map((r) => [String(r), r] as const);
}

function gridCase(
  words: Omit<Case, "checks" | "solve">,
  { ratios, rows }: Grid,
  tolerance: (r: number) => number,
  solve: (r: number, lossFactor: number) => number,
): Case {
  const cells = rows.flatMap(([zeta, ...values]) =>
    ratios.map(([name, r], i) => ({ zeta, r, name, reference: values[i] })),
  );
  const checks = cells.map(
    ({ zeta, r, name, reference }): Check => ({
      quantity: `zeta ${zeta}, r ${name}`,
      unit: "",
      reference,
      tolerance: within(tolerance(r)),
    }),
  );
  return {
    ...words,
    checks,
    solve: () => cells.map(({ zeta, r }) => solve(r, 2 * zeta * r)),
  };
}

const THOMSON = "W. T. Thomson, Theory of Vibration with Applications";
const VISCOUS =
  "The loss factor of each row is 2 zeta r, with which structural damping equals the viscous damper of " +
  "the table at that frequency.";
const BLOCK =
  "A block of 1 kg that can only move along x, on a spring to the ground, 10 Hz, shaken by its motor; " +
  "amplitude from what the accelerometer of a board on it reads at full speed.";
const ELASTIC =
  "The block itself gives a little, a millionth of what the spring does, and the arithmetic of so stiff a block rounds; together they stay below 1e-7";

/** 100 kg on 700 kN/m, shaken by 350 N at 3000 rpm, zeta 0.20. */
const MACHINE: Oscillator = { m: 100, k: 700e3 };
const MACHINE_RATIO = 3.75492142;

function machine(): number[] {
  const lossFactor = 2 * 0.2 * MACHINE_RATIO;
  const transmitted = transmissibility(MACHINE_RATIO, lossFactor, MACHINE);
  const X = (magnification(MACHINE_RATIO, lossFactor, MACHINE) * 350) / MACHINE.k;
  return [firstFrequency(MACHINE), X, transmitted, 350 * transmitted];
}

const MACHINE_QUANTITIES = [
  ["natural frequency", "Hz"],
  ["amplitude", "m"],
  ["transmissibility", ""],
  ["force into the floor", "N"],
] as const;

function machineChecks(
  references: readonly string[],
  tolerance: (text: string) => Check["tolerance"],
) {
  return MACHINE_QUANTITIES.map(
    ([quantity, unit], i): Check => ({
      quantity,
      unit,
      reference: references[i],
      tolerance: tolerance(references[i]),
    }),
  );
}

const MACHINE_MODEL =
  "100 kg on 700 kN/m, 350 N at 3000 rpm, zeta = 0.20; the transmissibility from a second frame, in " +
  "which the machine hangs on a deck that is shaken.";

export const ONE_DEGREE: Family = {
  title: "One degree of freedom, forced",
  source: "Thomson; closed form",
  cases: [
    gridCase(
      {
        name: "Displacement magnification",
        source: `H = 1/sqrt((1 - r^2)^2 + (2 zeta r)^2), evaluated to ten decimals; as in ${THOMSON}, chapter 3.`,
        model: `${BLOCK} ${VISCOUS}`,
        why: `${ELASTIC}.`,
      },
      H,
      () => 1e-7,
      (r, lossFactor) => magnification(r, lossFactor),
    ),
    gridCase(
      {
        name: "Transmissibility",
        source: `TR = sqrt(1 + (2 zeta r)^2) H, one at r = sqrt 2 for any damping (${THOMSON}, p. 67); evaluated to ten decimals.`,
        model: `A tray of 1 kg on a deck of 1 kg, a spring along x between them that gives the tray 10 Hz on a deck at rest; the motor shakes the deck. The ratio of the amplitudes of two boards, one on each. ${VISCOUS}`,
        why: `${ELASTIC}; above the resonance, where the tray is nearly at rest, it grows with r^2.`,
      },
      TR,
      (r) => 1e-7 * Math.max(1, r ** 2 / 2),
      (r, lossFactor) => transmissibility(r, lossFactor),
    ),
    gridCase(
      {
        name: "Rotating unbalance",
        source: `m X/U = r^2 H (${THOMSON}, equations 3.2-4 and 3.2-5, p. 57); evaluated to ten decimals.`,
        model: `${BLOCK} The rotor's unbalance of 1 g mm is in the file. ${VISCOUS}`,
        why: `${ELASTIC}, and grows with r^2 far above the resonance.`,
      },
      UNBALANCED,
      (r) => 1e-7 * Math.max(1, r ** 2 / 20),
      (r, lossFactor) => unbalanceAmplitude(r, lossFactor, 1e-6) / 1e-6,
    ),
    {
      name: "Machine on springs, published",
      source: `${THOMSON}, example 3.6-1, p. 69; the natural frequency as printed, the other answers from memory.`,
      model: MACHINE_MODEL,
      why: "One unit of the last digit printed.",
      checks: machineChecks(["13.32", "3.79e-5", "0.137", "47.89"], lastDigit),
      solve: machine,
    },
    {
      name: "Machine on springs, recomputed",
      source: `The data of ${THOMSON}, example 3.6-1, p. 69; the formulas evaluated to nine digits.`,
      model: MACHINE_MODEL,
      why: `${ELASTIC}, in the transmissibility at r = 3.75 some 7e-7.`,
      checks: machineChecks(["13.315858", "3.79211308e-5", "0.13685083", "47.897791"], () =>
        within(7e-7),
      ),
      solve: machine,
    },
    {
      name: "Resonance of a rotating unbalance",
      source: `${THOMSON}, example 3.2-1, p. 57: 0.60 cm at resonance, 0.08 cm far above it, hence zeta = 0.08/(2 x 0.60): the identity m X/U = 1/(2 zeta).`,
      model: `${BLOCK} U/m = 0.08 cm. ${VISCOUS}`,
      why: `${ELASTIC}.`,
      checks: [
        { quantity: "resonant amplitude", unit: "cm", reference: "0.60", tolerance: within(1e-7) },
      ],
      solve: () => [100 * unbalanceAmplitude(1, 0.08 / 0.6, 0.08e-2)],
    },
  ],
};
