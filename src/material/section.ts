/** Cross-sections of arms, standoffs and members: sizes and material in, beam constants out. */

import type { BeamConstants } from "../element/beam.ts";
import { type Material, nominalThickness } from "./material.ts";
import { checkSection, type GivenSection, type SectionShape } from "./section-shape.ts";
import { type StripStiffness, stripStiffness } from "./strip.ts";
import { hexagonTorsion, orthotropicRectangleTorsion, tubeTorsion } from "./torsion.ts";

/** All that a beam element needs of its section (local x beam axis, y width, z up), and its damping. */
export interface BeamSection extends BeamConstants {
  readonly lossFactor: number;
}

/**
 * Shear coefficient of a rectangle, 5/6: E. Reissner, J. Applied Mechanics 12 (1945) A69-A77
 * (from memory), usual for laminates. G. R. Cowper, J. Applied Mechanics 33 (1966) 335-340 (from
 * memory) has 10 (1 + nu)/(12 + 11 nu), equal at nu = 0 and 2 % more at nu = 0.3.
 */
export const KAPPA_RECTANGLE = 5 / 6;

/**
 * Beam constants of a section whose material's warp points `warpAngle` (rad, counter-clockwise
 * from above) away from the beam axis.
 *
 * Strip and bar take the laminate as it lies. Tube, rod, hexagon and given constants take the
 * material as homogeneous, with the Ex and Gxy of a sheet of it whose axis is the beam's: for a
 * tube, the wall.
 * Throws InputError (at `path`) for sizes that make no section.
 */
export function beamSection(
  shape: SectionShape,
  material: Material,
  warpAngle = 0,
  path = "",
): BeamSection {
  checkSection(shape, path);
  const sheet = (thickness: number) => stripStiffness(material, thickness, warpAngle);
  switch (shape.shape) {
    case "strip":
      return stripSection(sheet(shape.thickness), shape.width, shape.slot ?? 0);
    case "bar":
      return stripSection(sheet(shape.height), shape.width);
    case "tube":
      return tubeSection(sheet((shape.outer - shape.bore) / 2), shape.outer, shape.bore);
    case "rod":
      return tubeSection(sheet(shape.diameter), shape.diameter, 0);
    case "hexagon":
      return hexagonSection(sheet(shape.acrossFlats), shape.acrossFlats, shape.bore ?? 0);
    case "given":
      // Moduli of a material without plies do not depend on the thickness: any will do.
      return givenSection(sheet(nominalThickness(material) ?? 1e-3), shape);
  }
}

/**
 * A strip of width b (m), with a slot of width s down its middle: two legs that stay a fixed
 * distance apart, as they do when the slot is short and its ends are tied.
 * EI edge = E t (b^3 - s^3)/12; G J is the sum of the legs'. Rotary inertia about the axis is
 * rho (Iy + Iz), never rho J.
 */
export function stripSection(strip: StripStiffness, b: number, s = 0): BeamSection {
  const t = strip.thickness;
  const A = (b - s) * t;
  const Iy = ((b - s) * t ** 3) / 12;
  const Iz = (t * (b ** 3 - s ** 3)) / 12;
  const legs = s > 0 ? 2 : 1;
  return {
    EA: strip.Ex * A, // b/a11
    EIy: strip.Efx * Iy, // b/d11
    EIz: strip.Ex * Iz, // b^3/(12 a11)
    GJ: legs * orthotropicRectangleTorsion((b - s) / legs, t, strip.Gfxy, strip.Gxz),
    kGAy: KAPPA_RECTANGLE * strip.Gxy * A,
    kGAz: KAPPA_RECTANGLE * strip.Gxz * A,
    ...inertia(strip.density, A, Iy, Iz),
    lossFactor: strip.lossFactor,
  };
}

function tubeSection(wall: StripStiffness, outer: number, bore: number): BeamSection {
  const A = (Math.PI / 4) * (outer ** 2 - bore ** 2);
  const I = (Math.PI / 64) * (outer ** 4 - bore ** 4);
  const kGA = tubeShearCoefficient(wall.nuxy, bore / outer) * wall.Gxy * A;
  return {
    EA: wall.Ex * A,
    EIy: wall.Ex * I,
    EIz: wall.Ex * I,
    GJ: wall.Gxy * tubeTorsion(outer, bore),
    kGAy: kGA,
    kGAz: kGA,
    ...inertia(wall.density, A, I, I),
    lossFactor: wall.stretchLossFactor,
  };
}

/**
 * Regular hexagon, d across flats, round bore: A = (sqrt(3)/2) d^2 and I = (5 sqrt(3)/144) d^4
 * about every axis, less the bore's. Shear coefficient of the tube with the same outer area, for
 * want of a formula of its own.
 */
function hexagonSection(stuff: StripStiffness, d: number, bore: number): BeamSection {
  const solid = (Math.sqrt(3) / 2) * d ** 2;
  const A = solid - (Math.PI / 4) * bore ** 2;
  const I = ((5 * Math.sqrt(3)) / 144) * d ** 4 - (Math.PI / 64) * bore ** 4;
  const roundOuter = Math.sqrt((4 / Math.PI) * solid);
  const kGA = tubeShearCoefficient(stuff.nuxy, bore / roundOuter) * stuff.Gxy * A;
  return {
    EA: stuff.Ex * A,
    EIy: stuff.Ex * I,
    EIz: stuff.Ex * I,
    GJ: stuff.Gxy * hexagonTorsion(d, bore),
    kGAy: kGA,
    kGAz: kGA,
    ...inertia(stuff.density, A, I, I),
    lossFactor: stuff.stretchLossFactor,
  };
}

function givenSection(stuff: StripStiffness, given: GivenSection): BeamSection {
  const { A, Iy, Iz, J } = given;
  return {
    EA: stuff.Ex * A,
    EIy: stuff.Ex * Iy,
    EIz: stuff.Ex * Iz,
    GJ: stuff.Gxy * J,
    kGAy: stuff.Gxy * (given.Ay ?? KAPPA_RECTANGLE * A),
    kGAz: stuff.Gxy * (given.Az ?? KAPPA_RECTANGLE * A),
    ...inertia(stuff.density, A, Iy, Iz, given.Ip),
    lossFactor: stuff.stretchLossFactor,
  };
}

/**
 * Shear coefficient of a round tube, m = bore / outer (0 for a rod):
 * 6 (1 + nu) (1 + m^2)^2 / ((7 + 6 nu) (1 + m^2)^2 + (20 + 12 nu) m^2).
 * G. R. Cowper, J. Applied Mechanics 33 (1966) 335-340 (from memory).
 */
function tubeShearCoefficient(nu: number, m: number): number {
  const q = (1 + m * m) ** 2;
  return (6 * (1 + nu) * q) / ((7 + 6 * nu) * q + (20 + 12 * nu) * m * m);
}

function inertia(
  rho: number,
  A: number,
  Iy: number,
  Iz: number,
  Ip = Iy + Iz,
): Pick<BeamSection, "rhoA" | "rhoIy" | "rhoIz" | "rhoIp"> {
  return { rhoA: rho * A, rhoIy: rho * Iy, rhoIz: rho * Iz, rhoIp: rho * Ip };
}
