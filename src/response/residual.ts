/** What the modes left out add at low frequency: residual flexibility. */

import type { Factor } from "../linalg/factorise.ts";
import { dot, multiply } from "../linalg/product.ts";
import { inverseGrams, solveInPlace } from "../linalg/solve.ts";
import type { System } from "../matrices/assemble.ts";
import { expand, project } from "../matrices/reduction.ts";
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

/** Seats taken through the factor together: their columns fill the blocks of four. */
const TOGETHER = 8;

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
  const { n } = reduction;
  const elastic = modes.lambda.length;
  const massRigid = massTimesRigid(system, modes);
  const found: Float64Array[] = [];
  for (let first = 0; first < seats.length; first += TOGETHER) {
    const some = seats.slice(first, first + TOGETHER);
    const X = new Float64Array(6 * n * some.length);
    some.forEach(({ dofs, rows }, k) => {
      for (let d = 0; d < 6; d++) {
        const row = rows.subarray(d * dofs.length, (d + 1) * dofs.length);
        const x = X.subarray((6 * k + d) * n, (6 * k + d + 1) * n);
        x.set(project(reduction, dofs, row));
        // Rigid motions out before the solution: sigma is so close to zero that they would drown the rest.
        const own = psi[first + k];
        const terms = own.length / 6;
        massRigid.forEach((r, j) => {
          subtract(x, r, own[d * terms + elastic + j]);
        });
      }
    });
    const grams = inverseGrams(factor, X, 6 * some.length, 6);
    some.forEach((_, k) => {
      const F = grams.slice(36 * k, 36 * k + 36);
      const own = psi[first + k];
      const terms = own.length / 6;
      for (let t = 0; t < elastic; t++) subtractOuter(F, own, t, terms, modes.lambda[t] - shift);
      found.push(F);
    });
  }
  return found;
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
