/** What the modes left out add at low frequency: residual flexibility. */

import type { Factor } from "../linalg/factorise.ts";
import { type FewRows, inverseGrams } from "../linalg/grams.ts";
import { dot, multiply } from "../linalg/product.ts";
import { solveInPlace } from "../linalg/solve.ts";
import type { System } from "../matrices/assemble.ts";
import { expand, project, type Reduction } from "../matrices/reduction.ts";
import type { Seat } from "../mesh/seat.ts";
import type { Mesh } from "../mesh/types.ts";
import type { Rotor } from "../model/types.ts";
import type { SolvedModes } from "../modes/solve.ts";
import type { Modes } from "../modes/types.ts";
import { ROTOR_LOADS, type RotorLoadName, rotorLoads } from "./load.ts";

/** Static motion of the mesh by the modes left out, for each unit load of one rotor. */
export type ResidualMotion = Readonly<Record<RotorLoadName, Float64Array>>;

/**
 * Motion of the mesh by the modes left out, for the unit loads of every rotor.
 *
 * With the factor of K - sigma M at hand (sigma below the lowest elastic mode):
 * x = (K - sigma M)^-1 (f - M R R'f) = sum over all elastic modes phi phi'f/(lambda - sigma); taking
 * away the known modes leaves those left out at the frequency sqrt(sigma), which for them is as good
 * as static.
 */
export function residualMotions(
  system: System,
  mesh: Mesh,
  modes: Modes,
  rotors: readonly Rotor[],
  factor: Factor,
  shift: number,
): ResidualMotion[] {
  const n = system.reduction.n;
  const loads = rotors.flatMap((r) => {
    const all = rotorLoads(mesh, r);
    return ROTOR_LOADS.map((name) => all[name]);
  });
  const x = new Float64Array(n * loads.length);
  const f = loads.map(({ node, force }) =>
    project(
      system.reduction,
      [0, 1, 2, 3, 4, 5].map((d) => 6 * node + d),
      force,
    ),
  );
  const massRigid = massTimesRigid(system, modes);
  f.forEach((load, k) => {
    const b = x.subarray(k * n, (k + 1) * n);
    b.set(load);
    modes.rigid.forEach((r, j) => {
      subtract(b, massRigid[j], dot(r, load));
    });
  });
  solveInPlace(factor, x, loads.length);
  const motions = f.map((load, k) => {
    const u = x.subarray(k * n, (k + 1) * n);
    // With sigma close to zero the solve amplifies what rounding leaves of the rigid-body motions.
    modes.rigid.forEach((r, j) => {
      subtract(u, r, dot(massRigid[j], u));
    });
    modes.lambda.forEach((lambda, j) => {
      const phi = modes.phi.subarray(j * n, (j + 1) * n);
      subtract(u, phi, dot(phi, load) / (lambda - shift));
    });
    return expand(system.reduction, u);
  });
  return rotors.map(
    (_, r) =>
      Object.fromEntries(
        ROTOR_LOADS.map((name, i) => [name, motions[ROTOR_LOADS.length * r + i]]),
      ) as ResidualMotion,
  );
}

/** M r of every rigid-body motion that is free. */
function massTimesRigid({ M, reduction }: System, { rigid }: Modes): Float64Array[] {
  return rigid.map((r) => {
    const out = new Float64Array(reduction.n);
    multiply(out, M, r);
    return out;
  });
}

/** out -= c a */
function subtract(out: Float64Array, a: Float64Array, c: number): void {
  for (let i = 0; i < out.length; i++) out[i] -= c * a[i];
}

/**
 * How far the modes left out let each seat give way to forces on it (6 x 6 each, row-major).
 *
 * @param psi per seat its motion in every elastic mode, then every rigid one (6 x terms, row-major)
 */
export type SeatFlexibility = (
  seats: readonly Seat[],
  psi: readonly Float64Array[],
) => Float64Array[];

/**
 * How far the modes left out let each seat give way to forces on it: B (K - sigma M)^-1 B' less the
 * share of the rigid motions and of the modes that are known, 6 x 6 row-major (m/N, rad/N, rad/(N m)), B the rows of the seat.
 *
 * @param psi per seat its motion in every elastic mode, then every rigid one (6 x terms, row-major)
 */
export function seatFlexibility(
  system: System,
  { modes, factor, shift }: Pick<SolvedModes, "modes" | "factor" | "shift">,
  seats: readonly Seat[],
  psi: readonly Float64Array[],
): Float64Array[] {
  const { reduction } = system;
  const elastic = modes.lambda.length;
  const rigid = modes.rigid.length;
  const terms = elastic + rigid;
  // Rigid motions out before the product: sigma is so close to zero that they would drown the rest.
  const Z = new Float64Array(reduction.n * rigid);
  massTimesRigid(system, modes).forEach((r, j) => {
    Z.set(r, j * reduction.n);
  });
  const C = psi.map((own) =>
    Float64Array.from({ length: 6 * rigid }, (_, k) => {
      const [j, i] = [Math.floor(k / 6), k % 6];
      return own[i * terms + elastic + j];
    }),
  );
  const loads = seats.map((seat) => seatLoads(reduction, seat));
  const grams = inverseGrams(factor, loads, 6, { Z, width: rigid, C });
  grams.forEach((F, k) => {
    for (let t = 0; t < elastic; t++) subtractOuter(F, psi[k], t, terms, modes.lambda[t] - shift);
  });
  return grams;
}

/** B' of a seat on the unknowns that remain. */
function seatLoads({ ptr, col, coef }: Reduction, { dofs, rows }: Seat): FewRows {
  const m = dofs.length;
  const at: number[] = [];
  const from: number[] = [];
  const share: number[] = [];
  dofs.forEach((dof, j) => {
    for (let k = ptr[dof]; k < ptr[dof + 1]; k++) {
      at.push(col[k]);
      from.push(j);
      share.push(coef[k]);
    }
  });
  const values = new Float64Array(6 * at.length);
  for (let i = 0; i < 6; i++) {
    for (let k = 0; k < at.length; k++)
      values[i * at.length + k] = share[k] * rows[i * m + from[k]];
  }
  return { rows: Int32Array.from(at), values };
}

/** F -= psi psi' / c, psi the column t of a matrix of 6 rows */
function subtractOuter(
  F: Float64Array,
  psi: Float64Array,
  t: number,
  terms: number,
  c: number,
): void {
  for (let i = 0; i < 6; i++) {
    const a = psi[i * terms + t] / c;
    for (let j = 0; j < 6; j++) F[6 * i + j] -= a * psi[j * terms + t];
  }
}
