/** Modes of a variant in the space, with an estimate of their error. */

import { product, subtractProduct } from "../linalg/tall.ts";
import { project, type Reduction } from "../matrices/reduction.ts";
import type { Mesh } from "../mesh/types.ts";
import type { Model, Vec3 } from "../model/types.ts";
import type { ModeDescription, Modes } from "../modes/types.ts";
import { ROTOR_LOADS, rotorLoads } from "../response/load.ts";
import type { ResidualMotion, SeatFlexibility } from "../response/residual.ts";
import { differences, type Unlike } from "./differences.ts";
import { type ReducedMatrices, reducedMatrices } from "./matrices.ts";
import type { Meshed } from "./meshed.ts";
import { type RitzPairs, ritzPairs } from "./ritz.ts";
import { flexibilityIn } from "./seats.ts";
import type { Terms } from "./terms.ts";
import type { ReducedFrame } from "./types.ts";

export interface ReducedSolution {
  readonly meshed: Meshed;
  /** without motions of the unknowns that remain, energies and names */
  readonly modes: Modes;
  readonly rigidShapes: readonly Float64Array[];
  readonly residuals: readonly ResidualMotion[];
  readonly flexibility: SeatFlexibility;
  /** estimate of the largest relative error of a frequency */
  readonly error: number;
}

/**
 * @param mesh of the variant, of the base's mesh size
 * @param cg of the variant, m
 * @param watched unknowns of the mesh at which motions are wanted, besides those of the arms' tips; all
 *   others are not a number
 */
export function solveVariant(
  frame: ReducedFrame,
  terms: Terms,
  model: Model,
  mesh: Mesh,
  cg: Vec3,
  watched: Int32Array,
): ReducedSolution | Unlike {
  const found = differences(frame.base, model, mesh);
  if ("unlike" in found) return found;
  const { meshed } = found;
  const matrices = reducedMatrices(frame, terms, found, cg);
  const ritz = pairsOf(frame, matrices);
  const count = Math.min(frame.count, ritz.lambda.length);
  const dofs = withTips(mesh, watched);
  const { shapes, residuals, rigidShapes } = motionsOf(frame, meshed, matrices, ritz, count, dofs);
  const lambda = ritz.lambda.slice(0, count);
  const modes: Modes = {
    lambda,
    phi: new Float64Array(0),
    rigid: rigidShapes.map(() => new Float64Array(0)),
    shapes,
    described: Array.from(lambda, (l, k) => described(frame, model, matrices, ritz, l, k)),
    evidence: frame.solved.modes.evidence,
  };
  return {
    meshed,
    modes,
    rigidShapes,
    residuals: residuals.map((r, i) => withRemainder(r, frame.remainder[i])),
    flexibility: flexibilityIn(frame, meshed, matrices, ritz, count),
    error: errorOf(frame, matrices, ritz, count),
  };
}

/** The unknowns and those of the arms' tips, where the rotors act. */
function withTips({ armTips }: Mesh, watched: Int32Array): Int32Array {
  const tips = armTips.flatMap((node) => [0, 1, 2, 3, 4, 5].map((d) => 6 * node + d));
  return Int32Array.from(new Set([...tips, ...watched]));
}

/** @throws SolveError where the mass is not positive definite in the space */
export function pairsOf(
  { space }: Pick<ReducedFrame, "space">,
  { K, M }: ReducedMatrices,
): RitzPairs {
  const size = space.width * space.width;
  return ritzPairs(K.slice(0, size), M.slice(0, size), space.width);
}

/** What is known of a mode without looking at every element. */
function described(
  { space }: ReducedFrame,
  { dampingFactor }: Model,
  { H }: ReducedMatrices,
  { Y }: RitzPairs,
  lambda: number,
  k: number,
): ModeDescription {
  const w = space.width;
  let loss = 0;
  for (let i = 0; i < w; i++) {
    let row = 0;
    for (let j = 0; j < w; j++) row += H[i * w + j] * Y[k * w + j];
    loss += Y[k * w + i] * row;
  }
  const lossFactor = lambda > 0 ? (dampingFactor * loss) / lambda : 0;
  return {
    number: k + 1,
    frequency: Math.sqrt(Math.max(0, lambda)) / (2 * Math.PI),
    name: "",
    symmetry: "",
    shares: [],
    motion: NO_MOTION,
    lossFactor,
    damping: lossFactor / 2,
    shearEffect: 0,
  };
}

const NO_MOTION = {
  armFlat: 0,
  armEdge: 0,
  armTorsion: 0,
  plateBending: 0,
  plateInPlane: 0,
  member: 0,
  standoff: 0,
  joint: 0,
  softMount: 0,
  other: 0,
};

/**
 * Motions of the mesh at some of its unknowns, not a number elsewhere: the modes, and for each rotor's
 * unit loads what the modes beyond them add.
 */
