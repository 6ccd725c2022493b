import { describe, expect, test } from "vitest";
import {
  hexagonTorsion,
  orthotropicRectangleTorsion,
  rectangleTorsion,
  torsionAlpha,
  torsionBeta,
  tubeTorsion,
} from "../../src/material/torsion.ts";

/**
 * b/t, beta, alpha: the series of Timoshenko and Goodier, Theory of Elasticity, summed with 25
 * digits by an independent program (multiple-precision arithmetic, exact tail). Ten digits.
 */
// biome-ignore format: table
const SERIES: readonly (readonly [number, number, number])[] = [
  [1,   0.1405770150, 0.2081652599],
  [1.1, 0.1539836482, 0.2139324069],
  [1.2, 0.1661189101, 0.2189335450],
  [1.3, 0.1770592069, 0.2233560954],
  [1.4, 0.1869039975, 0.2273353152],
  [1.5, 0.1957607089, 0.2309691269],
  [1.8, 0.2174311533, 0.2404192418],
  [2,   0.2286816771, 0.2458783420],
  [2.3, 0.2421251530, 0.2531902079],
  [2.4, 0.2458913468, 0.2554333855],
  [2.5, 0.2493650747, 0.2575899416],
  [2.8, 0.2583262987, 0.2635810126],
  [3,   0.2633169310, 0.2672080462],
  [4,   0.2808129583, 0.2816656658],
  [5,   0.2913167542, 0.2915002044],
  [6,   0.2983195073, 0.2983585401],
  [7.5, 0.3053222722, 0.3053260581],
  [8,   0.3070729635, 0.3070746995],
  [10,  0.3123250375, 0.3123251138],
  [20,  0.3228291854, 0.3228291854],
  [100, 0.3312325037, 0.3312325037],
];

/**
 * b/t, beta as printed in a manual page "Rectangular Sections" (torsion constant). Rounded or
 * truncated to three digits; 1.3 and 1.8 are printed one unit low.
 */
// biome-ignore format: table
const PRINTED_BETA: readonly (readonly [number, number])[] = [
  [1, 0.141], [1.1, 0.154], [1.2, 0.166], [1.3, 0.175], [1.4, 0.186], [1.5, 0.196], [1.8, 0.216],
  [2, 0.229], [2.3, 0.242], [2.5, 0.249], [2.8, 0.258], [3, 0.263], [4, 0.281], [5, 0.291],
  [7.5, 0.305], [10, 0.312], [Number.POSITIVE_INFINITY, 0.333],
];

/** b/t, alpha as printed in "Appendix II, It and Wt formulas". */
// biome-ignore format: table
const PRINTED_ALPHA: readonly (readonly [number, number])[] = [
  [1, 0.208], [1.5, 0.231], [2, 0.246], [3, 0.267], [4, 0.282], [6, 0.299],
];

/**
 * b, t (mm), Gxy, Gxz (GPa), G J (N m^2): the stretched series in multiple precision, checked
 * there against a 160 x 160 finite-difference solution of Prandtl's equation to 2e-4.
 */
// biome-ignore format: table
const ORTHOTROPIC: readonly (readonly [number, number, number, number, number])[] = [
  [12, 5, 26.88, 4, 5.23314120],
  [12, 5, 5,     5, 1.84418510],
  [10, 4, 7.17,  4, 1.01623117],
  [6,  6, 26.88, 4, 1.30812502],
];

describe("rectangle", () => {
  test.each(SERIES)("b/t = %d: beta %d, alpha %d", (ratio, beta, alpha) => {
    // Half a unit of the tenth digit.
    expect(Math.abs(torsionBeta(ratio) - beta)).toBeLessThan(0.6e-10);
    expect(Math.abs(torsionAlpha(ratio) - alpha)).toBeLessThan(0.6e-10);
  });

  test("beta at b/t = 1 to twelve digits: 0.140577014955...", () => {
    // Plain summation until the terms are below 1e-18 is a different route to the same number.
    let sum = 0;
    for (let k = 1; k < 8001; k += 2) sum += Math.tanh((k * Math.PI) / 2) / k ** 5;
    expect(torsionBeta(1) - (1 - (192 / Math.PI ** 5) * sum) / 3).toBeCloseTo(0, 13);
  });

  test.each(PRINTED_BETA)("printed table: b/t = %d, beta %d", (ratio, beta) => {
    // The two entries known to be low miss by up to 2.1 units, the others by less than one.
    const units = ratio === 1.3 || ratio === 1.8 ? 2.1 : 1;
    expect(Math.abs(torsionBeta(ratio) - beta)).toBeLessThan(units * 1e-3);
  });

  test.each(PRINTED_ALPHA)("printed table: b/t = %d, alpha %d", (ratio, alpha) => {
    // Truncated digits: one unit in the last place.
    expect(Math.abs(torsionAlpha(ratio) - alpha)).toBeLessThan(1e-3);
  });

  test("the sides may come in either order; thin strips tend to b t^3 / 3", () => {
    expect(rectangleTorsion(5e-3, 12e-3)).toBe(rectangleTorsion(12e-3, 5e-3));
    // b t^3 (1 - 0.63 t/b) / 3 is within 0.007 % from b/t = 4 on.
    expect(rectangleTorsion(40e-3, 1e-3) / ((40e-12 * (1 - 0.63 / 40)) / 3)).toBeCloseTo(1, 4);
  });
});

describe("orthotropic rectangle", () => {
  test.each(ORTHOTROPIC)("%d x %d mm, Gxy %d, Gxz %d GPa: GJ = %d", (b, t, Gxy, Gxz, GJ) => {
    const found = orthotropicRectangleTorsion(b * 1e-3, t * 1e-3, Gxy * 1e9, Gxz * 1e9);
    expect(Math.abs(found - GJ)).toBeLessThan(0.6e-8); // eight decimals
  });

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
