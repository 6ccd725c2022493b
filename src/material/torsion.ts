/** Saint-Venant torsion constants J (m^4) of the sections that a frame is made of. */

/** (31/32) zeta(5), the sum of 1/k^5 over odd k. */
const SUM_ODD_K5 = 1.0045237627951396;

/** J of a regular hexagon over (across flats)^4; see `hexagonTorsion`. */
const HEXAGON_J = 0.115050994405;

/**
 * beta in J = beta b t^3, for b >= t > 0; ratio = b/t. Error below 1e-14.
 *
 * beta = (1/3) [1 - (192/pi^5) (t/b) sum_{k odd} tanh(k pi b / 2t) / k^5]
 * S. P. Timoshenko and J. N. Goodier, Theory of Elasticity, torsion of rectangular bars (section
 * from memory). The sum is split into sum 1/k^5, known exactly, less
 * sum 2 / (k^5 (1 + exp(k pi b/t))), which is below 1e-19 after k = 11.
 */
export function torsionBeta(ratio: number): number {
  let rest = 0;
  for (let k = 1; k <= 11; k += 2) rest += 2 / (k ** 5 * (1 + Math.exp(k * Math.PI * ratio)));
  return (1 - (192 / Math.PI ** 5 / ratio) * (SUM_ODD_K5 - rest)) / 3;
}

/** J of a solid rectangle, m^4; the sides (m) in either order. */
export function rectangleTorsion(side1: number, side2: number): number {
  const b = Math.max(side1, side2);
  const t = Math.min(side1, side2);
  return torsionBeta(b / t) * b * t ** 3;
}

/**
 * Torsional stiffness G J (N m^2) of an orthotropic rectangle, width b along y, thickness t
 * along z, twisted about x; Gxy the in-plane and Gxz the transverse shear modulus (Pa).
 *
 * G J = sqrt(Gxy/Gxz) Gxy J_iso(b sqrt(Gxz/Gxy), t)
 * Stretching y turns Prandtl's equation into the isotropic one; S. G. Lekhnitskii, Theory of
 * Elasticity of an Anisotropic Body (from memory, derived again). A thin strip tends to
 * Gxy b t^3 / 3, a tall one to Gxz b^3 t / 3.
 */
export function orthotropicRectangleTorsion(
  b: number,
  t: number,
  Gxy: number,
  Gxz: number,
): number {
  const stretch = Math.sqrt(Gxz / Gxy);
  return (Gxy / stretch) * rectangleTorsion(b * stretch, t);
}

/** J of a round tube (or a rod, bore = 0), m^4; diameters in m. Exact. */
export function tubeTorsion(outer: number, bore: number): number {
  return (Math.PI / 32) * (outer ** 4 - bore ** 4);
}

/**
 * J of a regular hexagon, m^4, with a round bore down its axis; sizes in m.
 *
 * Solid: J = 0.115050994405 d^4, d across flats (1.035458949641 a^4 with the side a), derived for
 * this program: Prandtl's stress function as harmonic polynomials plus the corner terms
 * r^(3/2), r^(9/2), ..., fitted to zero on the boundary to 1e-14; twelve digits stay the same for
 * 8 to 20 terms.
 * Bored: the solid less J of a rod of the bore's size, an approximation that is too high by
 * 0.001 % at bore/d = 0.5, 0.01 % at 0.6, 0.06 % at 0.7 and 0.4 % at 0.8 (same method with a
 * free inner boundary).
 */
export function hexagonTorsion(acrossFlats: number, bore = 0): number {
  return HEXAGON_J * acrossFlats ** 4 - tubeTorsion(bore, 0);
}
