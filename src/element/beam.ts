/**
 * Two-node straight beam in space, 12 unknowns: ux uy uz rx ry rz at each end, local axes
 * (x along the beam, z the direction of "flat" bending, y completing the right-handed set).
 *
 * Euler-Bernoulli bending with consistent mass; the section may vary along the element and is then
 * integrated at four Gauss points (exact for a linear taper of a rectangular strip but for GJ).
 * Shear follows the interdependent shape functions of Z. Friedman & J. B. Kosmatka, "An improved
 * two-node Timoshenko beam finite element", Computers & Structures 47 (1993) (from memory); with
 * Phi = 0 they are Hermite's cubics.
 */

import { GAUSS_4 } from "./quadrature.ts";

/** Stiffness and mass per length of a beam section, SI. Bending y: flat (moves in z); z: edgewise. */
export interface BeamConstants {
  /** N */
  readonly EA: number;
  /** N m^2, bending that moves the beam in local z */
  readonly EIy: number;
  /** N m^2, bending that moves the beam in local y */
  readonly EIz: number;
  /** N m^2 */
  readonly GJ: number;
  /** N, shear stiffness for motion in local y and z */
  readonly kGAy: number;
  readonly kGAz: number;
  /** kg/m */
  readonly rhoA: number;
  /** kg m, rotary inertia per length about local y, z and the polar one about x */
  readonly rhoIy: number;
  readonly rhoIz: number;
  readonly rhoIp: number;
}

/**
 * "euler-bernoulli": no shear, no rotary inertia in bending. "rayleigh": with rotary inertia.
 * "timoshenko": with both.
 */
export type BeamTheory = "euler-bernoulli" | "rayleigh" | "timoshenko";

export interface BeamMatrices {
  /** 12 x 12, row-major, local axes */
  readonly K: Float64Array;
  readonly M: Float64Array;
}

/** Unknowns of the two bending planes: deflection and slope at each end; slope sign for dw/dx. */
const FLAT = { dof: [2, 4, 8, 10], slope: -1 } as const; // w = uz, dw/dx = -ry
const EDGE = { dof: [1, 5, 7, 11], slope: 1 } as const; // w = uy, dw/dx = +rz

/** Phi = 12 E I / (k G A L^2): the share of shear in the element's end flexibility. */
export function shearRatio(EI: number, kGA: number, L: number): number {
  return (12 * EI) / (kGA * L * L);
}

/**
 * Shape functions at s = x/L: deflection w = N . q, section rotation theta = T . q with
 * q = (w1, theta1, w2, theta2), and the curvature C = dT/dx.
 */
function bendingShapes(s: number, L: number, Phi: number) {
  const d = 1 / (1 + Phi);
  return {
    N: [
      d * (2 * s ** 3 - 3 * s * s - Phi * s + 1 + Phi),
      d * L * (s ** 3 - (2 + Phi / 2) * s * s + (1 + Phi / 2) * s),
      -d * (2 * s ** 3 - 3 * s * s - Phi * s),
      d * L * (s ** 3 - (1 - Phi / 2) * s * s - (Phi / 2) * s),
    ],
    T: [
      ((6 * d) / L) * (s * s - s),
      d * (3 * s * s - (4 + Phi) * s + 1 + Phi),
      ((-6 * d) / L) * (s * s - s),
      d * (3 * s * s - (2 - Phi) * s),
    ],
    C: [
      ((6 * d) / (L * L)) * (2 * s - 1),
      (d / L) * (6 * s - 4 - Phi),
      ((-6 * d) / (L * L)) * (2 * s - 1),
      (d / L) * (6 * s - 2 + Phi),
    ],
    /** Shear strain dw/dx - theta, constant along the element. */
    shear: [(-d * Phi) / L, (-d * Phi) / 2, (d * Phi) / L, (-d * Phi) / 2],
  };
}

/** out += c * v v' on the four unknowns of a bending plane. */
function addOuter(
  out: Float64Array,
  plane: typeof FLAT | typeof EDGE,
  v: readonly number[],
  c: number,
) {
  for (let i = 0; i < 4; i++) {
    const vi = i % 2 === 1 ? plane.slope * v[i] : v[i];
    for (let j = 0; j < 4; j++) {
      const vj = j % 2 === 1 ? plane.slope * v[j] : v[j];
      out[12 * plane.dof[i] + plane.dof[j]] += c * vi * vj;
    }
  }
}

