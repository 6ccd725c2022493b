/** Modes of a variant in the space, with an estimate of their error. */

import type { MassProperties } from "../matrices/mass.ts";
import type { Mesh } from "../mesh/types.ts";
import type { Model } from "../model/types.ts";
import type { ModeDescription, Modes } from "../modes/types.ts";
import type { ResidualMotion, SeatFlexibility } from "../response/residual.ts";
import { differences, type Unlike } from "./differences.ts";
import type { Known } from "./known.ts";
import { type ReducedMatrices, reducedMatrices } from "./matrices.ts";
import type { Meshed } from "./meshed.ts";
import { motionsOf } from "./motions.ts";
import { type RitzPairs, ritzPairs } from "./ritz.ts";
import { flexibilityIn } from "./seats.ts";
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
 * @param mass of the variant
 * @param watched unknowns of the mesh at which motions are wanted, besides those of the arms' tips; all
 *   others are not a number
 */
export function solveVariant(
  frame: ReducedFrame,
  known: Known,
  model: Model,
  mesh: Mesh,
  mass: MassProperties,
  watched: Int32Array,
): ReducedSolution | Unlike {
  const found = differences(frame.base, model, mesh);
  if ("unlike" in found) return found;
  const { meshed } = found;
  const matrices = reducedMatrices(frame, known, found, mass);
  const ritz = pairsOf(frame, matrices);
  const count = Math.min(frame.count, ritz.lambda.length);
  const dofs = withTips(mesh, watched);
  const { shapes, residuals, rigidShapes } = motionsOf(
    frame,
    meshed,
    matrices,
    ritz,
    count,
    dofs,
    frame.remainder,
  );
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
    residuals,
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
  return ritzPairs(K.slice(), M.slice(), space.width);
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
 * Largest relative error of a frequency. With the residual r = K u - lambda M u of a Ritz pair,
 * lambda - lambda* = sum of (phi_j'r)^2/(lambda_j - lambda) over the modes that the space lacks, to
 * second order. The probes give r'(K0 - shift M0)^-1 r for the base's K0, M0; what the variant is softer
 * than the base at most, and how near the lacking modes may be, is put on top.
 */
function errorOf(
  { space, solved, beyond: next }: ReducedFrame,
  { probedK, probedM, softest }: ReducedMatrices,
  { lambda, Y }: RitzPairs,
  count: number,
): number {
  const { width: w, probes } = space;
  let worst = 0;
  for (let k = 0; k < count; k++) {
    let square = 0;
    for (let p = 0; p < probes; p++) {
      const row = p * w;
      let r = 0;
      for (let i = 0; i < w; i++)
        r += (probedK[row + i] - lambda[k] * probedM[row + i]) * Y[k * w + i];
      square += r * r;
    }
    const amplified = (next - solved.shift) / Math.max(next - lambda[k], 0.05 * next);
    const error = ((square / probes) * amplified) / softest;
    worst = Math.max(worst, error / (2 * lambda[k]));
  }
  return worst;
}
