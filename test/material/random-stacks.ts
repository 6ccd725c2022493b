/** Random plies and stacks, and the same stacks turned or mirrored. */

import fc from "fast-check";
import type { LaminateStiffness, Layer } from "../../src/material/lamination.ts";
import type { Ply } from "../../src/material/ply.ts";

export const ply: fc.Arbitrary<Ply> = fc
  .record({
    E1: fc.double({ min: 1e9, max: 250e9, noNaN: true }),
    ratio: fc.double({ min: 0.02, max: 1, noNaN: true }),
    shear: fc.double({ min: 0.02, max: 0.6, noNaN: true }),
    nu: fc.double({ min: -0.5, max: 0.9, noNaN: true }),
    density: fc.double({ min: 900, max: 2500, noNaN: true }),
    thickness: fc.double({ min: 0.05e-3, max: 1e-3, noNaN: true }),
  })
  .map(({ E1, ratio, shear, nu, density, thickness }) => ({
    E1,
    E2: E1 * ratio,
    G12: E1 * shear,
    nu12: nu / Math.sqrt(ratio),
    G13: E1 * shear * 0.8,
    G23: E1 * shear * 0.5,
    density,
    thickness,
    lossFactor: 0.01,
  }));
export const angle = fc.double({ min: -Math.PI, max: Math.PI, noNaN: true });
export const layer: fc.Arbitrary<Layer> = fc
  .record({ ply, angle })
  .map((both) => ({ ...both, thickness: both.ply.thickness }));
export const stack = fc.array(layer, { minLength: 1, maxLength: 8 });

export function turn(list: readonly Layer[], theta: number): readonly Layer[] {
  return list.map((one) => ({ ...one, angle: one.angle + theta }));
}

export function mirrored(list: readonly Layer[]): readonly Layer[] {
  return list.map((one) => ({ ...one, angle: -one.angle }));
}

/** Size of the entries of A, B or D against which rounding is judged. */
export function scaleOf(s: LaminateStiffness, name: "A" | "B" | "D"): number {
  const A = Math.max(s.A[0], s.A[4]);
  return A * s.thickness ** { A: 0, B: 1, D: 2 }[name];
}

/** Fails unless every entry is within an absolute tolerance of the expected one. */
export function expectEqual(found: Float64Array, expected: Float64Array, tolerance: number): void {
  found.forEach((value, i) => {
    if (!(Math.abs(value - expected[i]) <= tolerance)) {
      throw new Error(`entry ${i}: ${value}, expected ${expected[i]} within ${tolerance}`);
    }
  });
}
