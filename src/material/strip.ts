/** A narrow strip cut from a sheet: the moduli that govern it as a beam. */

import { bendingLossFactor, stretchingLossFactor } from "./laminate-loss.ts";
import {
  engineeringConstants,
  laminateCompliance,
  laminateDensity,
  laminateLossStiffness,
  laminateStiffness,
  transverseShear,
} from "./lamination.ts";
import { layersOf, type Material, type PlyFit, plyFit } from "./material.ts";

/**
 * Moduli (Pa) of a strip along local x, from which its width b makes a beam:
 * EA = Ex b t, EI flat = Efx b t^3/12, EI edge = Ex t b^3/12.
 */
export interface StripStiffness {
  /** m. */
  readonly thickness: number;
  /** Stretching and edgewise bending: 1/(t a11). */
  readonly Ex: number;
  /** Flat bending: 12/(t^3 d11). */
  readonly Efx: number;
  /** In-plane shear, which edgewise bending causes: 1/(t a66). */
  readonly Gxy: number;
  /** Twisting: 12/(t^3 d66). */
  readonly Gfxy: number;
  /** Transverse shear in the plane of the strip's axis and its thickness. */
  readonly Gxz: number;
  readonly nuxy: number;
  /** kg/m3. */
  readonly density: number;
  /** Of flat bending, and of stretching. */
  readonly lossFactor: number;
  readonly stretchLossFactor: number;
  /** d16 / sqrt(d11 d66), -1 to 1: how much flat bending twists the strip. */
  readonly bendTwist: number;
  /** b11 / sqrt(a11 d11), -1 to 1: how much stretching bends it (unsymmetric stacks). */
  readonly stretchBend: number;
  readonly plyFit: PlyFit | undefined;
}

/**
 * A strip of a sheet `thickness` (m) thick whose warp points `warpAngle` (rad, counter-clockwise
 * from above) away from the strip's axis.
 *
 * The long edges of a strip are free, so Ny, Nxy, My vanish and the compliances, not the
 * stiffnesses, give its moduli: EA = b/a11, EI = b/d11 (Kaw, Mechanics of Composite Materials,
 * chapter 4). The twisting modulus is the one of d66 and not of D66 for the same reason: under a
 * torque alone Mx and My are zero, kappa_xy = d66 Mxy, and a thin strip has G J = 4 b/d66, which
 * the orthotropic rectangle with Gfxy = 12/(t^3 d66) tends to. With D66 the strip would be kept
 * from bending while it twists, which holds for no free arm; with My zero that stiffness is larger
 * by the factor 1/(1 - bendTwist^2). Near the edges the shear stress turns through the thickness,
 * which Gxz resists: see `orthotropicRectangleTorsion`, which takes the strip as homogeneous
 * through its thickness.
 */
export function stripStiffness(
  material: Material,
  thickness: number,
  warpAngle = 0,
): StripStiffness {
  const layers = layersOf(material, thickness, warpAngle);
  const stiffness = laminateStiffness(layers);
  const compliance = laminateCompliance(stiffness);
  const loss = laminateLossStiffness(layers);
  const { a, b, d } = compliance;
  const { Ex, Efx, Gxy, Gfxy, nuxy } = engineeringConstants(stiffness);
  return {
    thickness,
    Ex,
    Efx,
    Gxy,
    Gfxy,
    Gxz: transverseShear(layers).Gsz,
    nuxy,
    density: laminateDensity(layers),
    lossFactor: bendingLossFactor(compliance, loss),
    stretchLossFactor: stretchingLossFactor(compliance, loss),
    bendTwist: d[2] / Math.sqrt(d[0] * d[8]),
    stretchBend: b[0] / Math.sqrt(a[0] * d[0]),
    plyFit: plyFit(material, thickness),
  };
}