/** out += the two-point rows of linear shape functions on unknowns a and b = a + 6. */
function addPair(out: Float64Array, a: number, v1: number, v2: number, c: number) {
  const b = a + 6;
  out[13 * a] += c * v1 * v1;
  out[12 * a + b] += c * v1 * v2;
  out[12 * b + a] += c * v1 * v2;
  out[13 * b] += c * v2 * v2;
}

/**
 * Stiffness and consistent mass of one element in local axes.
 *
 * @param L length in m, > 0
 * @param sections one section (uniform) or four, at the points of GAUSS_4
 */
export function beamMatrices(
  L: number,
  sections: readonly BeamConstants[],
  theory: BeamTheory,
): BeamMatrices {
  const K = new Float64Array(144);
  const M = new Float64Array(144);
  const shear = theory === "timoshenko";
  const rotary = theory !== "euler-bernoulli";
  const mean = (f: (c: BeamConstants) => number) =>
    sections.length === 1
      ? f(sections[0])
      : sections.reduce((sum, c, g) => sum + GAUSS_4.w[g] * f(c), 0);
  const PhiFlat = shear
    ? shearRatio(
        mean((c) => c.EIy),
        mean((c) => c.kGAz),
        L,
      )
    : 0;
  const PhiEdge = shear
    ? shearRatio(
        mean((c) => c.EIz),
        mean((c) => c.kGAy),
        L,
      )
    : 0;

  for (let g = 0; g < 4; g++) {
    const c = sections.length === 1 ? sections[0] : sections[g];
    const s = GAUSS_4.x[g];
    const dx = GAUSS_4.w[g] * L;
    addPair(K, 0, -1 / L, 1 / L, c.EA * dx); // EA u'^2
    addPair(K, 3, -1 / L, 1 / L, c.GJ * dx); // GJ rx'^2
    addPair(M, 0, 1 - s, s, c.rhoA * dx);
    addPair(M, 3, 1 - s, s, c.rhoIp * dx);

    const flat = bendingShapes(s, L, PhiFlat);
    addOuter(K, FLAT, flat.C, c.EIy * dx); // EI w''^2
    addOuter(M, FLAT, flat.N, c.rhoA * dx);
    if (rotary) addOuter(M, FLAT, flat.T, c.rhoIy * dx);
    if (PhiFlat > 0) addOuter(K, FLAT, flat.shear, c.kGAz * dx);

    const edge = bendingShapes(s, L, PhiEdge);
    addOuter(K, EDGE, edge.C, c.EIz * dx);
    addOuter(M, EDGE, edge.N, c.rhoA * dx);
    if (rotary) addOuter(M, EDGE, edge.T, c.rhoIz * dx);
    if (PhiEdge > 0) addOuter(K, EDGE, edge.shear, c.kGAy * dx);
  }
  return { K, M };
}

/** Strain energy of an element by kind, J, for local end displacements u (12). */
export interface BeamEnergy {
  readonly axial: number;
  readonly torsion: number;
  readonly flat: number;
  readonly edge: number;
}

export function beamEnergy(K: Float64Array, u: Float64Array): BeamEnergy {
  const quadratic = (dofs: readonly number[]) => {
    let sum = 0;
    for (const i of dofs) for (const j of dofs) sum += u[i] * K[12 * i + j] * u[j];
    return sum / 2;
  };
  return {
    axial: quadratic([0, 6]),
    torsion: quadratic([3, 9]),
    flat: quadratic(FLAT.dof),
    edge: quadratic(EDGE.dof),
  };
}

/**
 * Shear energy that Euler-Bernoulli theory leaves out, J: V^2 L / (2 k G A) in both planes, with the
 * shear force V that the element's own stiffness gives at its end. (In a tapered beam V is the
 * derivative of the bending moment, which E I times the third derivative of w alone is not.)
 *
 * @param K of the element, local axes
 * @param kGAy, kGAz over the element, N
 */
export function omittedShearEnergy(
  K: Float64Array,
  L: number,
  { kGAy, kGAz }: Pick<BeamConstants, "kGAy" | "kGAz">,
  u: Float64Array,
): number {
  const endForce = (plane: typeof FLAT | typeof EDGE) =>
    plane.dof.reduce((V, d) => V + K[12 * plane.dof[0] + d] * u[d], 0);
  return (L / 2) * (endForce(FLAT) ** 2 / kGAz + endForce(EDGE) ** 2 / kGAy);
}
