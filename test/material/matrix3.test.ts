import { describe, expect, test } from "vitest";
import { SolveError } from "../../src/errors.ts";
import { bilinear3, inverse3, multiply3, transpose3 } from "../../src/material/matrix3.ts";

// biome-ignore format: matrix layout
const M = Float64Array.of(
  2, -1,  4,
  0,  3,  5,
  1,  7, -2,
);

describe("3 x 3 matrices", () => {
  test("inverse times matrix is the identity, from both sides", () => {
    const identity = [1, 0, 0, 0, 1, 0, 0, 0, 1];
    multiply3(inverse3(M), M).forEach((value, i) => {
      expect(value).toBeCloseTo(identity[i], 14);
    });
    multiply3(M, inverse3(M)).forEach((value, i) => {
      expect(value).toBeCloseTo(identity[i], 14);
    });
  });

  test("a singular matrix is refused with its determinant", () => {
    const singular = Float64Array.of(1, 2, 3, 2, 4, 6, 0, 0, 1);
    expect(() => inverse3(singular)).toThrow(SolveError);
    expect(() => inverse3(singular)).toThrow(/cannot be inverted \(determinant 0\)/);
  });

  test("bilinear form x' M y and its transpose", () => {
    const x = Float64Array.of(1, 2, 3);
    const y = Float64Array.of(-1, 0, 2);
    // M y = (6, 10, -5); x' M y = 6 + 20 - 15
    expect(bilinear3(x, M, y)).toBe(11);
    expect(bilinear3(y, transpose3(M), x)).toBe(11);
  });
});
