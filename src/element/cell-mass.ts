/**
 * Consistent mass of a plate cell, integrated over the covered part only, so that the plate's mass,
 * centre of gravity and inertia are exact for any outline.
 *
 * Deflection w: the 12-term polynomial of O. C. Zienkiewicz, The Finite Element Method, "rectangular
 * element with corner nodes" (from memory). In-plane u and v: Hermite cubics along the edges they are
 * transverse to, linear across, as the edge members bend in their plane. Rotary inertia rho h^3/12 on
 * bilinear rotations. All reproduce rigid-body motion exactly.
 */

import type { PlanePoints } from "./quadrature.ts";

/** Signs of the corner coordinates, anticlockwise from (-1, -1). */
const XI = [-1, 1, 1, -1];
const ETA = [-1, -1, 1, 1];

/** The five fields at a point of the cell: unknown numbers and shape values. */
interface Field {
  readonly dof: readonly number[];
  readonly N: Float64Array;
}

const corners = (...dofs: number[]) => [0, 1, 2, 3].flatMap((i) => dofs.map((d) => 6 * i + d));

/** w = sum N uz + N rx + N ry with rx = dw/dy, ry = -dw/dx. */
function deflection(field: Field, xi: number, eta: number, a: number, b: number) {
  for (let i = 0; i < 4; i++) {
    const x0 = xi * XI[i];
    const y0 = eta * ETA[i];
    field.N[3 * i] = ((1 + x0) * (1 + y0) * (2 + x0 + y0 - xi * xi - eta * eta)) / 8;
    field.N[3 * i + 1] = ((b / 2) * ETA[i] * (1 + x0) * (y0 - 1) * (1 + y0) ** 2) / 8;
    field.N[3 * i + 2] = (-(a / 2) * XI[i] * (1 + x0) ** 2 * (x0 - 1) * (1 + y0)) / 8;
  }
}

/** Hermite cubic of the end at +-1 on [-1, 1]: value and slope functions for a length L. */
const hermiteValue = (t: number, end: number) => ((1 + t * end) ** 2 * (2 - t * end)) / 4;
const hermiteSlope = (t: number, end: number, L: number) =>
  ((L / 2) * end * (1 + t * end) ** 2 * (t * end - 1)) / 4;

/** u = cubic in y (slope du/dy = -rz), linear in x. */
function alongX(field: Field, xi: number, eta: number, b: number) {
  for (let i = 0; i < 4; i++) {
    const across = (1 + xi * XI[i]) / 2;
    field.N[2 * i] = across * hermiteValue(eta, ETA[i]);
    field.N[2 * i + 1] = -across * hermiteSlope(eta, ETA[i], b);
  }
}

/** v = cubic in x (slope dv/dx = rz), linear in y. */
function alongY(field: Field, xi: number, eta: number, a: number) {
  for (let i = 0; i < 4; i++) {
    const across = (1 + eta * ETA[i]) / 2;
    field.N[2 * i] = across * hermiteValue(xi, XI[i]);
    field.N[2 * i + 1] = across * hermiteSlope(xi, XI[i], a);
  }
}

function bilinear(field: Field, xi: number, eta: number) {
  for (let i = 0; i < 4; i++) field.N[i] = ((1 + xi * XI[i]) * (1 + eta * ETA[i])) / 4;
}

/** M += c N N' on the lower triangle of the field's unknowns. */
function addLower(M: Float64Array, { dof, N }: Field, c: number) {
  for (let i = 0; i < dof.length; i++) {
    const f = c * N[i];
    for (let j = 0; j <= i; j++) M[24 * dof[i] + dof[j]] += f * N[j];
  }
}

/**
 * @param massPerArea rho h, kg/m^2
 * @param rotaryPerArea rho h^3/12, kg
 * @param points integration points of the covered part, from the cell's corner of least x and y, m
 * @returns 24 x 24 row-major
 */
export function cellMass(
  massPerArea: number,
  rotaryPerArea: number,
  a: number,
  b: number,
  points: PlanePoints,
): Float64Array {
  const M = new Float64Array(576);
  const w: Field = { dof: corners(2, 3, 4), N: new Float64Array(12) };
  const u: Field = { dof: corners(0, 5), N: new Float64Array(8) };
  const v: Field = { dof: corners(1, 5), N: new Float64Array(8) };
  const rx: Field = { dof: corners(3), N: new Float64Array(4) };
  const ry: Field = { dof: corners(4), N: rx.N }; // the same bilinear values
  for (let k = 0; k < points.w.length; k++) {
    const xi = (2 * points.x[k]) / a - 1;
    const eta = (2 * points.y[k]) / b - 1;
    const dm = massPerArea * points.w[k];
    const dI = rotaryPerArea * points.w[k];
    deflection(w, xi, eta, a, b);
    addLower(M, w, dm);
    alongX(u, xi, eta, b);
    addLower(M, u, dm);
    alongY(v, xi, eta, a);
    addLower(M, v, dm);
    bilinear(rx, xi, eta);
    addLower(M, rx, dI);
    addLower(M, ry, dI);
  }
  for (let i = 0; i < 24; i++) for (let j = 0; j < i; j++) M[24 * j + i] = M[24 * i + j];
  return M;
}
