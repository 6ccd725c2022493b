/** Whole laminates: every entry of A, B and D, and the constants that follow from them. */

import {
  engineeringConstants,
  type LaminateStiffness,
  laminateStiffness,
} from "../../../src/material/lamination.ts";
import { T300_5208 } from "../../material/plies.ts";
import {
  type Case,
  type Check,
  type Family,
  type Tolerance,
  within,
  withinAbsolute,
} from "../case.ts";
import { entryChecks, pick, rounded, UPPER } from "./entries.ts";
import { COMPUTED, PLY, stiffnessOf } from "./t300.ts";

type Matrix = "A" | "B" | "D";

/** All three matrices of one laminate in SI, and the references for them. */
function matrixCase(
  words: Omit<Case, "checks" | "solve">,
  laminate: () => LaminateStiffness,
  printed: readonly (readonly [matrix: Matrix, unit: string, factor: number, entries: string])[],
  tolerance: (reference: string) => Tolerance,
): Case {
  return {
    ...words,
    checks: printed.flatMap(([matrix, unit, , entries]) =>
      entryChecks(`${matrix}#`, UPPER, entries, unit, tolerance),
    ),
    solve: () => {
      const found = laminate();
      return printed.flatMap(([matrix, , factor]) => pick(found[matrix], UPPER, factor));
    },
  };
}

const UNSYMMETRIC = () => stiffnessOf("[0/30/-45]", 5e-3);
const UNSYMMETRIC_MODEL = `${PLY.replace("0.125", "5")}, stack [0/30/-45]: no symmetry at all.`;

/** 45, 0, 45 degrees with 3, 6 and 3 mm of glass/epoxy. */
function threeLayers(): LaminateStiffness {
  const ply = { ...T300_5208, E1: 54.87e9, E2: 18.32e9, G12: 8.9e9, nu12: 0.25 };
  const layer = (degrees: number, thickness: number) => ({
    ply,
    angle: (degrees * Math.PI) / 180,
    thickness,
  });
  return laminateStiffness([layer(45, 3e-3), layer(0, 6e-3), layer(45, 3e-3)]);
}

const THREE_LAYERS_MODEL =
  "[45/0/45] with 3, 6 and 3 mm; E1 = 54 870, E2 = 18 320, G12 = 8 900 MPa, nu12 = 0.25.";

const gpa = (quantity: string, reference: string): Check => ({
  quantity,
  unit: "GPa",
  reference,
  tolerance: rounded(reference),
});

/** A, D and the engineering constants of a symmetric stack of T300/5208. */
interface Symmetric {
  readonly stack: string;
  /** of a ply, mm */
  readonly ply: number;
  /** MN/m and N m */
  readonly A: string;
  readonly D: string;
  /** Ex, Ey, Gxy, Efx, Efy, Gfxy in GPa */
  readonly moduli: readonly string[];
  readonly nuxy: string;
}

// biome-ignore format: table
const SYMMETRIC: readonly Symmetric[] = [
  { stack: "[0/90]s", ply: 0.25,
    A: "96.0786488 2.89692444 0 96.0786488 0 7.17000000",
    D: "13.3648347 0.241410370 0 2.64827344 0 0.597500000",
    moduli: ["95.9913019", "95.9913019", "7.17000000", "160.113940", "31.7269538", "7.17000000"],
    nuxy: "0.0301515944" },
  { stack: "[0/45/-45/90]s", ply: 0.125,
    A: "76.3682177 22.6073555 0 76.3682177 0 26.8804311",
    D: "10.6907041 1.57597081 0.669785079 2.65328316 0.669785079 1.93206044",
    moduli: ["69.6757409", "69.6757409", "26.8804311", "116.552087", "26.9811883", "21.0648057"],
    nuxy: "0.296030943" },
  { stack: "[45/-45/0/90]s", ply: 0.25,
    A: "152.736435 45.2147111 0 152.736435 0 53.7608622",
    D: "46.4152102 24.9267859 8.03742094 35.6986490 8.03742094 27.7755029",
    moduli: ["69.6757409", "69.6757409", "26.8804311", "43.1751279", "32.6807971", "38.6447326"],
    nuxy: "0.296030943" },
];

const MODULI = ["Ex", "Ey", "Gxy", "Efx", "Efy", "Gfxy"] as const;

