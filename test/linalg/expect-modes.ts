/** What every set of modes must satisfy, whatever the structure. */

import { expect } from "vitest";
import type { ModeSet } from "../../src/linalg/modes.ts";
import { multiply } from "../../src/linalg/product.ts";
import type { SymmetricSparse } from "../../src/linalg/sparse.ts";

/** a' b, apart from the program's own. */
export function dot(a: Float64Array, b: Float64Array): number {
  return a.reduce((sum, x, i) => sum + x * b[i], 0);
}

/**
 * K phi = lambda M phi, Phi' M Phi = I, Phi' M R = 0, ascending, signs by the rule, evidence
 * consistent. Everything is computed anew from K and M.
 *
 * The residual here is the plain one, ||K phi - lambda M phi|| / (||K phi|| + lambda ||M phi||). It
 * may be a few hundred times what one rounding of phi explains: 2^-53 || |K| 1 || max |phi_i|.
 */
export function expectModes(
  K: SymmetricSparse,
  M: SymmetricSparse,
  { lambda, phi, evidence }: ModeSet,
  rigid: readonly Float64Array[] = [],
  tolerance = 1e-10,
): void {
  const n = K.pattern.n;
  const column = (k: number) => phi.subarray(k * n, (k + 1) * n);
  expect(phi.length).toBe(n * lambda.length);
  const absK = { pattern: K.pattern, values: K.values.map(Math.abs) };
  const Ky = new Float64Array(n);
  const My = new Float64Array(n);
  const rounding = new Float64Array(n);
  for (let k = 0; k < lambda.length; k++) {
    if (k > 0) expect(lambda[k]).toBeGreaterThanOrEqual(lambda[k - 1]);
    const y = column(k);
    const largest = y.reduce((a, x) => Math.max(a, Math.abs(x)), 0);
    multiply(Ky, K, y);
    multiply(My, M, y);
    multiply(rounding, absK, new Float64Array(n).fill(largest));
    const r = Ky.map((x, i) => x - lambda[k] * My[i]);
    const scale = Math.sqrt(dot(Ky, Ky)) + lambda[k] * Math.sqrt(dot(My, My));
    const floor = 2 ** -53 * Math.sqrt(dot(rounding, rounding));
    expect(Math.sqrt(dot(r, r)), `residual of mode ${k + 1}`).toBeLessThan(
      10 * tolerance * scale + 200 * floor,
    );
    for (let j = 0; j < lambda.length; j++) {
      expect(Math.abs(dot(column(j), My) - (j === k ? 1 : 0))).toBeLessThan(1e-11);
    }
    for (const r of rigid) {
      multiply(Ky, M, r);
      expect(Math.abs(dot(r, My)) / Math.sqrt(dot(r, Ky))).toBeLessThan(1e-11);
    }
    expect(y.find((x) => Math.abs(x) >= (1 - 1e-6) * largest)).toBeGreaterThan(0);
  }
  expect(evidence.countedBelow).toBe(evidence.expectedBelow);
  expect(evidence.expectedBelow).toBeGreaterThanOrEqual(rigid.length + lambda.length);
  expect(evidence.residuals.length).toBe(lambda.length);
  expect(evidence.maxResidual).toBeLessThan(tolerance);
  expect(evidence.orthogonality).toBeLessThan(1e-11);
  expect(evidence.checkShift).toBeGreaterThan(lambda[lambda.length - 1]);
}
