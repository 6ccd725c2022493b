/** Rayleigh quotients, residuals and orthogonality of approximate modes. */

import type { MBasis } from "./m-basis.ts";
import { multiplyBlock } from "./product.ts";
import type { ShiftedFactor } from "./shift.ts";
import { inverseNorms } from "./solve.ts";
import type { SymmetricSparse } from "./sparse.ts";
import { innerProducts, subtractProduct } from "./tall.ts";

export interface MeasuredModes {
  /** Rayleigh quotients phi' K phi, phi' M phi = 1, ascending (size k). */
  readonly lambda: Float64Array;
  /** n x k, column-major */
  readonly phi: Float64Array;
  /** M phi, same layout. */
  readonly massPhi: Float64Array;
  /** Relative residuals in the norm of A^-1, A = K - sigma M (size k); see measure. */
  readonly residual: Float64Array;
}

/**
 * Normalises, sorts and judges the k columns of Y (n x k, column-major; left unchanged).
 *
 * The residual force r = K phi - lambda M phi is weighed by the strain energy it would cause:
 * residual = sqrt(r' A^-1 r) / sqrt(phi' A phi), A = K - sigma M, phi' A phi = lambda - sigma. With
 * A^-1/2 M A^-1/2 in place of the pencil this is the residual of a symmetric eigenproblem, so an
 * eigenvalue lambda* exists with |lambda* - lambda| <= residual (lambda* - sigma) (B. N. Parlett,
 * The Symmetric Eigenvalue Problem, section 4.5, from memory).
 *
 * Why not ||r|| / (||K phi|| + lambda ||M phi||): that adds forces to moments and says nothing about
 * lambda; and rounding alone keeps it higher. Worst of 40 modes, as measured here against there:
 * 6e-13 and 5e-11 (plate, 5400 unknowns), 8e-12 and 2e-9 (50 000), 7e-11 and 6e-10 (frame with
 * softly mounted bodies, 3700), 1e-9 and 2e-8 (19 000).
 *
 * @param factor of A
 * @param rigid M-orthonormal motions that are kept out of Y; requireRigid judges their share of r
 */
export function measure(
  K: SymmetricSparse,
  M: SymmetricSparse,
  { factor, sigma }: ShiftedFactor,
  rigid: MBasis,
  Y: Float64Array,
): MeasuredModes {
  const n = K.pattern.n;
  const count = Y.length / n;
  const KY = new Float64Array(Y.length);
  const MY = new Float64Array(Y.length);
  multiplyBlock(KY, K, Y, count);
  multiplyBlock(MY, M, Y, count);
  const mass = columnProducts(Y, MY, n);
  const quotient = columnProducts(Y, KY, n).map((k, c) => k / mass[c]);
  const order = Array.from(quotient.keys()).sort((a, b) => quotient[a] - quotient[b] || a - b);
  const phi = new Float64Array(Y.length);
  const massPhi = new Float64Array(Y.length);
  const R = new Float64Array(Y.length);
  order.forEach((from, to) => {
    const scale = 1 / Math.sqrt(mass[from]);
    for (let i = from * n, o = to * n; i < (from + 1) * n; i++, o++) {
      phi[o] = Y[i] * scale;
      massPhi[o] = MY[i] * scale;
      R[o] = (KY[i] - quotient[from] * MY[i]) * scale;
    }
  });
  const C = new Float64Array(rigid.count * count);
  innerProducts(C, rigid.V, rigid.count, R, count, n);
  subtractProduct(R, count, rigid.MV, rigid.count, C, n);
  const lambda = Float64Array.from(order, (c) => quotient[c]);
  const residual = inverseNorms(factor, R, count).map((r, c) => r / Math.sqrt(lambda[c] - sigma));
  return { lambda, phi, massPhi, residual };
}

/**
 * The residual that each mode may show for no other reason than that K, M and phi are rounded.
 *
 * Rounding moves eigenvalue k, relative to lambda_k - sigma, by
 * f_k = 2^-53 (|phi|' |K| |phi| + lambda |phi|' |M| |phi|) / (lambda_k - sigma): nothing computed from
 * such matrices can be more accurate. In the residual force of mode k it also stirs the softer
 * modes j, by up to sqrt(f_j f_k).
 */
export function roundingFloor(
  K: SymmetricSparse,
  M: SymmetricSparse,
  sigma: number,
  modes: MeasuredModes,
): Float64Array {
  const f = rounding(K, M, modes).map((e, c) => e / (modes.lambda[c] - sigma));
  const largest = f.reduce((a, x) => Math.max(a, x), 0);
  return f.map((x) => Math.sqrt(x * largest));
}

/** 2^-53 (|phi|' |K| |phi| + |lambda| |phi|' |M| |phi|) for each mode. */
function rounding(
  K: SymmetricSparse,
  M: SymmetricSparse,
  { lambda, phi }: MeasuredModes,
): Float64Array {
  const size = phi.map(Math.abs);
  const product = new Float64Array(phi.length);
  const quotient = (A: SymmetricSparse) => {
    const absolute = { pattern: A.pattern, values: A.values.map(Math.abs) };
    multiplyBlock(product, absolute, size, lambda.length);
    return columnProducts(size, product, K.pattern.n);
  };
  const k = quotient(K);
  const m = quotient(M);
  return lambda.map((l, c) => (Number.EPSILON / 2) * (k[c] + Math.abs(l) * m[c]));
}

