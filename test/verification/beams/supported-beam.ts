/** A simply supported beam of rectangular section, in any of the three beam theories. */

import { solveFrame } from "../frequencies.ts";
import { frequenciesMoving } from "./moving.ts";

const E = 70e9;
const RHO = 1600;
export const SUPPORTED_ELEMENTS = 80;

/** Shear coefficients of a rectangle, and how a frame file says them. */
export const SHEAR = { "5/6": 5 / 6, Cowper: 0.8496732026 } as const;
export type Shear = keyof typeof SHEAR;

/** 1 m long, h = L/slenderness high and twice as wide. */
function section(slenderness: number, shear: Shear): object {
  const h = 1000 / slenderness; // mm
  const b = 2 * h;
  if (shear === "5/6") return { shape: "rectangle", width: `${b} mm`, height: `${h} mm` };
  const area = `${SHEAR[shear] * b * h} mm^2`;
  return {
    shape: "constants",
    A: `${b * h} mm^2`,
    Iy: `${(b * h ** 3) / 12} mm^4`,
    Iz: `${(h * b ** 3) / 12} mm^4`,
    J: `${(b * h ** 3) / 4} mm^4`,
    shearAreaY: area,
    shearAreaZ: area,
  };
}

function simplySupported(
  beamTheory: string,
  slenderness: number,
  shear: Shear = "5/6",
  elements = SUPPORTED_ELEMENTS,
): object {
  const fix = ["x", "y", "z", "rx", "rz"];
  return {
    beamTheory,
    materials: { stuff: { kind: "isotropic", E: "70 GPa", nu: 0.3, density: "1600 kg/m^3" } },
    points: { left: [0, 0, 0], right: ["1 m", 0, 0] },
    members: {
      beam: {
        from: "left",
        to: "right",
        section: section(slenderness, shear),
        material: "stuff",
        elements,
      },
    },
    supports: { left: { point: "left", fix }, right: { point: "right", fix } },
  };
}

/** omega sqrt(rho A L^4/(E I)) of the modes that turn the left end about y: flat bending only. */
export function flatBending(
  beamTheory: string,
  slenderness: number,
  shear?: Shear,
  elements?: number,
): number[] {
  const frame = simplySupported(beamTheory, slenderness, shear, elements);
  const r = 1 / slenderness / Math.sqrt(12);
  return frequenciesMoving(solveFrame(frame, { modes: 12 }), "left", "ry").map(
    (f) => (2 * Math.PI * f * Math.sqrt(RHO / E)) / r,
  );
}
