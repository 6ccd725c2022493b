/**
 * Natural modes of the frame with a stack at one place, from the bare frame's modes.
 *
 * The modes left out act as a spring F^-1 between the seat as the known modes move it and the seat as
 * it is (F their flexibility). With isolators that spring is in series with theirs. In the stack's
 * coordinates y (`stack.ts`), where its mass is 1, and with q the amplitudes of the known modes:
 *
 *   S = (W F W' + diag(1/kappa))^-1
 *   K = [ diag(lambda) + psi' S psi   -psi' S ]      M = 1
 *       [ -S psi                       S      ]
 *
 * the same system as the receptance coupling of `reading.ts`, written for its free vibration.
 */

import { backwardInPlace, choleskyInPlace, forwardInPlace } from "../linalg/dense.ts";
import { symmetricPairs } from "../linalg/symmetric-eigen.ts";
import type { Modes } from "../modes/types.ts";
import { leverRows, type Place, sixBy, transposed } from "./place.ts";

export interface CoupledModes {
  /** rad^2/s^2, ascending, rigid motions (about zero) included (size m) */
  readonly lambda: Float64Array;
  /** of each, 0 for rigid motions (size m) */
  readonly lossFactor: Float64Array;
  /** amplitudes of the bare frame's terms in each mode (m x terms, mode after mode) */
  readonly amplitudes: Float64Array;
  /** the stack's coordinates in each mode (m x 6) */
  readonly stack: Float64Array;
  /** motion of the chip ux uy uz rx ry rz in each mode (m x 6) */
  readonly chip: Float64Array;
  /** share of the strain energy that the isolators hold (size m) */
  readonly isolatorShare: Float64Array;
  /** force between seat and stack in each mode, in the stack's coordinates (m x 6) */
  readonly force: Float64Array;
}

/**
 * Where the known modes are all there are, nothing is left to be flexible and F is what rounding leaves of
 * the flexibility of them all, about 1e-12 of it, of either sign. This share of that flexibility keeps F
 * positive, and moves frequencies by less.
 */
const LEAST_FLEXIBILITY = 1e-6;

/** Found before, as long as the place is in use: several judgements of a place start from its modes. */
const FOUND = new WeakMap<Place, { readonly modes: Modes; readonly coupled: CoupledModes }>();

/**
 * @param modes of the bare frame
 * @throws RangeError for a place without a stack
 */
export function coupledModes(modes: Modes, place: Place): CoupledModes {
  const known = FOUND.get(place);
  if (known?.modes === modes) return known.coupled;
  const coupled = solveCoupled(modes, place);
  FOUND.set(place, { modes, coupled });
  return coupled;
}

function solveCoupled(modes: Modes, place: Place): CoupledModes {
  const { stack, flexibility } = place;
  if (!stack) throw new RangeError("a place without a stack has the modes of the bare frame");
  const terms = place.psi.length / 6;
  const elastic = modes.lambda.length;
  const psi = sixBy(stack.W, place.psi, terms);
  const own = sixBy(stack.W, transposed(sixBy(stack.W, flexibility, 6)), 6);
  const soft = stack.kappa[0] < Number.POSITIVE_INFINITY;
  const series = own.map((v, i) => {
    if (i % 7 !== 0) return v;
    const row = (i / 7) * terms;
    let known = 0;
    for (let t = 0; t < elastic; t++) known += psi[row + t] ** 2 / modes.lambda[t];
    return v + LEAST_FLEXIBILITY * (known + v) + 1 / stack.kappa[i / 7];
  });
  const S = inverse(series);
  const n = terms + 6;
  const K = new Float64Array(n * n);
  const Spsi = sixBy(S, psi, terms);
  for (let a = 0; a < terms; a++) {
    for (let b = 0; b < terms; b++) {
      let sum = a === b && a < elastic ? modes.lambda[a] : 0;
      for (let i = 0; i < 6; i++) sum += psi[i * terms + a] * Spsi[i * terms + b];
      K[a * n + b] = sum;
    }
    for (let i = 0; i < 6; i++) {
      K[a * n + terms + i] = -Spsi[i * terms + a];
      K[(terms + i) * n + a] = -Spsi[i * terms + a];
    }
  }
  for (let i = 0; i < 6; i++) K.set(S.subarray(6 * i, 6 * i + 6), (terms + i) * n + terms);
  const { values, vectors } = symmetricPairs(K, n);
  const chipRows = sixBy(leverRows(place.chip), stack.back, 6);
  const found = {
    lambda: values,
    lossFactor: new Float64Array(n),
    amplitudes: new Float64Array(n * terms),
    stack: new Float64Array(6 * n),
    chip: new Float64Array(6 * n),
    isolatorShare: new Float64Array(n),
    force: new Float64Array(6 * n),
  };
  for (let k = 0; k < n; k++) {
    const vector = vectors.subarray(k * n, (k + 1) * n);
    const q = vector.subarray(0, terms);
    const y = vector.subarray(terms);
    found.amplitudes.set(q, k * terms);
    found.stack.set(y, 6 * k);
    found.chip.set(sixBy(chipRows, y, 1), 6 * k);
    const stretch = y.map((v, i) => {
      let seat = 0;
      for (let t = 0; t < terms; t++) seat += psi[i * terms + t] * q[t];
      return v - seat;
    });
    const force = sixBy(S, stretch, 1);
    found.force.set(force, 6 * k);
    if (k < modes.rigid.length) continue;
    // Strain in the known modes, in the isolators, and in the modes left out.
    let [strain, lost] = [0, 0];
    for (let t = 0; t < elastic; t++) {
      const e = modes.lambda[t] * q[t] * q[t];
      strain += e;
      lost += e * modes.described[t].lossFactor;
    }
    const isolators = soft ? force.reduce((sum, f, i) => sum + (f * f) / stack.kappa[i], 0) : 0;
    const rest = Math.max(0, values[k] - strain - isolators);
    const mean = strain > 0 ? lost / strain : 0;
    found.isolatorShare[k] = isolators / values[k];
    found.lossFactor[k] = (lost + isolators * stack.lossFactor + rest * mean) / values[k];
  }
  return found;
}

/** Inverse of a symmetric positive definite 6 x 6 matrix. */
function inverse(A: Float64Array): Float64Array {
  const L = A.slice();
  choleskyInPlace(L, 6);
  const X = Float64Array.from({ length: 36 }, (_, i) => (i % 7 === 0 ? 1 : 0));
  forwardInPlace(L, 6, X, 6);
  backwardInPlace(L, 6, X, 6);
  return X;
}
