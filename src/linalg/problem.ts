/** An eigenproblem made ready: checked, analysed, rigid-body motions orthonormalised. */

import { SolveError } from "../errors.ts";
import { symbolicOf } from "./known-patterns.ts";
import type { ShiftInvert } from "./lanczos.ts";
import { emptyBasis, extendBasis, type MBasis } from "./m-basis.ts";
import { multiplyBlock } from "./product.ts";
import { fixedSeedGenerator } from "./random.ts";
import { requireFinite, requireSemiDefinite } from "./semi-definite.ts";
import { factoriseBelow, guessShift, type ShiftedFactor } from "./shift.ts";
import { shiftInvert } from "./shift-invert.ts";
import { requireSamePattern, type SymmetricSparse, withoutZeros } from "./sparse.ts";
import type { Symbolic } from "./symbolic.ts";

export interface Problem {
  /** On one pattern: for factorisations. */
  readonly K: SymmetricSparse;
  readonly M: SymmetricSparse;
  /** The same without zeros: for products. */
  readonly sparseK: SymmetricSparse;
  readonly sparseM: SymmetricSparse;
  readonly n: number;
  /** Elastic modes wanted, at most as many as there are. */
  readonly count: number;
  readonly tolerance: number;
  readonly symbolic: Symbolic;
  /** M-orthonormal basis of the deflated motions. */
  readonly rigid: MBasis;
  readonly random: () => number;
  /** The shift next to the lowest mode: residuals are weighed with its factor. */
  near: ShiftedFactor;
  /** The operator of the iteration and its sigma, as a rule that of `near`. */
  operator: ShiftInvert;
  sigma: number;
  /** What was spent. */
  readonly work: { operatorCalls: number; factorisations: number };
}

export const MODES_DEFAULTS = { tolerance: 1e-10 } as const;

export interface ProblemOptions {
  readonly count: number;
  readonly deflate?: readonly Float64Array[];
  readonly shift?: number;
  readonly tolerance?: number;
  readonly symbolic?: Symbolic;
}

/**
 * @throws RangeError for unusable options; SolveError for matrices that are no stiffness or mass, or for
 *   dependent `deflate` vectors
 */
export function stateProblem(
  K: SymmetricSparse,
  M: SymmetricSparse,
  options: ProblemOptions,
): Problem {
  requireSamePattern(K, M);
  const { n } = K.pattern;
  const { deflate = [], shift, tolerance = MODES_DEFAULTS.tolerance } = options;
  if (!(Number.isInteger(options.count) && options.count >= 1)) {
    throw new RangeError(`count must be a positive integer, not ${options.count}`);
  }
  if (shift !== undefined && !(shift <= 0)) {
    throw new RangeError(`shift must not be above zero, but is ${shift}`);
  }
  if (!(tolerance > 0)) throw new RangeError(`tolerance must be above zero, but is ${tolerance}`);
  if (options.symbolic !== undefined && options.symbolic.pattern !== K.pattern) {
    throw new RangeError("the symbolic factorisation belongs to another pattern");
  }
  requireFinite(K, "stiffness");
  requireFinite(M, "mass");
  requireSemiDefinite(M, "mass");
  const symbolic = options.symbolic ?? symbolicOf(K.pattern);
  if (deflate.length >= n) {
    throw new SolveError(`all of the ${n} unknowns move as rigid bodies: nothing can vibrate`);
  }
  const sparseM = withoutZeros(M);
  const rigid = orthonormalise(sparseM, deflate);
  const near = factoriseBelow(symbolic, K, M, shift ?? guessShift(K, M));
  return {
    K,
    M,
    sparseK: withoutZeros(K),
    sparseM,
    n,
    count: Math.min(options.count, n - rigid.count),
    tolerance,
    symbolic,
    rigid,
    random: fixedSeedGenerator(),
    near,
    operator: shiftInvert(near.factor, sparseM),
    sigma: near.sigma,
    work: { operatorCalls: 0, factorisations: near.attempts },
  };
}

/** Lets the iteration work at another shift. */
export function iterateAt(problem: Problem, sigma: number): ShiftedFactor {
  const shifted = factoriseBelow(problem.symbolic, problem.K, problem.M, sigma);
  problem.operator = shiftInvert(shifted.factor, problem.sparseM);
  problem.sigma = shifted.sigma;
  problem.work.factorisations += shifted.attempts;
  return shifted;
}

function orthonormalise(M: SymmetricSparse, vectors: readonly Float64Array[]): MBasis {
  const { n } = M.pattern;
  const basis = emptyBasis(n, vectors.length);
  vectors.forEach((v, c) => {
    if (v.length !== n) {
      throw new RangeError(`deflated vector ${c} has ${v.length} components instead of ${n}`);
    }
    basis.V.set(v, c * n);
  });
  // Geometry gives vectors that are independent by far; this close to dependent is a mistake.
  const { added, B } = extendBasis(basis, vectors.length, (out, x, columns) =>
    multiplyBlock(out, M, x, columns),
  );
  for (let c = 0; c < vectors.length; c++) {
    let length = 0;
    for (let d = 0; d <= c; d++) length += B[d * vectors.length + c] ** 2;
    if (added < vectors.length || B[c * vectors.length + c] ** 2 < 1e-20 * length) {
      throw new SolveError(
        "the vectors to deflate are linearly dependent, or one carries no mass: give each " +
          "rigid-body motion once",
      );
    }
  }
  return basis;
}
