/** The six frequencies of a stack on soft mounts over a base that stands still. */

import { type Inertia, rigidMass } from "../element/rigid-mass.ts";
import {
  backwardInPlace,
  choleskyInPlace,
  forwardInPlace,
  symmetricEigen,
} from "../linalg/dense.ts";
import type { Candidate } from "../model/types.ts";
import { stackDynamics } from "./mount-stiffness.ts";

/** Motions of a body on mounts, in the order ux uy uz rx ry rz. */
export const MOUNT_MOTIONS = [
  "sway fore-aft",
  "sway sideways",
  "bounce",
  "roll rocking",
  "pitch rocking",
  "twist",
] as const;

export type MountMotion = (typeof MOUNT_MOTIONS)[number];

export interface MountMode {
  /** The motion with most of its kinetic energy; each of the six names one mode. */
  readonly motion: MountMotion;
  /** Hz, without damping; with a loss factor it is where the transmissibility peaks. */
  readonly frequency: number;
  /** Share of the kinetic energy in each motion, in the order of MOUNT_MOTIONS (size 6, sum 1). */
  readonly shares: Float64Array;
}

/** Couplings below this share of sqrt(K_ii K_jj) are rounding, and would mix modes that coincide. */
const ROUNDING = 1e-12;
/** Frequencies closer than this, relative, are one. */
const SAME = 1e-9;

/**
 * Modes of K phi = omega^2 M phi for one rigid body, from low to high. All mounts having one loss factor,
 * K (1 + i eta) has the same shapes, and the frequencies are those of the real part.
 *
 * @param K 6 x 6 row-major about the centre of gravity (size 36), from mountStiffness
 * @param mass kg
 * @param inertia about the centre of gravity, kg m^2
 * @throws SolveError for a body without mass or without inertia about some axis
 */
export function mountFrequencies(K: Float64Array, mass: number, inertia: Inertia): MountMode[] {
  const M = rigidMass(mass, inertia, [0, 0, 0]);
  const L = M.slice();
  choleskyInPlace(L, 6); /*                  M = L L'              */
  const A = withoutRounding(K);
  forwardInPlace(L, 6, A, 6); /*             A := L^-1 K           */
  const B = A.map((_, p) => A[6 * (p % 6) + Math.floor(p / 6)]);
  forwardInPlace(L, 6, B, 6); /*             B := L^-1 K L'^-1     */
  const { values: lambda, vectors: phi } = symmetricEigen(B, 6);
  backwardInPlace(L, 6, phi, 6); /*          phi := L'^-1 y        */
  const shares = Array.from(lambda, (_, k) => energyShares(M, phi.subarray(6 * k, 6 * k + 6)));
  const names = distinctNames(shares);
  const modes = shares.map((share, k) => ({
    motion: MOUNT_MOTIONS[names[k]],
    frequency: Math.sqrt(Math.max(0, lambda[k])) / (2 * Math.PI),
    shares: share,
  }));
  return modes.sort(byFrequency);
}

/** Modes of symmetric stacks coincide but for rounding: then in the order of their names. */
function byFrequency(a: MountMode, b: MountMode): number {
  const apart = a.frequency - b.frequency;
  if (Math.abs(apart) > SAME * b.frequency) return apart;
  return MOUNT_MOTIONS.indexOf(a.motion) - MOUNT_MOTIONS.indexOf(b.motion);
}

/** K with couplings that are only rounding at zero. */
function withoutRounding(K: Float64Array): Float64Array {
  return K.map((v, p) => {
    const scale = Math.sqrt(K[7 * Math.floor(p / 6)] * K[7 * (p % 6)]);
    return Math.abs(v) > ROUNDING * scale ? v : 0;
  });
}

/** phi_i (M phi)_i of an M-normalised shape. */
function energyShares(M: Float64Array, phi: Float64Array): Float64Array {
  return phi.map((p, i) => {
    let sum = 0;
    for (let j = 0; j < 6; j++) sum += M[6 * i + j] * phi[j];
    return p * sum;
  });
}

/** A motion for each mode, none twice: the largest share of all is settled first. */
function distinctNames(shares: readonly Float64Array[]): number[] {
  const names = shares.map(() => -1);
  const pairs = shares
    .flatMap((share, k) => Array.from(share, (value, i) => ({ k, i, value })))
    .sort((a, b) => b.value - a.value || a.k - b.k || a.i - b.i);
  for (const { k, i } of pairs) {
    if (names[k] < 0 && !names.includes(i)) names[k] = i;
  }
  return names;
}

/** The six modes of a candidate's stack on its isolators; undefined when it is screwed down. */
export function isolatorModes(candidate: Candidate): MountMode[] | undefined {
  const { K } = stackDynamics(candidate);
  return K && mountFrequencies(K, candidate.stack.mass, candidate.stack.inertia);
}