/**
 * An estimate of how far each eigenvalue may be off, in its own unit: one rounding of every entry of K
 * and M and one of the quotient, and what the residual leaves open. Relative to lambda - sigma that is the
 * residual; or its square over the distance to the next eigenvalue (of theta = 1 / (lambda - sigma),
 * relative to theta), where this is less (Temple and Kato; Parlett, chapter 10, from memory).
 *
 * It takes K and M as given. Their entries are sums that carry more than one rounding: of the same frame
 * moved by a metre, about 1 % of the eigenvalues differ by up to twice this (measured).
 */
export function uncertainty(
  K: SymmetricSparse,
  M: SymmetricSparse,
  sigma: number,
  modes: MeasuredModes,
): Float64Array {
  const { lambda, residual } = modes;
  const last = lambda.length - 1;
  return rounding(K, M, modes).map((e, c) => {
    const above = lambda[c] - sigma;
    // What lies beyond the last mode is not known here.
    const up = c < last ? (lambda[c + 1] - lambda[c]) / (lambda[c + 1] - sigma) : 0;
    const down = c > 0 ? (lambda[c] - lambda[c - 1]) / (lambda[c - 1] - sigma) : up;
    const gap = Math.min(up, down);
    const r = residual[c];
    return 2 * e + above * (r < gap ? r ** 2 / gap : r);
  });
}

/**
 * max |R' K phi_k| / (lambda_k - sigma) for each mode: the angle by which motions that are not quite
 * rigid bend the mode. What the rounding of K explains does not count.
 */
export function rigidStrain(
  K: SymmetricSparse,
  sigma: number,
  { n, count, V }: MBasis,
  { lambda, phi }: MeasuredModes,
): Float64Array {
  const modes = lambda.length;
  const R = V.subarray(0, n * count);
  const coupling = (A: Float64Array, B: Float64Array, values: Float64Array) => {
    const KA = new Float64Array(n * count);
    multiplyBlock(KA, { pattern: K.pattern, values }, A, count);
    const C = new Float64Array(count * modes);
    innerProducts(C, KA, count, B, modes, n);
    return C;
  };
  const worst = (C: Float64Array) => {
    const out = new Float64Array(modes);
    C.forEach((c, q) => {
      out[q % modes] = Math.max(out[q % modes], Math.abs(c) / (lambda[q % modes] - sigma));
    });
    return out;
  };
  const C = coupling(R, phi, K.values);
  if (worst(C).every((s) => s < 1e-9)) return worst(C);
  const rounding = coupling(R.map(Math.abs), phi.map(Math.abs), K.values.map(Math.abs));
  return worst(C.map((c, q) => (Math.abs(c) <= 32 * Number.EPSILON * rounding[q] ? 0 : c)));
}

/** max |v_i' M v_j - delta_ij| over the rigid basis and the first `count` modes together. */
export function orthogonalityError(
  rigid: MBasis,
  { phi, massPhi }: Pick<MeasuredModes, "phi" | "massPhi">,
  count: number,
): number {
  const { n, count: r } = rigid;
  const own = new Float64Array(count * count);
  const cross = new Float64Array(r * count);
  const among = new Float64Array(r * r);
  innerProducts(own, phi, count, massPhi, count, n);
  innerProducts(cross, rigid.MV, r, phi, count, n);
  innerProducts(among, rigid.V, r, rigid.MV, r, n);
  let worst = 0;
  for (const [G, width] of [
    [own, count],
    [among, r],
  ] as const) {
    for (let q = 0; q < G.length; q++) {
      const target = q % (width + 1) === 0 ? 1 : 0;
      worst = Math.max(worst, Math.abs(G[q] - target));
    }
  }
  return cross.reduce((largest, x) => Math.max(largest, Math.abs(x)), worst);
}

/** x_c' y_c for each column. */
function columnProducts(X: Float64Array, Y: Float64Array, n: number): Float64Array {
  const out = new Float64Array(X.length / n);
  for (let c = 0; c < out.length; c++) {
    for (let i = c * n; i < (c + 1) * n; i++) out[c] += X[i] * Y[i];
  }
  return out;
}

/**
 * Fixes the sign of each column: the component of largest magnitude is positive; among components
 * within 1e-6 of it the first decides, so that roundings cannot flip a symmetric mode.
 */
export function fixSignsInPlace(phi: Float64Array, n: number): void {
  for (let start = 0; start < phi.length; start += n) {
    let largest = 0;
    for (let i = start; i < start + n; i++) largest = Math.max(largest, Math.abs(phi[i]));
    let lead = start;
    while (Math.abs(phi[lead]) < (1 - 1e-6) * largest) lead++;
    if (phi[lead] < 0) for (let i = start; i < start + n; i++) phi[i] = -phi[i];
  }
}
