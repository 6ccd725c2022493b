/** What a stack does to the motion of the frame under it, at one speed after the other. */

import { SolveError } from "../errors.ts";
import { addProduct } from "../linalg/panels.ts";
import { factorComplexInPlace, solveFactored } from "../linalg/small-complex.ts";
import { PAIRS, type Port } from "./port.ts";
import type { MultipleMotion } from "./shaken.ts";
import type { StackCoordinates } from "./stack.ts";

/** Speeds whose receptances stand in one panel. */
const SPEEDS = 2;

/** Room for the numbers of one speed. */
export interface CouplingRoom {
  /** sums over the elastic modes of psi_i psi_j/(lambda (1 + i eta) - omega^2), as PAIRS, two speeds (21 x 4) */
  readonly H: Float64Array;
  /** 1 - omega^2 H diag(tau) or its factors (6 x 6, row-major) */
  readonly Ar: Float64Array;
  readonly Ai: Float64Array;
  readonly order: Int32Array;
  /** tau_i = s_i/b_i, see `stack.ts` (size 6) */
  readonly tauRe: Float64Array;
  readonly tauIm: Float64Array;
}

export function couplingRoom(): CouplingRoom {
  return {
    H: new Float64Array(2 * SPEEDS * PAIRS.length),
    Ar: new Float64Array(36),
    Ai: new Float64Array(36),
    order: new Int32Array(6),
    tauRe: new Float64Array(6).fill(1),
    tauIm: new Float64Array(6),
  };
}

/**
 * The stack's motion s = diag(tau) (1 - omega^2 H diag(tau))^-1 u0 at one speed of the grid.
 *
 * @param room of one multiple; the speeds are to be taken in order
 * @param out, u0 6 x 2 half, row-major; not the same array
 * @throws SolveError right on a resonance that nothing damps
 */
export function coupleStack(
  out: Float64Array,
  u0: Float64Array,
  room: CouplingRoom,
  motion: MultipleMotion,
  at: number,
  port: Port,
  stack: StackCoordinates,
): void {
  const { H, Ar, Ai, order } = room;
  if (at % SPEEDS === 0) {
    H.fill(0);
    addProduct(H, port.pairs, motion.receptance, at >> 1, 1);
  }
  const square = motion.omega[at] * motion.omega[at];
  setMatrix(room, square, 2 * (at % SPEEDS), port, stack);
  if (!factorComplexInPlace(Ar, Ai, 6, order)) {
    const hertz = motion.omega[at] / (2 * Math.PI);
    throw new SolveError(
      `at ${hertz.toPrecision(6)} Hz the frame with its stack is right on a resonance that nothing damps: give its materials a loss factor above zero`,
    );
  }
  solveFactored(Ar, Ai, 6, order, out, u0, motion.half);
  if (onIsolators(stack)) applyTransmission(out, room, motion.half);
}

function onIsolators({ kappa }: StackCoordinates): boolean {
  return kappa[0] < Number.POSITIVE_INFINITY;
}

/** A = 1 - omega^2 H diag(tau), H with the rigid motions and the modes left out. */
function setMatrix(
  room: CouplingRoom,
  square: number,
  column: number,
  { loose, flexibility }: Port,
  stack: StackCoordinates,
): void {
  const { H, Ar, Ai, tauRe, tauIm } = room;
  if (onIsolators(stack)) setTransmission(room, stack, square);
  let p = 0;
  for (let i = 0; i < 6; i++) {
    for (let j = 0; j <= i; j++, p++) {
      const re = loose[p] - square * (H[4 * p + column] + flexibility[p]);
      const im = -square * H[4 * p + column + 1];
      Ar[6 * i + j] = re * tauRe[j] - im * tauIm[j];
      Ai[6 * i + j] = re * tauIm[j] + im * tauRe[j];
      Ar[6 * j + i] = re * tauRe[i] - im * tauIm[i];
      Ai[6 * j + i] = re * tauIm[i] + im * tauRe[i];
    }
  }
  for (let i = 0; i < 36; i += 7) Ar[i] += 1;
}

/** tau = kappa (1 + i eta)/(kappa (1 + i eta) - omega^2) */
function setTransmission(
  { tauRe, tauIm }: CouplingRoom,
  { kappa, lossFactor }: StackCoordinates,
  square: number,
): void {
  for (let i = 0; i < 6; i++) {
    const kr = kappa[i];
    const ki = kappa[i] * lossFactor;
    const dr = kr - square;
    const d = dr * dr + ki * ki;
    tauRe[i] = (kr * dr + ki * ki) / d;
    tauIm[i] = (ki * dr - kr * ki) / d;
  }
}

/** s := diag(tau) b, in place */
function applyTransmission(b: Float64Array, { tauRe, tauIm }: CouplingRoom, half: number): void {
  for (let i = 0; i < 6; i++) {
    for (let c = 2 * half * i; c < 2 * half * i + half; c++) {
      const re = b[c];
      const im = b[c + half];
      b[c] = tauRe[i] * re - tauIm[i] * im;
      b[c + half] = tauRe[i] * im + tauIm[i] * re;
    }
  }
}