function symmetricCase({ stack, ply, A, D, moduli, nuxy }: Symmetric): Case {
  return {
    name: `${stack} of ${ply} mm plies, complete`,
    source: COMPUTED,
    model: `${PLY.replace("0.125", String(ply))}; A, D, the constants in the plane (Ex, Ey, Gxy, nuxy) and in bending (Efx, Efy, Gfxy).`,
    why: "Half a unit of the last digit; zeros and B to rounding.",
    checks: [
      ...entryChecks("A#", UPPER, A, "MN/m", rounded),
      ...entryChecks("D#", UPPER, D, "N m", rounded),
      {
        quantity: "largest entry of B",
        unit: "N",
        reference: "0",
        tolerance: withinAbsolute(1e-9),
      },
      ...moduli.map((reference, i) => gpa(MODULI[i], reference)),
      { quantity: "nuxy", unit: "", reference: nuxy, tolerance: rounded(nuxy) },
    ],
    solve: () => {
      const laminate = stiffnessOf(stack, ply * 1e-3);
      const constants = engineeringConstants(laminate);
      return [
        ...pick(laminate.A, UPPER, 1e-6),
        ...pick(laminate.D, UPPER, 1),
        Math.max(...laminate.B.map(Math.abs)),
        ...MODULI.map((name) => constants[name] / 1e9),
        constants.nuxy,
      ];
    },
  };
}

export const COMPLETE_MATRICES: Family = {
  title: "A, B and D of whole laminates",
  source: "Kaw (from memory), Mendonca 2005, computed",
  cases: [
    matrixCase(
      {
        name: "Unsymmetric [0/30/-45], published",
        headline: true,
        source: "A. K. Kaw, Mechanics of Composite Materials, examples 4.2 and 4.3, from memory.",
        model: UNSYMMETRIC_MODEL,
        why: "Half a unit of the last digit.",
      },
      UNSYMMETRIC,
      [
        ["A", "Pa m", 1, "1.739e9 3.884e8 5.663e7 4.533e8 -1.141e8 4.525e8"],
        ["B", "Pa m^2", 1, "-3.129e6 9.855e5 -1.072e6 1.158e6 -1.072e6 9.855e5"],
        ["D", "Pa m^3", 1, "3.343e4 6.461e3 -5.240e3 9.320e3 -5.596e3 7.663e3"],
      ],
      rounded,
    ),
    matrixCase(
      {
        name: "Unsymmetric [0/30/-45], recomputed",
        source: COMPUTED,
        model: UNSYMMETRIC_MODEL,
        why: "Half a unit of the last digit.",
      },
      UNSYMMETRIC,
      [
        [
          "A",
          "GPa m",
          1e-9,
          "1.7392408632 0.3883864107 0.0566337309 0.4532535124 -0.1140636095 0.4524825440",
        ],
        [
          "B",
          "MPa m^2",
          1e-6,
          "-3.1288338057 0.9855215543 -1.0716561257 1.1577906971 -1.0716561257 0.9855215543",
        ],
        [
          "D",
          "kPa m^3",
          1e-3,
          "33.4320341476 6.4609772381 -5.2402936893 9.3197713190 -5.5959131485 7.6627797381",
        ],
      ],
      rounded,
    ),
    {
      name: "[45/0/45] of 3, 6 and 3 mm, published",
      headline: true,
      source:
        "P. T. R. Mendonca, Materiais Compostos e Estruturas-sanduiche (Manole 2005), p. 201, as quoted " +
        "in a public unit test.",
      model: THREE_LAYERS_MODEL,
      why: "Fourteen digits are printed; ours and theirs differ by the rounding of a dozen operations.",
      checks: entryChecks(
        "A#",
        UPPER,
        "515794.00930665 100823.25453699 55993.44346208 291820.23545835 55993.44346208 151491.93392275",
        "N/mm",
        () => within(4e-13),
      ),
      solve: () => pick(threeLayers().A, UPPER, 1e-3),
    },
    {
      name: "[45/0/45] of 3, 6 and 3 mm, bending and moduli",
      source: COMPUTED,
      model: THREE_LAYERS_MODEL,
      why: "Half a unit of the last digit; B to rounding.",
      checks: [
        ...entryChecks(
          "D#",
          UPPER,
          "4779.41872406 1612.10645975 1175.86231270 4107.49740251 1175.86231270 2220.13061238",
          "N m",
          rounded,
        ),
        {
          quantity: "largest entry of B",
          unit: "N",
          reference: "0",
          tolerance: withinAbsolute(1e-9),
        },
        gpa("Ex", "39.2847895598"),
        gpa("Ey", "21.5130331091"),
        gpa("Efx", "26.9150333778"),
      ],
      solve: () => {
        const laminate = threeLayers();
        const { Ex, Ey, Efx } = engineeringConstants(laminate);
        const B = Math.max(...laminate.B.map(Math.abs));
        return [...pick(laminate.D, UPPER, 1), B, Ex / 1e9, Ey / 1e9, Efx / 1e9];
      },
    },
    ...SYMMETRIC.map(symmetricCase),
  ],
};
