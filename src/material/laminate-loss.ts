/** Loss factors of a laminate, the plies' own loss factors weighted by their strain energy. */

import type { LaminateCompliance, LaminateStiffness } from "./lamination.ts";
import { bilinear3, column3, inverse3, multiply3, transpose3 } from "./matrix3.ts";

/**
 * Loss factor of a strip along x in pure bending (Mx alone): e' P e / e' S e with the strains e
 * that Mx causes. Method: R. G. Ni and R. D. Adams, J. Composite Materials 18 (1984) 104-121
 * (from memory).
 */
export function bendingLossFactor(compliance: LaminateCompliance, loss: LaminateStiffness): number {
  const e0 = column3(compliance.b, 0); // mid-plane strain per Mx
  const kappa = column3(compliance.d, 0); // curvature per Mx
  return lostEnergy(loss, e0, kappa) / compliance.d[0]; // e' S e = Mx' d11 Mx
}

/** The same for a strip that is stretched (Nx alone), as the wall of a bent tube is. */
export function stretchingLossFactor(
  compliance: LaminateCompliance,
  loss: LaminateStiffness,
): number {
  const e0 = column3(compliance.a, 0);
  const kappa = column3(transpose3(compliance.b), 0);
  return lostEnergy(loss, e0, kappa) / compliance.a[0];
}

/** e' P e with e = (e0, kappa). */
function lostEnergy(loss: LaminateStiffness, e0: Float64Array, kappa: Float64Array): number {
  const { A, B, D } = loss;
  return bilinear3(e0, A, e0) + 2 * bilinear3(e0, B, kappa) + bilinear3(kappa, D, kappa);
}

/**
 * One loss factor for a plate bending in every way: trace(D^-1 P) / 3, the mean over three
 * curvature states that share no energy. It does not depend on the axes, and is the plies' loss
 * factor when they have only one.
 */
export function plateLossFactor(stiffness: LaminateStiffness, loss: LaminateStiffness): number {
  const ratio = multiply3(inverse3(stiffness.D), loss.D);
  return (ratio[0] + ratio[4] + ratio[8]) / 3;
}
