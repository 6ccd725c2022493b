/** Classical lamination theory: plies and angles in, A, B, D and engineering constants out. */

import { addScaled3, inverse3, multiply3, transpose3 } from "./matrix3.ts";
import { direction, lossStiffness, type Ply, reducedStiffness, rotateStiffness } from "./ply.ts";

/** One ply in its place. Layers are listed from the bottom (-z) to the top. */
export interface Layer {
  readonly ply: Ply;
  /** From x to the ply's axis 1, rad, counter-clockwise seen from +z. */
  readonly angle: number;
  /** m; may differ from the ply's nominal thickness. */
  readonly thickness: number;
}

/**
 * N = A e0 + B kappa, M = B e0 + D kappa. Each 3 x 3 row-major, order xx, yy, xy, with engineering
 * shear strain and the twisting curvature 2 d2w/dxdy. z = 0 is the middle of the thickness.
 */
export interface LaminateStiffness {
  /** N/m. */
  readonly A: Float64Array;
  /** N. */
  readonly B: Float64Array;
  /** N m. */
  readonly D: Float64Array;
  /** m. */
  readonly thickness: number;
}

/** e0 = a N + b M, kappa = b' N + d M. b is not symmetric in general. */
export interface LaminateCompliance {
  /** m/N. */
  readonly a: Float64Array;
  /** 1/N. */
  readonly b: Float64Array;
  /** 1/(N m). */
  readonly d: Float64Array;
}

/** Moduli of the homogeneous sheet that is as stiff, Pa. */
export interface EngineeringConstants {
  readonly Ex: number;
  readonly Ey: number;
  readonly Gxy: number;
  readonly nuxy: number;
  /** The same for bending and twisting, where outer plies count more. */
  readonly Efx: number;
  readonly Efy: number;
  readonly Gfxy: number;
  readonly nufxy: number;
}

/** A, B, D of the layers. Kaw, Mechanics of Composite Materials, eqs. 4.28 (chapter 4). */
export function laminateStiffness(layers: readonly Layer[]): LaminateStiffness {
  return integrate(layers, reducedStiffness);
}

/** The same integrals of the plies' loss stiffness. */
export function laminateLossStiffness(layers: readonly Layer[]): LaminateStiffness {
  return integrate(layers, lossStiffness);
}

function integrate(layers: readonly Layer[], of: (ply: Ply) => Float64Array): LaminateStiffness {
  const thickness = layers.reduce((sum, layer) => sum + layer.thickness, 0);
  const A = new Float64Array(9);
  const B = new Float64Array(9);
  const D = new Float64Array(9);
  let z = -thickness / 2;
  for (const layer of layers) {
    const Q = rotateStiffness(of(layer.ply), layer.angle);
    const t = layer.thickness;
    const zm = z + t / 2;
    for (let i = 0; i < 9; i++) {
      A[i] += Q[i] * t; // sum Q (z1 - z0)
      B[i] += Q[i] * t * zm; // sum Q (z1^2 - z0^2) / 2
      D[i] += Q[i] * t * (zm * zm + (t * t) / 12); // sum Q (z1^3 - z0^3) / 3
    }
    z += t;
  }
  dropRounding(B, 1e-13 * thickness * Math.max(A[0], A[4]));
  return { A, B, D, thickness };
}

/** So that "is there any coupling?" can be asked of B by comparing with zero. */
function dropRounding(out: Float64Array, below: number): void {
  for (let i = 0; i < out.length; i++) if (Math.abs(out[i]) < below) out[i] = 0;
}

/**
 * The laminate turned by theta (rad, counter-clockwise seen from +z) in the same axes: every ply's
 * angle grows by theta.
 */
export function rotateLaminate(s: LaminateStiffness, theta: number): LaminateStiffness {
  return {
    A: rotateStiffness(s.A, theta),
    B: rotateStiffness(s.B, theta),
    D: rotateStiffness(s.D, theta),
    thickness: s.thickness,
  };
}

/**
 * Inverse of the 6 x 6 matrix [A B; B D] by blocks, so that unsymmetric stacks are included:
 * d = (D - B A^-1 B)^-1, b = -A^-1 B d, a = A^-1 - A^-1 B b'.
 * Throws SolveError when A or D is singular.
 */
export function laminateCompliance(s: LaminateStiffness): LaminateCompliance {
  const Ainv = inverse3(s.A);
  const AinvB = multiply3(Ainv, s.B);
  const d = inverse3(addScaled3(s.D, -1, multiply3(s.B, AinvB)));
  const b = multiply3(AinvB, d).map((value) => 0 - value);
  const a = addScaled3(Ainv, -1, multiply3(AinvB, transpose3(b)));
  return { a, b, d };
}

/**
 * Ex = 1/(h a11), Efx = 12/(h^3 d11) and so on, with the full compliance, i.e. with the other
 * forces and moments zero. Kaw, Mechanics of Composite Materials, chapter 4, eqs. 4.35-4.53.
 */
export function engineeringConstants(s: LaminateStiffness): EngineeringConstants {
  const { a, d } = laminateCompliance(s);
  const h = s.thickness;
  const I = h ** 3 / 12;
  return {
    Ex: 1 / (h * a[0]),
    Ey: 1 / (h * a[4]),
    Gxy: 1 / (h * a[8]),
    nuxy: -a[1] / a[0],
    Efx: 1 / (I * d[0]),
    Efy: 1 / (I * d[4]),
    Gfxy: 1 / (I * d[8]),
    nufxy: -d[1] / d[0],
  };
}

/**
 * Transverse shear moduli in the planes s-z and n-z, Pa, where s points theta (rad) away from x
 * and n is 90 degrees further: the thickness average of G13 c^2 + G23 s^2, as in first-order
 * shear deformation theory (J. N. Reddy, Mechanics of Laminated Composite Plates, from memory).
 */
export function transverseShear(
  layers: readonly Layer[],
  theta = 0,
): { readonly Gsz: number; readonly Gnz: number } {
  let h = 0;
  let along = 0;
  let across = 0;
  for (const { ply, angle, thickness } of layers) {
    const { c, s } = direction(angle - theta);
    h += thickness;
    along += thickness * (ply.G13 * c * c + ply.G23 * s * s);
    across += thickness * (ply.G13 * s * s + ply.G23 * c * c);
  }
  return { Gsz: along / h, Gnz: across / h };
}

/** Mean density of the layers, kg/m3; exactly the plies' own when they share one. */
export function laminateDensity(layers: readonly Layer[]): number {
  const rho0 = layers[0].ply.density;
  let h = 0;
  let excess = 0;
  for (const { ply, thickness } of layers) {
    h += thickness;
    excess += thickness * (ply.density - rho0);
  }
  return rho0 + excess / h;
}
