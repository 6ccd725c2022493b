import { describe, expect, test } from "vitest";
import { groundSpringMatrix, springMatrix } from "../../src/element/spring.ts";
import { asymmetry, eigenvalues, form, largest, rigidMotions, times } from "./dense.ts";

const K6 = [3, 5, 7, 11, 13, 17];

describe("springs", () => {
  test("between coincident nodes: k (u2 - u1)^2/2 in each direction, nothing for rigid motion", () => {
    const K = springMatrix(K6);
    expect(asymmetry(K, 12)).toBe(0);
    K6.forEach((k, i) => {
      const u = new Array(12).fill(0);
      [u[i], u[i + 6]] = [0.25, 1];
      expect(form(K, u) / 2).toBeCloseTo((k * 0.75 ** 2) / 2, 14);
    });
    const place = [0.4, -0.3, 0.9];
    for (const r of rigidMotions([place, place])) expect(largest(times(K, r))).toBe(0);
    expect(eigenvalues(K, 12)[0]).toBeGreaterThan(-1e-14 * 34);
  });

  test("to the ground: the stiffnesses on the diagonal", () => {
    const K = groundSpringMatrix(K6);
    K6.forEach((k, i) => {
      const unit = [0, 1, 2, 3, 4, 5].map((j) => +(i === j));
      expect(times(K, unit)).toEqual(unit.map((v) => v * k));
    });
  });
});
