/** A simply supported beam with shear and rotary inertia. */

import { type Family, justAbove, type Tolerance, within } from "../case.ts";
import { meshError } from "../unit-beam.ts";
import { table } from "./rows.ts";
import { flatBending, SHEAR, type Shear, SUPPORTED_ELEMENTS } from "./supported-beam.ts";

interface Row {
  readonly slenderness: number;
  readonly shear: Shear;
  readonly values: string;
}

const FREQUENCIES: readonly Row[] = [
  { slenderness: 5, shear: "5/6", values: "9.274039712 32.16650095 61.45806330" },
  { slenderness: 5, shear: "Cowper", values: "9.281917107 32.24558036 61.69857408" },
  { slenderness: 10, shear: "5/6", values: "9.707477235 37.09615885 78.15473629" },
  { slenderness: 10, shear: "Cowper", values: "9.709777239 37.12766843 78.28300000" },
  { slenderness: 20, shear: "5/6", values: "9.828127151 38.82990894 85.66190511" },
  { slenderness: 20, shear: "Cowper", values: "9.828727151 38.83910895 85.70544494" },
  { slenderness: 50, shear: "5/6", values: "9.862924096 39.37193592 88.29073588" },
  { slenderness: 50, shear: "Cowper", values: "9.863021277 39.37347996 88.29846267" },
];

const RATIOS: readonly Row[] = [
  { slenderness: 5, shear: "5/6", values: "0.93965668 0.81478699 0.69188930" },
  { slenderness: 5, shear: "Cowper", values: "0.94045483 0.81679009 0.69459695" },
  { slenderness: 10, shear: "5/6", values: "0.98357308 0.93965668 0.87985893" },
  { slenderness: 10, shear: "Cowper", values: "0.98380612 0.94045483 0.88130291" },
  { slenderness: 20, shear: "5/6", values: "0.99579748 0.98357308 0.96437396" },
  { slenderness: 20, shear: "Cowper", values: "0.99585827 0.98380612 0.96486413" },
  { slenderness: 50, shear: "5/6", values: "0.99932314 0.99730279 0.99396910" },
  { slenderness: 50, shear: "Cowper", values: "0.99933299 0.99734190 0.99405608" },
];

const ROTARY_RATIOS: readonly Row[] = [
  { slenderness: 5, shear: "5/6", values: "0.98394571 0.94005777 0.87838060" },
  { slenderness: 10, shear: "5/6", values: "0.99591286 0.98394571 0.96492466" },
  { slenderness: 20, shear: "5/6", values: "0.99897350 0.99591286 0.99087372" },
  { slenderness: 50, shear: "5/6", values: "0.99983555 0.99934268 0.99852284" },
];

/**
 * The shear strain is constant along an element, (k h)^2/12 too stiff: half that, times the share of
 * the energy that is shear, in the frequency. In a mode a sin kx, theta = b cos kx the shear strain is
 * (E I k^2 - rho I omega^2) b/(kappa G A). With a tenth for the next term, as in bending.
 */
function shearMesh(square: number, { slenderness, shear }: Row, i: number): Tolerance {
  const k = (i + 1) * Math.PI;
  const r2 = 1 / 12 / slenderness ** 2;
  const E_kG = (2 * (1 + 0.3)) / SHEAR[shear];
  const ratio = (r2 * E_kG * (k ** 2 - r2 * square ** 2) ** 2) / k ** 2; // shear over bending energy
  const share = ratio / (1 + ratio);
  const error = (1.1 * share * (k / SUPPORTED_ELEMENTS) ** 2) / 24;
  return justAbove(error + meshError(k, SUPPORTED_ELEMENTS) + 1e-9);
}

function ratioOf(theory: string, { slenderness, shear }: Row): number[] {
  const plain = flatBending("euler-bernoulli", slenderness, shear);
  return flatBending(theory, slenderness, shear).map((omega, i) => omega / plain[i]);
}

const SOURCE =
  "Lower root of (rho^2 I/(kappa G)) omega^4 - [rho A + rho I k^2 (1 + E/(kappa G))] omega^2 + E I k^4 = 0, k = n pi/L: " +
  "S. P. Timoshenko, Philosophical Magazine 41 (1921) 744-746 (citation as quoted elsewhere)";
const COWPER =
  "kappa = 5/6, or 10 (1 + nu)/(12 + 11 nu) of G. R. Cowper, J. Applied Mechanics 33 (1966) (from memory), nu = 0.3";
const BEAM = "Simply supported beam of rectangular section, twice as wide as high, 80 elements";
const rowName = ({ slenderness, shear }: Row) => `L/h = ${slenderness}, kappa ${shear}`;

export const TIMOSHENKO: Family = {
  title: "Simply supported beam with shear",
  source: "Timoshenko 1921",
  cases: [
    {
      name: "Timoshenko beam",
      source: `${SOURCE}; ${COWPER}.`,
      model: `${BEAM}, beam theory "timoshenko": omega sqrt(rho A L^4/(E I)) of flat bending.`,
      why: "The element's shear strain is constant: (k h)^2/24 times the share of shear in the energy, and (k h)^4/1440; a tenth more for the next terms.",
      ...table({
        rows: FREQUENCIES,
        name: rowName,
        solve: ({ slenderness, shear }) => flatBending("timoshenko", slenderness, shear),
        tolerance: (reference, row, i) => shearMesh(Number(reference), row, i),
      }),
    },
    {
      name: "Timoshenko over Euler-Bernoulli",
      source: `${SOURCE}, over (n pi)^2; ${COWPER}.`,
      model: `${BEAM}, beam theory "timoshenko" over "euler-bernoulli".`,
      why: "As above, (k h)^4/1440 cancelling; 1e-8 for the eight digits of the reference.",
      ...table({
        rows: RATIOS,
        name: rowName,
        solve: (row) => ratioOf("timoshenko", row),
        tolerance: (reference, row, i) => {
          const plain = ((i + 1) * Math.PI) ** 2;
          const { low, high } = shearMesh(Number(reference) * plain, row, i);
          return { kind: "relative", low: low - 1e-8, high: high + 1e-8 };
        },
      }),
    },
    {
      name: "Rayleigh over Euler-Bernoulli",
      source: "Rotary inertia alone, closed form: 1/sqrt(1 + (n pi r/L)^2), r^2 = I/A.",
      model: `${BEAM}, beam theory "rayleigh" over "euler-bernoulli".`,
      why: "The mesh errors cancel but for their difference; eight digits of the reference.",
      ...table({
        rows: ROTARY_RATIOS,
        name: ({ slenderness }) => `L/h = ${slenderness}`,
        solve: (row) => ratioOf("rayleigh", row),
        tolerance: () => within(1e-8),
      }),
    },
  ],
};
