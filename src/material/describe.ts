/** The numbers of a material that people ask for. */

import { engineeringConstants, type LaminateStiffness, rotateLaminate } from "./lamination.ts";
import { type Material, nominalThickness, plateStiffness } from "./material.ts";

/** Moduli (Pa) of a strip cut at 0, 45 and 90 degrees to the warp. */
export interface ThreeDirections {
  readonly at0: number;
  readonly at45: number;
  readonly at90: number;
}

export interface MaterialSummary {
  /** Bent flat, as an arm is: where plies are few and thick this differs from stretching. */
  readonly flexuralE: ThreeDirections;
  /** Stretched, or bent edgewise. */
  readonly E: ThreeDirections;
  /** In-plane shear modulus, Pa. */
  readonly G: ThreeDirections;
  /** Contraction across under tension along the warp. */
  readonly nu: number;
  /** kg/m3. */
  readonly density: number;
  /** Of a plate bending in every way. */
  readonly lossFactor: number;
  /** Of the stack as its plies give it, m; undefined for a material without plies. */
  readonly thickness: number | undefined;
}

/** Stiffness in three directions, density and damping of a material. Throws SolveError. */
export function describeMaterial(material: Material): MaterialSummary {
  const thickness = nominalThickness(material);
  // Moduli of a material without plies do not depend on the thickness: any will do.
  const sheet = plateStiffness(material, thickness ?? 1e-3);
  const [at0, at45, at90] = [0, 45, 90].map((degrees) => cutAt(sheet, degrees));
  return {
    flexuralE: { at0: at0.Efx, at45: at45.Efx, at90: at90.Efx },
    E: { at0: at0.Ex, at45: at45.Ex, at90: at90.Ex },
    G: { at0: at0.Gxy, at45: at45.Gxy, at90: at90.Gxy },
    nu: at0.nuxy,
    density: sheet.density,
    lossFactor: sheet.lossFactor,
    thickness,
  };
}

/** Constants along a line `degrees` counter-clockwise from the warp. */
function cutAt(sheet: LaminateStiffness, degrees: number) {
  return engineeringConstants(rotateLaminate(sheet, (-degrees * Math.PI) / 180));
}
