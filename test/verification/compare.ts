/** Relative comparison of lists of numbers, with a message that names the worst of them. */

import { expect } from "vitest";

/** The largest |actual / expected - 1|. */
export function worstError(actual: readonly number[], expected: readonly number[]): number {
  return Math.max(...expected.map((e, i) => Math.abs(actual[i] / e - 1)));
}

/** Fails unless every value is within the relative tolerance of its expected one. */
export function expectClose(
  actual: readonly number[],
  expected: readonly number[],
  tolerance: number,
): void {
  expect(expected.length).toBeGreaterThan(0);
  expect(actual.length).toBeGreaterThanOrEqual(expected.length);
  expected.forEach((e, i) => {
    const error = Math.abs(actual[i] / e - 1);
    const message =
      `value ${i + 1}: ${actual[i]}, expected ${e}, ` +
      `relative error ${error.toExponential(2)}, tolerance ${tolerance}`;
    expect(error, message).toBeLessThanOrEqual(tolerance);
  });
}
