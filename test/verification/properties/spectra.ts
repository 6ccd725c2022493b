/** Eigenvalues of frame files, all of them if need be, and how they are compared. */

import { expect } from "vitest";
import type { Analysis } from "../../../src/analyse.ts";
import { multiply } from "../../../src/linalg/product.ts";
import type { SymmetricSparse } from "../../../src/linalg/sparse.ts";
import { solveFrame } from "../frequencies.ts";

/** More modes than the member frames here have: asks for every one. */
export const ALL = 2000;

/**
 * Eigenvalues that theory has equal, relative. Entries of K are right to 1e-16 of the largest; the
 * highest eigenvalue is up to 1e9 times the lowest elastic one, which could leave 1e-7. What some 700
 * frames like these did leave is 4e-10.
 */
export const ROUNDING = 2e-9;

/** Eigenvalues from the lowest up, (rad/s)^2, the zeros of the rigid-body motions included. */
export function eigenvalues(frame: object, modes: number): number[] {
  return eigenvaluesOf(solveFrame(frame, { modes }));
}

export function eigenvaluesOf({ modes }: Analysis): number[] {
  return [...modes.rigid.map(() => 0), ...modes.lambda];
}

/** Fails unless both lists are as long, with as many zeros, and the rest within the tolerance. */
export function expectSame(
  found: readonly number[],
  expected: readonly number[],
  tolerance = ROUNDING,
): void {
  expect(found.length).toBe(expected.length);
  expected.forEach((e, i) => {
    const error = e === 0 ? Math.abs(found[i]) : Math.abs(found[i] / e - 1);
    expect(error, `eigenvalue ${i + 1}: ${found[i]}, expected ${e}`).toBeLessThanOrEqual(tolerance);
  });
}

/** Fails unless found[i] >= bound[i] wherever both are known, but for rounding. */
export function expectAtLeast(found: readonly number[], bound: readonly number[]): void {
  for (let i = 0; i < Math.min(found.length, bound.length); i++) {
    const message = `eigenvalue ${i + 1}: ${found[i]} against ${bound[i]}`;
    expect(found[i], message).toBeGreaterThanOrEqual(bound[i] * (1 - ROUNDING));
  }
}

/**
 * loose_i <= stiff_i <= loose_(i + rank) for all i that are known: a system before and after it was
 * made stiffer, or after and before it was made heavier, in `rank` ways.
 */
export function expectInterlaced(
  loose: readonly number[],
  stiff: readonly number[],
  rank: number,
): void {
  expectAtLeast(stiff, loose);
  expectAtLeast(loose.slice(rank), stiff);
}

/** Every mode of the frame, rigid-body motions first, on the unknowns that remain. */
export function shapesOf({ modes, system }: Analysis): Float64Array[] {
  const n = system.reduction.n;
  return [...modes.rigid, ...Array.from(modes.lambda, (_, k) => modes.phi.slice(n * k, n * k + n))];
}

/** A x. */
export function times(A: SymmetricSparse, x: Float64Array): Float64Array {
  const out = new Float64Array(x.length);
  multiply(out, A, x);
  return out;
}

export function dot(a: ArrayLike<number>, b: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i] * b[i];
  return sum;
}
