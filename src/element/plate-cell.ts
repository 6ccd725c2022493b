/**
 * One rectangular cell of a plate as a grid of beams: four edge members and one coupling term.
 *
 * The members carry what beams can, per unit width: A11, A22 (stretching), D11, D22 (bending) and an
 * in-plane bending stiffness that gives the lattice the laminate's in-plane shear stiffness. What beams
 * cannot carry (A12, A16, A26, all of B, D12, D16, D26) acts on the cell's mean strains and curvatures.
 * Without it modes 2 and 3 of a free square plate fall together (20.84, 20.84 for 19.60, 24.27).
 *
 * Twist, D66: a whole cell takes it from the deflections of its four corners, a cut one from torsion of
 * its members (2 D66 in each direction). Torsion alone turns the members at a free edge against their
 * chords and converges at first order only: first mode of the free square plate 13.381, 13.422 with 8
 * and 16 cells a side, 13.497, 13.476 from the corners, 13.468 converged. In cut cells the corners,
 * which may lie off the plate, make twist too soft (-0.6 to -1.1 % at 10 cells a side).
 *
 * Grid of beams: E. C. Hambly, Bridge Deck Behaviour, 2nd ed., ch. 3 (from memory); D. Johnson,
 * Advanced Structural Mechanics (2000) p. 127. The coupling and twist terms are this program's own.
 *
 * Clipped cells: each edge takes the covered area with linear weights (a cell cut along a straight
 * edge keeps the first moment of its width), so any outline works and an uncut cell halves evenly.
 *
 * Nodes run anticlockwise from the corner of least x and y; 6 unknowns each, global axes.
 */

import { type BeamConstants, beamMatrices } from "./beam.ts";
import { memberAxes, toGlobal } from "./rotation.ts";

/** Laminate stiffness of a plate: N = A e + B k, M = B e + D k; each 3 x 3 row-major (xx, yy, xy). */
export interface PlateConstants {
  /** N/m */
  readonly A: ArrayLike<number>;
  /** N */
  readonly B: ArrayLike<number>;
  /** N m */
  readonly D: ArrayLike<number>;
}

/** Covered area of a cell, shared to its edges with linear weights, m^2; low + high = area. */
export interface CellCover {
  /** to the x-members at y = 0 and y = b */
  readonly bottom: number;
  readonly top: number;
  /** to the y-members at x = 0 and x = a */
  readonly left: number;
  readonly right: number;
}

/** A cell covered to within this share is whole. */
const WHOLE = 1e-9;

const UP = [0, 0, 1];
const ALONG_X = memberAxes([1, 0, 0], UP);
const ALONG_Y = memberAxes([0, 1, 0], UP);

/** A lattice member of covered width w: no mass, the cell's mass is in cell-mass.ts. */
function latticeMember(EA: number, EI: number, GJ: number, EIinPlane: number): BeamConstants {
  return {
    EA,
    EIy: EI,
    EIz: EIinPlane,
    GJ,
    kGAy: Number.POSITIVE_INFINITY,
    kGAz: Number.POSITIVE_INFINITY,
    rhoA: 0,
    rhoIy: 0,
    rhoIz: 0,
    rhoIp: 0,
  };
}

/** out (24 x 24) += a member's 12 x 12 between cell nodes i and j. */
function scatterMember(out: Float64Array, Ke: Float64Array, i: number, j: number) {
  for (let r = 0; r < 12; r++) {
    const R = r < 6 ? 6 * i + r : 6 * j + r - 6;
    for (let c = 0; c < 12; c++) {
      out[24 * R + (c < 6 ? 6 * i + c : 6 * j + c - 6)] += Ke[12 * r + c];
    }
  }
}

/**
 * Mean strains of the cell: six rows of 24, order ex, ey, gxy, kx, ky, kxy.
 * kx = d(ry)/dx, ky = -d(rx)/dy, kxy = d(ry)/dy - d(rx)/dx (= -2 w,xy).
 *
 * Shear is the turning of the members' chords against their ends, gxy = (dv/dx - rz) + (du/dy + rz),
 * each bracket a mean over the members it belongs to: in a cell cut unevenly the two means of rz
 * differ, and only so is the members' own energy an upper bound of the mean's.
 */
