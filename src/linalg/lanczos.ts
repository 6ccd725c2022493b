/**
 * Block Lanczos with full reorthogonalisation in the M inner product and thick restart, for the
 * largest theta of (K - sigma M)^-1 M x = theta x.
 *
 * R. G. Grimes, J. G. Lewis & H. D. Simon, "A shifted block Lanczos algorithm for solving sparse
 * symmetric generalized eigenproblems", SIAM J. Matrix Anal. Appl. 15 (1994); K. Wu & H. Simon,
 * "Thick-restart Lanczos method for large symmetric eigenvalue problems", SIAM J. Matrix Anal.
 * Appl. 22 (2000); both from memory.
 */

import { SolveError } from "../errors.ts";
import { symmetricEigen } from "./dense.ts";
import { type Extension, emptyBasis, extendBasis, type MBasis } from "./m-basis.ts";
import { product } from "./tall.ts";

/** The operator (K - sigma M)^-1 M, in two halves: the iteration needs M x in its own right. */
export interface ShiftInvert {
  readonly n: number;
  /** out = M x; both n x columns, column-major */
  multiplyMass(out: Float64Array, x: Float64Array, columns: number): void;
  /** out = (K - sigma M)^-1 b; both n x columns, column-major */
  solve(out: Float64Array, b: Float64Array, columns: number): void;
}

/** What the iteration knows after some steps. */
export interface RitzValues {
  /** Descending. */
  readonly theta: Float64Array;
  /** Residual ||OP y - theta y|| in the M norm for ||y|| = 1: an eigenvalue lies within it. */
  readonly residual: Float64Array;
  /** Nothing is left to be found: the values are all there are. */
  readonly exhausted: boolean;
}

export interface LanczosOptions {
  /** Vectors per step: an eigenvalue repeated so often is found with all its vectors at once. */
  readonly blockSize: number;
  /** Vectors to keep before the basis is condensed to its best Ritz vectors. */
  readonly maxBasis: number;
  /** Vectors sent through the operator before giving up. */
  readonly maxCalls: number;
  /** Vectors after which the Ritz values are looked at first. */
  readonly firstLook: number;
  /** Start block (n x blockSize, column-major); by default from `random`. */
  readonly start?: Float64Array | undefined;
  readonly random: () => number;
}

/** Hand back the first `take` Ritz pairs, or look again after so many more vectors. */
export type Verdict = { readonly take: number } | { readonly lookAfter: number };

export interface LanczosResult {
  readonly theta: Float64Array;
  readonly residual: Float64Array;
  /** M-orthonormal Ritz vectors (n x theta.length, column-major). */
  readonly vectors: Float64Array;
  /** Vectors that went through the operator. */
  readonly calls: number;
}

/**
 * Iterates until `choose` is content.
 *
 * @param deflated M-orthonormal vectors that the iteration keeps away from, exactly, at each step
 * @param choose called with the Ritz values now and then (one look costs as much as several steps)
 * @throws SolveError when maxCalls are spent, or everything is found, and `choose` wants more
 * @throws RangeError for a start block of another size
 */
