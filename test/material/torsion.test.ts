import { describe, expect, test } from "vitest";
import {
  hexagonTorsion,
  orthotropicRectangleTorsion,
  rectangleTorsion,
  torsionBeta,
  tubeTorsion,
} from "../../src/material/torsion.ts";

describe("rectangle", () => {
  test("beta at b/t = 1 to twelve digits: 0.140577014955...", () => {
    // Plain summation until the terms are below 1e-18 is a different route to the same number.
    let sum = 0;
    for (let k = 1; k < 8001; k += 2) sum += Math.tanh((k * Math.PI) / 2) / k ** 5;
    expect(torsionBeta(1) - (1 - (192 / Math.PI ** 5) * sum) / 3).toBeCloseTo(0, 13);
  });

  test("the sides may come in either order; thin strips tend to b t^3 / 3", () => {
    expect(rectangleTorsion(5e-3, 12e-3)).toBe(rectangleTorsion(12e-3, 5e-3));
    // b t^3 (1 - 0.63 t/b) / 3 is within 0.007 % from b/t = 4 on.
    expect(rectangleTorsion(40e-3, 1e-3) / ((40e-12 * (1 - 0.63 / 40)) / 3)).toBeCloseTo(1, 4);
  });
});

describe("orthotropic rectangle", () => {
  test("exchanging the sides with the moduli changes nothing", () => {
    const GJ = orthotropicRectangleTorsion(12e-3, 5e-3, 20e9, 3e9);
    expect(orthotropicRectangleTorsion(5e-3, 12e-3, 3e9, 20e9) / GJ).toBeCloseTo(1, 13);
  });

  test("limits: thin strip by Gxy, tall strip by Gxz", () => {
    expect(orthotropicRectangleTorsion(1, 1e-4, 5e9, 3e9) / ((5e9 * 1e-12) / 3)).toBeCloseTo(1, 3);
    expect(orthotropicRectangleTorsion(1e-4, 1, 5e9, 3e9) / ((3e9 * 1e-12) / 3)).toBeCloseTo(1, 3);
  });
});

describe("round sections", () => {
  test("J of a rod is pi d^4 / 32, of a tube the difference", () => {
    expect(tubeTorsion(2, 0)).toBeCloseTo(Math.PI / 2, 14);
    expect(tubeTorsion(5e-3, 3e-3)).toBe((Math.PI / 32) * (5e-3 ** 4 - 3e-3 ** 4));
  });
});

describe("hexagon", () => {
  test("agrees with a finite-element solution of Prandtl's equation", () => {
    // Linear triangles on the natural lattice; their J is a lower bound (Ritz) of order h^2.
    const coarse = latticeHexagonJ(12);
    const fine = latticeHexagonJ(24);
    const exact = hexagonTorsion(Math.sqrt(3)); // side 1
    expect(coarse).toBeLessThan(fine);
    expect(fine).toBeLessThan(exact);
    const order = Math.log2((exact - coarse) / (exact - fine));
    expect(order).toBeGreaterThan(1.9);
    expect(order).toBeLessThan(2.1);
    const extrapolated = fine + (fine - coarse) / 3;
    expect(Math.abs(extrapolated / exact - 1)).toBeLessThan(2e-4);
  });

  test("lies between its inscribed and circumscribed circles, and a bore takes its rod away", () => {
    const solid = hexagonTorsion(5e-3);
    expect(solid).toBeGreaterThan(tubeTorsion(5e-3, 0));
    expect(solid).toBeLessThan(tubeTorsion((2 / Math.sqrt(3)) * 5e-3, 0));
    expect(hexagonTorsion(5e-3, 3e-3)).toBe(solid - tubeTorsion(3e-3, 0));
  });
});

/**
 * J of a hexagon of side 1 from linear finite elements on a lattice of n edges per side:
 * sum_j (phi - phi_j) / sqrt(3) = 2 (sqrt(3)/2) h^2 at every inner node, J = 2 int phi.
 */
function latticeHexagonJ(n: number): number {
  const h = 1 / n;
  const size = 2 * n + 1;
  const phi = new Float64Array(size * size); // axial coordinates q, r from -n to n
  const load = 3 * h * h; // right side times sqrt(3)
  const relax = 2 / (1 + Math.sin(Math.PI / (2 * n)));
  for (let sweep = 0; sweep < 12 * n; sweep++) {
    for (let q = 1 - n; q < n; q++) {
      for (let r = Math.max(1 - n, 1 - n - q); r <= Math.min(n - 1, n - 1 - q); r++) {
        const i = (q + n) * size + r + n;
        const around =
          phi[i + 1] +
          phi[i - 1] +
          phi[i + size] +
          phi[i - size] +
          phi[i + size - 1] +
          phi[i - size + 1];
        phi[i] += relax * ((around + load) / 6 - phi[i]);
      }
    }
  }
  const total = phi.reduce((sum, value) => sum + value, 0);
  return 2 * total * (Math.sqrt(3) / 2) * h * h;
}
