/** One ply: its constants, its plane-stress stiffness, and that stiffness turned in the plane. */

import { multiply3, transpose3 } from "./matrix3.ts";

/** In-plane constants of an orthotropic sheet in its own axes 1 (fibre or warp) and 2. */
export interface InPlaneConstants {
  /** Young's moduli along 1 and 2, Pa. */
  readonly E1: number;
  readonly E2: number;
  /** Shear modulus, Pa. */
  readonly G12: number;
  /** Contraction along 2 under tension along 1; nu21 = nu12 E2 / E1. */
  readonly nu12: number;
}

/** A ply as cured. Axis 1 is the fibre direction, or the warp of a woven cloth. */
export interface Ply extends InPlaneConstants {
  /** Transverse shear moduli, Pa: in the planes 1-3 and 2-3, axis 3 through the thickness. */
  readonly G13: number;
  readonly G23: number;
  /** kg/m3. */
  readonly density: number;
  /** Cured thickness, m. */
  readonly thickness: number;
  /** Loss factor eta = 2 zeta, for every direction that has none of its own below. */
  readonly lossFactor: number;
  /** Loss factors of tension along 1, along 2, and of shear 1-2. */
  readonly lossFactor1?: number;
  readonly lossFactor2?: number;
  readonly lossFactor12?: number;
  readonly note?: string;
  readonly source?: string;
}

/**
 * Reduced (plane stress) stiffness Q in the ply's axes, Pa, 3 x 3 row-major, order 11, 22, 12
 * with engineering shear strain.
 * A. K. Kaw, Mechanics of Composite Materials, chapter 2 (from memory).
 */
export function reducedStiffness(c: InPlaneConstants): Float64Array {
  const nu21 = (c.nu12 * c.E2) / c.E1;
  const k = 1 - c.nu12 * nu21;
  const Q12 = (c.nu12 * c.E2) / k;
  return Float64Array.of(c.E1 / k, Q12, 0, Q12, c.E2 / k, 0, 0, 0, c.G12);
}

/**
 * Loss stiffness P in the ply's axes, Pa: half the energy lost per radian of vibration under the
 * strain e is e' P e / 2. With the energy of each direction, sigma_i e_i / 2, lost at its own
 * rate eta_i, P is the symmetric part of diag(eta) Q.
 * R. G. Ni and R. D. Adams, J. Composite Materials 18 (1984) 104-121 (from memory).
 */
export function lossStiffness(ply: Ply): Float64Array {
  const Q = reducedStiffness(ply);
  const eta1 = ply.lossFactor1 ?? ply.lossFactor;
  const eta2 = ply.lossFactor2 ?? ply.lossFactor;
  const eta12 = ply.lossFactor12 ?? ply.lossFactor;
  const P12 = ((eta1 + eta2) / 2) * Q[1];
  return Float64Array.of(eta1 * Q[0], P12, 0, P12, eta2 * Q[4], 0, 0, 0, eta12 * Q[8]);
}

/**
 * Cosine and sine, exact at multiples of 90 degrees, so that a cross-ply laminate has no
 * coupling terms left over from rounding.
 */
export function direction(theta: number): { readonly c: number; readonly s: number } {
  const c = Math.cos(theta);
  const s = Math.sin(theta);
  const tiny = 1e-15;
  if (Math.abs(c) < tiny) return { c: 0, s: Math.sign(s) };
  if (Math.abs(s) < tiny) return { c: Math.sign(c), s: 0 };
  return { c, s };
}

/**
 * Stiffness seen from axes x, y when the sheet's axis 1 points theta (rad, counter-clockwise seen
 * from +z) away from x: Qbar = R' Q R, R turning strains from x, y into 1, 2.
 * Good for Q of a ply and for A, B, D of a laminate; Q may have 16 and 26 terms.
 * A. K. Kaw, Mechanics of Composite Materials, chapter 2 (from memory).
 */
export function rotateStiffness(Q: Float64Array, theta: number): Float64Array {
  const { c, s } = direction(theta);
  const cc = c * c;
  const ss = s * s;
  const cs = c * s;
  // biome-ignore format: matrix layout
  const R = Float64Array.of(
         cc,     ss,      cs,
         ss,     cc,     -cs,
    -2 * cs, 2 * cs, cc - ss,
  );
  const out = multiply3(transpose3(R), multiply3(Q, R));
  // Equal in exact arithmetic; made equal here, because factorisations rely on it.
  out[3] = out[1];
  out[6] = out[2];
  out[7] = out[5];
  return out;
}