export function motionsOf(
  { space, solved }: Pick<ReducedFrame, "space" | "solved">,
  { mesh, model, reduction }: Meshed,
  matrices: ReducedMatrices,
  { lambda, Y }: RitzPairs,
  count: number,
  watched: Int32Array,
) {
  const { width: w } = space;
  const { R, rigid, S } = matrices;
  const loads = model.rotors.flatMap((rotor) => {
    const all = rotorLoads(mesh, rotor);
    return ROTOR_LOADS.map((name) => all[name]);
  });
  const columns = count + loads.length;
  const C = new Float64Array(w * columns); // coordinates, row-major
  for (let k = 0; k < count; k++) for (let i = 0; i < w; i++) C[i * columns + k] = Y[k * w + i];
  loads.forEach(({ node, force }, l) => {
    const dofs = [0, 1, 2, 3, 4, 5].map((d) => 6 * node + d);
    const f = project(reduction, dofs, force);
    const c = beyond(space, matrices, { lambda, Y }, count, f, solved.shift);
    for (let i = 0; i < w; i++) C[i * columns + count + l] = c[i];
  });
  const SC = new Float64Array(rigid * columns);
  for (let r = 0; r < rigid; r++) {
    for (let i = 0; i < w; i++) {
      const s = S[r * w + i];
      for (let c = 0; c < columns; c++) SC[r * columns + c] += s * C[i * columns + c];
    }
  }
  const d = watched.length;
  const motions = new Float64Array(d * columns);
  const rigidRows = rowsOnMesh(reduction, watched, R, rigid);
  product(motions, columns, rowsOnMesh(reduction, watched, space.V, w), w, C, d);
  subtractProduct(motions, columns, rigidRows, rigid, SC, d);
  const spread = (values: Float64Array) => {
    const out = new Float64Array(reduction.full).fill(Number.NaN);
    for (let i = 0; i < d; i++) out[watched[i]] = values[i];
    return out;
  };
  const column = (of: Float64Array, c: number) => spread(of.subarray(c * d, (c + 1) * d));
  return {
    shapes: Array.from({ length: count }, (_, k) => column(motions, k)),
    residuals: model.rotors.map((_, r) => {
      const first = count + ROTOR_LOADS.length * r;
      return Object.fromEntries(
        ROTOR_LOADS.map((name, i) => [name, column(motions, first + i)]),
      ) as ResidualMotion;
    }),
    rigidShapes: Array.from({ length: rigid }, (_, r) => column(rigidRows, r)),
  };
}

/** T X at some unknowns of the mesh (their number x columns, column-major), X on the unknowns that remain. */
function rowsOnMesh(
  { n, ptr, col, coef }: Reduction,
  watched: Int32Array,
  X: Float64Array,
  columns: number,
): Float64Array {
  const d = watched.length;
  const out = new Float64Array(d * columns);
  for (let i = 0; i < d; i++) {
    for (let k = ptr[watched[i]]; k < ptr[watched[i] + 1]; k++) {
      const c = coef[k];
      const at = col[k];
      for (let j = 0; j < columns; j++) out[j * d + i] += c * X[j * n + at];
    }
  }
  return out;
}

/** Coordinates of sum of y_k (phi_k'f)/(lambda_k - shift) over the Ritz vectors beyond the modes. */
function beyond(
  { n, V, width: w }: ReducedFrame["space"],
  { R, rigid, S }: ReducedMatrices,
  { lambda, Y }: RitzPairs,
  count: number,
  f: Float64Array,
  shift: number,
): Float64Array {
  const loaded = Array.from(f.keys()).filter((i) => f[i] !== 0);
  const onSpace = new Float64Array(w);
  for (let i = 0; i < w; i++) for (const u of loaded) onSpace[i] += V[i * n + u] * f[u];
  for (let r = 0; r < rigid; r++) {
    let work = 0;
    for (const u of loaded) work += R[r * n + u] * f[u];
    for (let i = 0; i < w; i++) onSpace[i] -= S[r * w + i] * work;
  }
  const out = new Float64Array(w);
  for (let k = count; k < lambda.length; k++) {
    let work = 0;
    for (let i = 0; i < w; i++) work += Y[k * w + i] * onSpace[i];
    const c = work / (lambda[k] - shift);
    for (let i = 0; i < w; i++) out[i] += c * Y[k * w + i];
  }
  return out;
}

function withRemainder(motion: ResidualMotion, remainder: ResidualMotion): ResidualMotion {
  return Object.fromEntries(
    ROTOR_LOADS.map((name) => [name, motion[name].map((u, i) => u + remainder[name][i])]),
  ) as ResidualMotion;
}

/**
 * Largest relative error of a frequency. With the residual r = K u - lambda M u of a Ritz pair,
 * lambda - lambda* = sum of (phi_j'r)^2/(lambda_j - lambda) over the modes that the space lacks, to
 * second order. The probes give r'(K0 - shift M0)^-1 r for the base's K0, M0; what the variant is softer
 * than the base at most, and how near the lacking modes may be, is put on top.
 */
function errorOf(
  { space, solved, beyond: next }: ReducedFrame,
  { K, M, softest }: ReducedMatrices,
  { lambda, Y }: RitzPairs,
  count: number,
): number {
  const { width: w, probes } = space;
  let worst = 0;
  for (let k = 0; k < count; k++) {
    let square = 0;
    for (let p = 0; p < probes; p++) {
      const row = (w + p) * w;
      let r = 0;
      for (let i = 0; i < w; i++) r += (K[row + i] - lambda[k] * M[row + i]) * Y[k * w + i];
      square += r * r;
    }
    const amplified = (next - solved.shift) / Math.max(next - lambda[k], 0.05 * next);
    const error = ((square / probes) * amplified) / softest;
    worst = Math.max(worst, error / (2 * lambda[k]));
  }
  return worst;
}
