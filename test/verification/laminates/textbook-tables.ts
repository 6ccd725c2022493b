/** Classical lamination: the tables of a textbook, with the digits it prints and with more. */

import { type LaminateStiffness, laminateCompliance } from "../../../src/material/lamination.ts";
import { type Case, type Check, type Family, lastDigit, type Tolerance } from "../case.ts";
import { type Entry, entryChecks, pick, rounded } from "./entries.ts";
import { COMPUTED, PLY, stiffnessOf } from "./t300.ts";

/** Printed and recomputed entries of a stiffness and of its inverse. */
interface Row {
  readonly stack: string;
  readonly stiffness: readonly [printed: string, computed: string];
  readonly compliance: readonly [printed: string, computed: string];
}

const IN_PLANE: readonly Entry[] = ["11", "22", "12", "66"];
const BENDING: readonly Entry[] = ["11", "22", "12", "66", "16", "26"];

// biome-ignore format: table
const CROSS_PLY: readonly Row[] = [
  { stack: "[0/90]s", stiffness: ["96.08 96.08 2.89 7.17", "96.0786 96.0786 2.8969 7.1700"],
    compliance: ["10.41 10.41 -0.314 139.47", "10.4176 10.4176 -0.3141 139.4700"] },
  { stack: "[0_2/90]s", stiffness: ["124.65 67.5 2.89 7.17", "124.6561 67.5012 2.8969 7.1700"],
    compliance: ["8.03 14.82 -0.344 139.47", "8.0301 14.8294 -0.3446 139.4700"] },
  { stack: "[0_4/90]s", stiffness: ["147.51 44.63 2.89 7.17", "147.5181 44.6392 2.8969 7.1700"],
    compliance: ["6.78 22.43 -0.44 139.47", "6.7875 22.4304 -0.4405 139.4700"] },
  { stack: "[0_8/90]s", stiffness: ["162.75 29.39 2.89 7.17", "162.7595 29.3978 2.8969 7.1700"],
    compliance: ["6.15 34.07 -0.606 139.47", "6.1548 34.0759 -0.6065 139.4700"] },
];

// biome-ignore format: table
const ANGLE_PLY: readonly Row[] = [
  { stack: "[+-15]s", stiffness: ["160.4 11.9 12.75 17.02", "160.4699 11.9769 12.7521 17.0252"],
    compliance: ["6.8 91.21 -7.24 58.73", "6.8077 91.2114 -7.2483 58.7364"] },
  { stack: "[+-30]s", stiffness: ["109.3 23.6 32.46 36.73", "109.3792 23.6468 32.4626 36.7356"],
    compliance: ["15.42 71.36 -21.18 27.22", "15.4287 71.3663 -21.1807 27.2215"] },
  { stack: "[+-45]s", stiffness: ["56.6 56.6 42.32 46.59", "56.6578 56.6578 42.3178 46.5909"],
    compliance: ["39.91 39.91 -29.81 21.46", "39.9193 39.9193 -29.8158 21.4634"] },
];

// biome-ignore format: table
const SIXTEEN_PLIES: readonly Row[] = [
  { stack: "[0_4/90_4]s",
    stiffness: ["106.9 21.18 1.93 4.78 0 0", "106.9187 21.1862 1.9313 4.7800 0 0"],
    compliance: ["9.36 47.27 -0.85 209.2 0 0", "9.3683 47.2784 -0.8540 209.2050 0 0"] },
  { stack: "[0_2/90_2/0_2/90_2]s",
    stiffness: ["85.48 42.61 1.93 4.78 0 0", "85.4856 42.6193 1.9313 4.7800 0 0"],
    compliance: ["11.7 23.48 -0.53 209.2 0 0", "11.7099 23.4876 -0.5306 209.2050 0 0"] },
  { stack: "[45_4/-45_4]s",
    stiffness: ["37.77 37.77 28.21 31.06 21.433 21.433", "37.7719 37.7719 28.2119 31.0606 21.4331 21.4331"],
    compliance: ["66.03 66.03 -38.56 58.35 -18.95 -18.95", "66.0359 66.0359 -38.5666 58.3547 -18.9550 -18.9550"] },
  { stack: "[45_2/-45_2/45_2/-45_2]s",
    stiffness: ["37.77 37.77 28.21 31.06 10.716 10.716", "37.7719 37.7719 28.2119 31.0606 10.7166 10.7166"],
    compliance: ["60.83 60.83 -43.76 36.25 -5.88 -5.88", "60.8353 60.8353 -43.7672 36.2587 -5.8889 -5.8889"] },
];

