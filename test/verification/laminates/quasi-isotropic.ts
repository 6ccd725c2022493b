/** Laminates that are isotropic in their plane, and only there. */

import { engineeringConstants } from "../../../src/material/lamination.ts";
import { reducedStiffness } from "../../../src/material/ply.ts";
import { T300_5208 } from "../../material/plies.ts";
import type { Check, Family } from "../case.ts";
import { pick, rounded } from "./entries.ts";
import { COMPUTED, PLY, stiffnessOf } from "./t300.ts";

const EIGHT = "[0/45/-45/90]s";
const SIX = "[0/60/-60]s";

const gpa = (quantity: string, reference: string): Check => ({
  quantity,
  unit: "GPa",
  reference,
  tolerance: rounded(reference),
});

const ratio = (quantity: string, reference: string): Check => ({
  ...gpa(quantity, reference),
  unit: "",
});

const constantsOf = (stack: string) => engineeringConstants(stiffnessOf(stack));

/** Ex, Ey, Gxy (GPa) and nuxy. */
function inPlane(stack: string): number[] {
  const { Ex, Ey, Gxy, nuxy } = constantsOf(stack);
  return [Ex / 1e9, Ey / 1e9, Gxy / 1e9, nuxy];
}

const published = (stack: string): Check[] => [
  gpa(`${stack} Ex`, "69.68"),
  gpa(`${stack} Ey`, "69.68"),
  gpa(`${stack} Gxy`, "26.88"),
  ratio(`${stack} nuxy`, "0.296"),
];

const computed = (stack: string): Check[] => [
  gpa(`${stack} Ex`, "69.67574092"),
  gpa(`${stack} Ey`, "69.67574092"),
  gpa(`${stack} Gxy`, "26.88043109"),
  ratio(`${stack} nuxy`, "0.2960309434"),
];

export const QUASI_ISOTROPIC: Family = {
  title: "Quasi-isotropic and balanced laminates",
  source: "Kaw, as quoted elsewhere",
  cases: [
    {
      name: "Quasi-isotropic laminates, published",
      headline: true,
      source:
        "A. K. Kaw, Mechanics of Composite Materials, worked example: E as quoted in the notes of a public " +
        "laminate program, Gxy and nuxy from memory; the shear moduli of the last two stacks from the same " +
        "notes.",
      model: `${PLY}; engineering constants in the plane.`,
      why: "Half a unit of the last digit.",
      checks: [
        ...published(EIGHT),
        ...published(SIX),
        gpa("[+-45]2s Gxy", "46.59"),
        gpa("[0/90]2s Gxy", "7.17"),
      ],
      solve: () => [
        ...inPlane(EIGHT),
        ...inPlane(SIX),
        constantsOf("[+-45]2s").Gxy / 1e9,
        constantsOf("[0/90]2s").Gxy / 1e9,
      ],
    },
    {
      name: "Quasi-isotropic laminates, computed",
      source: `${COMPUTED} The same from the invariants: A11/h = U1, A12/h = U4, A66/h = U5.`,
      model: `${PLY}; the plies' Q, the invariants, and the constants in the plane and in bending.`,
      why: "Half a unit of the last digit.",
      checks: [
        gpa("Q11", "181.811139"),
        gpa("Q12", "2.896924"),
        gpa("Q22", "10.346159"),
        gpa("Q66", "7.170000"),
        gpa("U1", "76.368218"),
        gpa("U4", "22.607356"),
        gpa("U5", "26.880431"),
        ...computed(EIGHT),
        ...computed(SIX),
        gpa(`${EIGHT} bending modulus Efx`, "116.55209"),
        gpa(`${EIGHT} bending modulus Efy`, "26.98119"),
      ],
      solve: () => {
        const laminate = stiffnessOf(EIGHT);
        const { Efx, Efy } = constantsOf(EIGHT);
        return [
          ...pick(reducedStiffness(T300_5208), ["11", "12", "22", "66"], 1e-9),
          ...pick(laminate.A, ["11", "12", "66"], 1e-9 / laminate.thickness),
          ...inPlane(EIGHT),
          ...inPlane(SIX),
          Efx / 1e9,
          Efy / 1e9,
        ];
      },
    },
  ],
};
