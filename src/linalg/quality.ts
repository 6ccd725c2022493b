/** Rayleigh quotients, residuals and orthogonality of approximate modes. */

import type { MBasis } from "./m-basis.ts";
import { multiplyBlock } from "./product.ts";
import type { SymmetricSparse } from "./sparse.ts";
import { innerProducts } from "./tall.ts";

export interface MeasuredModes {
  /** Rayleigh quotients phi' K phi, phi' M phi = 1, ascending (size k). */
  readonly lambda: Float64Array;
  /** n x k, column-major */
  readonly phi: Float64Array;
  /** M phi, same layout. */
  readonly massPhi: Float64Array;
  /** ||K phi - lambda M phi|| / (||K phi|| + (lambda - sigma) ||M phi||), size k: the usual relative
   * residual, with the shift as a scale for eigenvalues that are zero. */
  readonly residual: Float64Array;
  /** The denominators above. */
  readonly scale: Float64Array;
}

/** Normalises, sorts and judges the k columns of Y (n x k, column-major; left unchanged). */
export function measure(
  K: SymmetricSparse,
  M: SymmetricSparse,
  sigma: number,
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
  const residual = new Float64Array(count);
  const scale = new Float64Array(count);
  order.forEach((from, to) => {
    const factor = 1 / Math.sqrt(mass[from]);
    const lambda = quotient[from];
    let difference = 0;
    let k = 0;
    let m = 0;
    for (let i = 0; i < n; i++) {
      const Ky = KY[from * n + i] * factor;
      const My = MY[from * n + i] * factor;
      phi[to * n + i] = Y[from * n + i] * factor;
      massPhi[to * n + i] = My;
      difference += (Ky - lambda * My) ** 2;
      k += Ky * Ky;
      m += My * My;
    }
    scale[to] = Math.sqrt(k) + (lambda - sigma) * Math.sqrt(m);
    residual[to] = Math.sqrt(difference) / scale[to];
  });
  return { lambda: Float64Array.from(order, (c) => quotient[c]), phi, massPhi, residual, scale };
}

/**
 * The residual that each mode has for no other reason than that phi and K are rounded to doubles:
 * 2^-53 || |K| |phi| + lambda |M| |phi| ||, on the scale of `residual`. A fine mesh, whose beam
 * bends by small differences of large terms, has 1e-11 to 1e-9 here.
 */
export function roundingFloor(
  K: SymmetricSparse,
  M: SymmetricSparse,
  { lambda, phi, scale }: MeasuredModes,
): Float64Array {
  const n = K.pattern.n;
  const size = phi.map(Math.abs);
  const KY = new Float64Array(phi.length);
  const MY = new Float64Array(phi.length);
  multiplyBlock(KY, { pattern: K.pattern, values: K.values.map(Math.abs) }, size, lambda.length);
  multiplyBlock(MY, { pattern: M.pattern, values: M.values.map(Math.abs) }, size, lambda.length);
  return lambda.map((l, c) => {
    let sum = 0;
    for (let i = c * n; i < (c + 1) * n; i++) sum += (KY[i] + Math.abs(l) * MY[i]) ** 2;
    return (Number.EPSILON / 2) * (Math.sqrt(sum) / scale[c]);
  });
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
