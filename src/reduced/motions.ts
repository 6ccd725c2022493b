/** Motions of a variant's mesh, at some of its unknowns, from coordinates in the space. */

import { product, subtractProduct } from "../linalg/tall.ts";
import { ROTOR_LOADS, rotorLoads } from "../response/load.ts";
import type { ResidualMotion } from "../response/residual.ts";
import type { ReducedMatrices } from "./matrices.ts";
import { rowsAt } from "./mesh-rows.ts";
import type { Meshed } from "./meshed.ts";
import { rigidAt } from "./rigid-part.ts";
import type { RitzPairs } from "./ritz.ts";
import type { ReducedFrame } from "./types.ts";

/**
 * The modes, and for each rotor's unit loads what the modes beyond them add: motions of the mesh at the
 * watched unknowns, not a number elsewhere.
 *
 * @param remainder per rotor: what is added to that, on the mesh
 */
export function motionsOf(
  { space, solved }: Pick<ReducedFrame, "space" | "solved">,
  meshed: Meshed,
  matrices: ReducedMatrices,
  ritz: RitzPairs,
  count: number,
  watched: Int32Array,
  remainder?: readonly ResidualMotion[],
) {
  const { mesh, model } = meshed;
  const { width: w } = space;
  const { rigid, S } = { rigid: matrices.rigid.count, S: matrices.rigid.S };
  const loads = model.rotors.flatMap((rotor) => {
    const all = rotorLoads(mesh, rotor);
    return ROTOR_LOADS.map((name) => all[name]);
  });
  const columns = count + loads.length;
  const C = new Float64Array(w * columns); // coordinates, row-major
  for (let k = 0; k < count; k++) {
    for (let i = 0; i < w; i++) C[i * columns + k] = ritz.Y[k * w + i];
  }
  loads.forEach(({ node, force }, l) => {
    const dofs = [0, 1, 2, 3, 4, 5].map((d) => 6 * node + d);
    const onSpace = loadOnSpace(meshed, matrices, w, dofs, force);
    const c = beyond(ritz, w, count, onSpace, solved.shift);
    for (let i = 0; i < w; i++) C[i * columns + count + l] = c[i];
  });
  const SC = new Float64Array(rigid * columns);
  for (let i = 0; i < w; i++) {
    for (let r = 0; r < rigid; r++) {
      const s = S[i * rigid + r];
      for (let c = 0; c < columns; c++) SC[r * columns + c] += s * C[i * columns + c];
    }
  }
  const d = watched.length;
  const motions = new Float64Array(d * columns);
  const rigidRows = rigidRowsAt(meshed, matrices, watched);
  product(motions, columns, rowsAt(matrices.rows, watched, w), w, C, d);
  subtractProduct(motions, columns, rigidRows, rigid, SC, d);
  const column = (of: Float64Array, c: number, more?: Float64Array) => {
    const out = new Float64Array(2 * mesh.xyz.length).fill(Number.NaN);
    for (let i = 0; i < d; i++) out[watched[i]] = of[c * d + i] + (more ? more[watched[i]] : 0);
    return out;
  };
  return {
    shapes: Array.from({ length: count }, (_, k) => column(motions, k)),
    residuals: model.rotors.map((_, r) => {
      const first = count + ROTOR_LOADS.length * r;
      return Object.fromEntries(
        ROTOR_LOADS.map((name, i) => [name, column(motions, first + i, remainder?.[r][name])]),
      ) as ResidualMotion;
    }),
    rigidShapes: Array.from({ length: rigid }, (_, r) => column(rigidRows, r)),
  };
}

/** Rigid motions at some unknowns (their number x rigid motions, column-major). */
export function rigidRowsAt(
  { mesh }: Pick<Meshed, "mesh">,
  { rigid }: Pick<ReducedMatrices, "rigid">,
  dofs: Int32Array,
): Float64Array {
  const out = new Float64Array(dofs.length * rigid.count);
  dofs.forEach((dof, i) => {
    rigidAt(rigid, mesh, dof).forEach((v, r) => {
      out[r * dofs.length + i] = v;
    });
  });
  return out;
}

/** What a load on the mesh does in every vector of the space without its rigid part (size width). */
function loadOnSpace(
  meshed: Meshed,
  matrices: ReducedMatrices,
  w: number,
  dofs: readonly number[],
  force: Float64Array,
): Float64Array {
  const at = Int32Array.from(dofs);
  const m = at.length;
  const rows = rowsAt(matrices.rows, at, w);
  const rigidRows = rigidRowsAt(meshed, matrices, at);
  const { count, S } = matrices.rigid;
  const out = new Float64Array(w);
  for (let i = 0; i < w; i++) for (let j = 0; j < m; j++) out[i] += rows[i * m + j] * force[j];
  for (let r = 0; r < count; r++) {
    let work = 0;
    for (let j = 0; j < m; j++) work += rigidRows[r * m + j] * force[j];
    for (let i = 0; i < w; i++) out[i] -= S[i * count + r] * work;
  }
  return out;
}

/** Coordinates of sum of y_k (y_k'f)/(lambda_k - shift) over the Ritz vectors beyond the modes. */
function beyond(
  { lambda, Y }: RitzPairs,
  w: number,
  count: number,
  f: Float64Array,
  shift: number,
): Float64Array {
  const out = new Float64Array(w);
  for (let k = count; k < lambda.length; k++) {
    let work = 0;
    for (let i = 0; i < w; i++) work += Y[k * w + i] * f[i];
    const c = work / (lambda[k] - shift);
    for (let i = 0; i < w; i++) out[i] += c * Y[k * w + i];
  }
  return out;
}
