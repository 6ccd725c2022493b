import { describe, expect, test } from "vitest";
import { groundSpringMatrix, padMatrix, springMatrix } from "../../src/element/spring.ts";
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

describe("pads under a soft-mounted body", () => {
  const r = [0.3, -0.2, -0.1]; // from the body's node to the plate's
  const k = [3, 5, 7];
  const K = padMatrix(k, r);

  test("symmetric, semi-definite, of rank three", () => {
    expect(asymmetry(K, 12)).toBeLessThan(1e-15 * largest(K));
    const values = eigenvalues(K, 12);
    expect(values[0]).toBeGreaterThan(-1e-14 * values[11]);
    expect(values[8]).toBeLessThan(1e-14 * values[11]);
    expect(values[9]).toBeGreaterThan(0.1);
  });

  test("no force when body and plate move as one", () => {
    const body = [0.8, 0.1, 0.4];
    const node = body.map((v, i) => v + r[i]);
    for (const motion of rigidMotions([node, body])) {
      expect(largest(times(K, motion))).toBeLessThan(1e-14 * largest(K));
    }
  });

  test("the plate's own rotation takes no part; the body's pulls the springs at its lever arm", () => {
    const turning = [0, 0, 0, 1, 2, 3, 0, 0, 0, 0, 0, 0];
    expect(largest(times(K, turning))).toBe(0);
    // theta about y moves the body's side of the pad by theta x r = (rz, 0, -rx).
    const rocking = [0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1, 0];
    expect(form(K, rocking)).toBeCloseTo(k[0] * r[2] ** 2 + k[2] * r[0] ** 2, 14);
  });
});