const BOOK =
  "S. W. Tsai & H. T. Hahn, Introduction to Composite Materials (Technomic 1980; attribution from " +
  "memory)";
const TRANSCRIBED = "as transcribed in the unit tests of a public program.";
const CUT = "One unit of the last digit: the book cuts digits off, A12/h = 2.8969 is printed 2.89.";
const ROUNDED = "Half a unit of the last digit.";

/** What a table tabulates, and where it is found in a laminate. */
interface Kind {
  readonly entries: readonly Entry[];
  readonly stiffness: readonly [quantity: string, unit: string];
  readonly compliance: readonly [quantity: string, unit: string];
  readonly of: (laminate: LaminateStiffness) => {
    readonly stiffness: readonly [Float64Array, number];
    readonly compliance: readonly [Float64Array, number];
  };
}

const SHEET: Kind = {
  entries: IN_PLANE,
  stiffness: ["A#/h", "GPa"],
  compliance: ["a# h", "1/TPa"],
  of: (laminate) => ({
    stiffness: [laminate.A, 1e-9 / laminate.thickness],
    compliance: [laminateCompliance(laminate).a, 1e12 * laminate.thickness],
  }),
};

const PLATE: Kind = {
  entries: BENDING,
  stiffness: ["D#", "N m"],
  compliance: ["d#", "1/(kN m)"],
  of: (laminate) => ({
    stiffness: [laminate.D, 1],
    compliance: [laminateCompliance(laminate).d, 1e3],
  }),
};

function tableCase(
  kind: Kind,
  rows: readonly Row[],
  digits: 0 | 1,
  words: Omit<Case, "checks" | "solve">,
): Case {
  const { entries, stiffness, compliance } = kind;
  const tolerance: (reference: string) => Tolerance = digits === 0 ? lastDigit : rounded;
  const row = (r: Row): Check[] => [
    ...entryChecks(
      `${r.stack} ${stiffness[0]}`,
      entries,
      r.stiffness[digits],
      stiffness[1],
      tolerance,
    ),
    ...entryChecks(
      `${r.stack} ${compliance[0]}`,
      entries,
      r.compliance[digits],
      compliance[1],
      tolerance,
    ),
  ];
  return {
    ...words,
    checks: rows.flatMap(row),
    solve: () =>
      rows.flatMap(({ stack }) => {
        const found = kind.of(stiffnessOf(stack));
        return [
          ...pick(found.stiffness[0], entries, found.stiffness[1]),
          ...pick(found.compliance[0], entries, found.compliance[1]),
        ];
      }),
  };
}

const SHEET_MODEL = `${PLY}; stretching stiffness over the thickness, and its inverse.`;
const PLATE_MODEL = `${PLY}, 16 of them; bending stiffness and its inverse.`;

export const TEXTBOOK_TABLES: Family = {
  title: "Symmetric laminates, textbook tables",
  source: "Tsai & Hahn 1980",
  cases: [
    tableCase(SHEET, CROSS_PLY, 0, {
      name: "Cross-ply laminates in their plane, published",
      headline: true,
      source: `${BOOK}, table 4.7, ${TRANSCRIBED}`,
      model: SHEET_MODEL,
      why: CUT,
    }),
    tableCase(SHEET, CROSS_PLY, 1, {
      name: "Cross-ply laminates in their plane, recomputed",
      source: COMPUTED,
      model: SHEET_MODEL,
      why: ROUNDED,
    }),
    tableCase(SHEET, ANGLE_PLY, 0, {
      name: "Angle-ply laminates in their plane, published",
      headline: true,
      source: `${BOOK}, table 4.9, ${TRANSCRIBED}`,
      model: SHEET_MODEL,
      why: CUT,
    }),
    tableCase(SHEET, ANGLE_PLY, 1, {
      name: "Angle-ply laminates in their plane, recomputed",
      source: COMPUTED,
      model: SHEET_MODEL,
      why: ROUNDED,
    }),
    tableCase(PLATE, SIXTEEN_PLIES, 0, {
      name: "Sixteen plies in bending, published",
      headline: true,
      source: `${BOOK}, figure 5.11 and equation 5.70, ${TRANSCRIBED}`,
      model: PLATE_MODEL,
      why: CUT,
    }),
    tableCase(PLATE, SIXTEEN_PLIES, 1, {
      name: "Sixteen plies in bending, recomputed",
      source: COMPUTED,
      model: PLATE_MODEL,
      why: ROUNDED,
    }),
  ],
};