export function lanczos(
  operator: ShiftInvert,
  deflated: MBasis,
  choose: (ritz: RitzValues) => Verdict,
  options: LanczosOptions,
): LanczosResult {
  const { n } = operator;
  const { blockSize, random, maxCalls } = options;
  const r = deflated.count;
  // A basis that has room for everything is never condensed.
  const maxBasis = Math.max(3 * blockSize, Math.min(options.maxBasis, n - r + blockSize));
  const basis = emptyBasis(n, r + maxBasis + 2 * blockSize);
  basis.V.set(deflated.V.subarray(0, r * n));
  basis.MV.set(deflated.MV.subarray(0, r * n));
  basis.count = r;
  const { V, MV } = basis;
  const mass: ShiftInvert["multiplyMass"] = operator.multiplyMass;
  let calls = 0;

  // Vectors are taken through the operator once, so that they lie where the wanted modes do.
  const addFiltered = (x: Float64Array, columns: number) => {
    const Mx = new Float64Array(n * columns);
    mass(Mx, x, columns);
    operator.solve(V.subarray(basis.count * n), Mx, columns);
    calls += columns;
    extendBasis(basis, columns, mass);
  };
  const fillBlock = (from: number) => {
    for (let tries = 0; tries < 3 && basis.count < from + blockSize; tries++) {
      const missing = from + blockSize - basis.count;
      addFiltered(Float64Array.from({ length: n * missing }, random), missing);
    }
  };

  if (options.start !== undefined) {
    if (options.start.length !== n * blockSize) {
      throw new RangeError(
        `the start block has ${options.start.length} numbers instead of ${n} x ${blockSize}`,
      );
    }
    addFiltered(options.start, blockSize);
  }
  fillBlock(r);
  // H = V' M OP V for the columns that went through the operator; the upper triangle counts.
  const H = new Float64Array((maxBasis + blockSize) ** 2);
  const ld = maxBasis + blockSize;
  let done = 0;
  let nextLook = options.firstLook;
  let recent = basis.count;
  for (;;) {
    const width = basis.count - r - done;
    const current = (r + done) * n;
    const next = basis.count;
    operator.solve(V.subarray(next * n), MV.subarray(current, current + width * n), width);
    calls += width;
    const step = extendBasis(basis, width, mass, recent);
    recent = 2 * blockSize;
    for (let j = 0; j < width; j++) {
      for (let i = 0; i < done + width; i++) H[i * ld + done + j] = step.C[(r + i) * width + j];
    }
    done += width;
    fillBlock(next);
    const exhausted = basis.count === next;
    const full = done + blockSize > maxBasis;
    const spent = calls >= maxCalls;
    if (!(exhausted || full || spent || done >= nextLook)) continue;

    const ritz = ritzPairs(H, ld, done, step, width);
    const verdict = choose({ theta: ritz.theta, residual: ritz.residual, exhausted });
    if ("take" in verdict) {
      const take = Math.min(done, verdict.take);
      return {
        theta: ritz.theta.slice(0, take),
        residual: ritz.residual.slice(0, take),
        vectors: combineVectors(V.subarray(r * n), done, ritz.S, take, n),
        calls,
      };
    }
    if (exhausted || spent) {
      throw new SolveError(
        `the eigenvalue iteration stopped after ${calls} operator calls with ` +
          `${done} vectors and without the accuracy asked for`,
      );
    }
    nextLook = done + verdict.lookAfter;
    if (full) {
      const kept = condense(basis, r, done, ritz.S);
      nextLook -= done - kept;
      done = kept;
      recent = basis.count; // the new block leans on every vector that was kept
      H.fill(0);
      for (let i = 0; i < done; i++) H[i * ld + i] = ritz.theta[i];
    }
  }
}

interface RitzPairs extends Omit<RitzValues, "exhausted"> {
  /** Eigenvectors of H in the order of theta, column-major (done x done). */
  readonly S: Float64Array;
}

function ritzPairs(
  H: Float64Array,
  ld: number,
  done: number,
  { B, added }: Extension,
  width: number,
): RitzPairs {
  const T = new Float64Array(done * done);
  for (let j = 0; j < done; j++) {
    for (let i = 0; i <= j; i++) {
      T[j * done + i] = T[i * done + j] = H[i * ld + j];
    }
  }
  const { values, vectors } = symmetricEigen(T, done);
  const theta = values.slice().reverse();
  const S = new Float64Array(done * done);
  const residual = new Float64Array(done);
  for (let k = 0; k < done; k++) {
    const s = vectors.subarray((done - 1 - k) * done, (done - k) * done);
    S.set(s, k * done);
    // OP y - theta y = Q B s_last
    let sum = 0;
    for (let i = 0; i < added; i++) {
      let q = 0;
      for (let j = 0; j < width; j++) q += B[i * width + j] * s[done - width + j];
      sum += q * q;
    }
    residual[k] = Math.sqrt(sum);
  }
  return { theta, residual, S };
}

/** The first `columns` combinations V S of `count` vectors (n x columns). */
function combineVectors(
  V: Float64Array,
  count: number,
  S: Float64Array,
  columns: number,
  n: number,
): Float64Array {
  const byRow = new Float64Array(count * columns);
  for (let j = 0; j < columns; j++) {
    for (let i = 0; i < count; i++) byRow[i * columns + j] = S[j * count + i];
  }
  const out = new Float64Array(n * columns);
  product(out, columns, V, count, byRow, n);
  return out;
}

/** Thick restart: half of the vectors, the best Ritz vectors, stay; the next block follows them. */
function condense(basis: MBasis, r: number, done: number, S: Float64Array): number {
  const { n } = basis;
  const keep = done >> 1;
  for (const X of [basis.V, basis.MV]) {
    X.set(combineVectors(X.subarray(r * n), done, S, keep, n), r * n);
    X.copyWithin((r + keep) * n, (r + done) * n, basis.count * n);
  }
  basis.count -= done - keep;
  return keep;
}