export function meanStrainRows(a: number, b: number, cover: CellCover): Float64Array[] {
  const rows = Array.from({ length: 6 }, () => new Float64Array(24));
  const { bottom, top, left, right } = cover;
  const [lowX, highX] = [bottom / (bottom + top), top / (bottom + top)];
  const [lowY, highY] = [left / (left + right), right / (left + right)];
  const addX = (row: number, dof: number, c: number) => {
    // d/dx: edges 0-1 (bottom) and 3-2 (top)
    rows[row][dof] -= (c * lowX) / a;
    rows[row][6 + dof] += (c * lowX) / a;
    rows[row][18 + dof] -= (c * highX) / a;
    rows[row][12 + dof] += (c * highX) / a;
  };
  const addY = (row: number, dof: number, c: number) => {
    // d/dy: edges 0-3 (left) and 1-2 (right)
    rows[row][dof] -= (c * lowY) / b;
    rows[row][18 + dof] += (c * lowY) / b;
    rows[row][6 + dof] -= (c * highY) / b;
    rows[row][12 + dof] += (c * highY) / b;
  };
  addX(0, 0, 1); // ex = du/dx
  addY(1, 1, 1); // ey = dv/dy
  addX(2, 1, 1); // dv/dx - rz
  addY(2, 0, 1); // du/dy + rz
  const ends = [lowX - lowY, lowX - highY, highX - highY, highX - lowY];
  ends.forEach((difference, node) => {
    rows[2][6 * node + 5] -= difference / 2;
  });
  addX(3, 4, 1);
  addY(4, 3, -1);
  addY(5, 4, 1);
  addX(5, 3, -1);
  return rows;
}

/** kxy = -2 w,xy from the deflections of the corners of a whole cell. */
function cornerTwist(a: number, b: number): Float64Array {
  const row = new Float64Array(24);
  [1, -1, 1, -1].forEach((sign, node) => {
    row[6 * node + 2] = (-2 * sign) / (a * b);
  });
  return row;
}

/**
 * Stiffness of the cell, 24 x 24 row-major. Positive semi-definite whenever [A B; B D] is positive
 * definite: along each edge a beam's energy is at least that of its mean curvature (and rates), and a
 * weighted mean of squares is at least the square of the mean.
 *
 * @param a side along x, m
 * @param b side along y, m
 */
export function cellStiffness(
  p: PlateConstants,
  a: number,
  b: number,
  cover: CellCover,
): Float64Array {
  const K = new Float64Array(576);
  const { A, B, D } = p;
  const whole = cover.bottom + cover.top > (1 - WHOLE) * a * b;
  const torsion = whole ? 0 : 2 * D[8];
  // In-plane shear of the lattice: 12/(a/EIx + b/EIy) = A66 a b per cell, shared as a/EIx = b/EIy,
  // so EIx = A66 a^2 w/6 for a member of width w (A66 h^3/6 for square cells of side h).
  const xMember = (w: number) =>
    latticeMember(A[0] * w, D[0] * w, torsion * w, (A[8] * a * a * w) / 6);
  const yMember = (w: number) =>
    latticeMember(A[4] * w, D[4] * w, torsion * w, (A[8] * b * b * w) / 6);
  const along = (L: number, member: BeamConstants, axes: Float64Array) =>
    toGlobal(beamMatrices(L, [member], "euler-bernoulli").K, 12, axes);
  scatterMember(K, along(a, xMember(cover.bottom / a), ALONG_X), 0, 1);
  scatterMember(K, along(a, xMember(cover.top / a), ALONG_X), 3, 2);
  scatterMember(K, along(b, yMember(cover.left / b), ALONG_Y), 0, 3);
  scatterMember(K, along(b, yMember(cover.right / b), ALONG_Y), 1, 2);

  // biome-ignore format: matrix layout
  const C = [
    [0, A[1], A[2], B[0], B[1], B[2]],
    [A[1], 0, A[5], B[3], B[4], B[5]],
    [A[2], A[5], 0, B[6], B[7], B[8]],
    [B[0], B[3], B[6], 0, D[1], D[2]],
    [B[1], B[4], B[7], D[1], 0, D[5]],
    [B[2], B[5], B[8], D[2], D[5], whole ? D[8] : 0],
  ];
  const S = Math.min(cover.bottom + cover.top, cover.left + cover.right);
  const rows = meanStrainRows(a, b, cover);
  if (whole) rows[5] = cornerTwist(a, b);
  for (let i = 0; i < 6; i++) {
    for (let j = 0; j < 6; j++) {
      const c = S * C[i][j]; // U = S e' C e / 2
      if (c === 0) continue;
      for (let r = 0; r < 24; r++) {
        const f = c * rows[i][r];
        if (f === 0) continue;
        for (let s = 0; s < 24; s++) K[24 * r + s] += f * rows[j][s];
      }
    }
  }
  return K;
}
