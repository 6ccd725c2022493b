import { describe, expect, test } from "vitest";
import {
  engineeringConstants,
  laminateCompliance,
  laminateStiffness,
} from "../../src/material/lamination.ts";
import { type Ply, reducedStiffness } from "../../src/material/ply.ts";
import { lastUnit, layers, T300_5208 } from "./plies.ts";

/** Entries 11, 22, 12, 66 (and 16, 26) of a 3 x 3 matrix, in the order the tables print them. */
const PRINTED_ORDER = [0, 4, 1, 8, 2, 5];

/**
 * A/h (GPa) and a h (1/TPa), order 11, 22, 12, 66, of T300/5208.
 * As transcribed in a public unit-test file from "Table 4.7, page 135" (cross-ply) and "Table 4.9"
 * (angle-ply); the book is S. W. Tsai and H. T. Hahn, Introduction to Composite Materials (1980),
 * by memory. The book cuts digits off instead of rounding (A12 = 2.8969 is printed 2.89), so the
 * tolerance is one unit in the last printed digit.
 */
// biome-ignore format: table
const IN_PLANE: readonly (readonly [string, string, string])[] = [
  ["[0/90]s",   "96.08 96.08 2.89 7.17",   "10.41 10.41 -0.314 139.47"],
  ["[0_2/90]s", "124.65 67.5 2.89 7.17",   "8.03 14.82 -0.344 139.47"],
  ["[0_4/90]s", "147.51 44.63 2.89 7.17",  "6.78 22.43 -0.44 139.47"],
  ["[0_8/90]s", "162.75 29.39 2.89 7.17",  "6.15 34.07 -0.606 139.47"],
  ["[+-15]s",   "160.4 11.9 12.75 17.02",  "6.8 91.21 -7.24 58.73"],
  ["[+-30]s",   "109.3 23.6 32.46 36.73",  "15.42 71.36 -21.18 27.22"],
  ["[+-45]s",   "56.6 56.6 42.32 46.59",   "39.91 39.91 -29.81 21.46"],
];

/**
 * D (N m) and d (1/(kN m)), order 11, 22, 12, 66, 16, 26, of 16 plies of T300/5208.
 * Same file, "Figure 5.11, Eq 5.70". Same tolerance, for the same reason.
 */
// biome-ignore format: table
const BENDING: readonly (readonly [string, string, string])[] = [
  ["[0_4/90_4]s",              "106.9 21.18 1.93 4.78 0.0 0.0",         "9.36 47.27 -0.85 209.2 0.0 0.0"],
  ["[0_2/90_2/0_2/90_2]s",     "85.48 42.61 1.93 4.78 0.0 0.0",         "11.7 23.48 -0.53 209.2 0.0 0.0"],
  ["[45_4/-45_4]s",            "37.77 37.77 28.21 31.06 21.433 21.433", "66.03 66.03 -38.56 58.35 -18.95 -18.95"],
  ["[45_2/-45_2/45_2/-45_2]s", "37.77 37.77 28.21 31.06 10.716 10.716", "60.83 60.83 -43.76 36.25 -5.88 -5.88"],
];

describe("T300/5208, published tables", () => {
  test("Q is 181.811139, 2.896924, 10.346159, 7.170000 GPa (computed independently)", () => {
    const Q = reducedStiffness(T300_5208);
    expect([Q[0], Q[1], Q[4], Q[8]].map((value) => (value / 1e9).toFixed(6))).toEqual([
      "181.811139",
      "2.896924",
      "10.346159",
      "7.170000",
    ]);
  });

  test.each(IN_PLANE)("%s: A/h %s GPa, a h %s 1/TPa", (stack, A, a) => {
    const s = laminateStiffness(layers(T300_5208, stack));
    expectPrinted(s.A, A, 1 / s.thickness / 1e9);
    expectPrinted(laminateCompliance(s).a, a, s.thickness * 1e12);
  });

  test.each(BENDING)("%s: D %s N m, d %s 1/(kN m)", (stack, D, d) => {
    const s = laminateStiffness(layers(T300_5208, stack));
    expect(s.thickness).toBeCloseTo(2e-3, 15);
    expectPrinted(s.D, D, 1);
    expectPrinted(laminateCompliance(s).d, d, 1e3);
  });
});

describe("quasi-isotropic T300/5208", () => {
  /** E 69.68, nu 0.296, G 26.88 GPa: worked example in Kaw, quoted second-hand. */
  test.each(["[0/45/-45/90]s", "[0/60/-60]s", "[0/+-45/90]s"])("%s in its plane", (stack) => {
    const c = engineeringConstants(laminateStiffness(layers(T300_5208, stack)));
    expect((c.Ex / 1e9).toFixed(2)).toBe("69.68");
    expect((c.Ey / 1e9).toFixed(2)).toBe("69.68");
    expect((c.Gxy / 1e9).toFixed(2)).toBe("26.88");
    expect(c.nuxy.toFixed(3)).toBe("0.296");
  });

  test("the invariants U1, U4, U5 are 76.368218, 22.607356, 26.880431 GPa (computed independently)", () => {
    const { A, thickness } = laminateStiffness(layers(T300_5208, "[0/45/-45/90]s"));
    expect(A[0] / thickness / 1e9).toBeCloseTo(76.368218, 6);
    expect(A[1] / thickness / 1e9).toBeCloseTo(22.607356, 6);
    expect(A[8] / thickness / 1e9).toBeCloseTo(26.880431, 6);
  });

  test("[0/60/-60], three plies: A is isotropic, although B is not zero", () => {
    const { A, B } = laminateStiffness(layers(T300_5208, "[0/60/-60]"));
    const h = 3 * T300_5208.thickness;
    expect((A[0] - A[1] ** 2 / A[0]) / h / 1e9).toBeCloseTo(69.67574092, 7);
    expect(A[4] / A[0]).toBeCloseTo(1, 13);
    expect(A[8] / ((A[0] - A[1]) / 2)).toBeCloseTo(1, 13);
    expect(B[0]).not.toBe(0);
  });

  test("+-45 and 0/90 shear moduli, second-hand: 46.59 and 7.17 GPa", () => {
    const shear = (stack: string) =>
      (engineeringConstants(laminateStiffness(layers(T300_5208, stack))).Gxy / 1e9).toFixed(2);
    expect(shear("[+-45]2s")).toBe("46.59");
    expect(shear("[0/90]2s")).toBe("7.17");
  });

  test("isotropic in its plane only: Efx 116.55209, Efy 26.98119 GPa (computed independently)", () => {
    const c = engineeringConstants(laminateStiffness(layers(T300_5208, "[0/45/-45/90]s")));
    expect(c.Efx / 1e9).toBeCloseTo(116.55209, 5);
    expect(c.Efy / 1e9).toBeCloseTo(26.98119, 5);
  });
});

describe("[0/30/-45], three plies of 5 mm: Kaw, Examples 4.2 and 4.3 (published, from memory)", () => {
  const s = laminateStiffness(layers(T300_5208, "[0/30/-45]", 5e-3));

  // biome-ignore format: matrix layout
  test.each([
    ["A", s.A, "1.739e+9 3.884e+8 5.663e+7", "3.884e+8 4.533e+8 -1.141e+8", "5.663e+7 -1.141e+8 4.525e+8"],
    ["B", s.B, "-3.129e+6 9.855e+5 -1.072e+6", "9.855e+5 1.158e+6 -1.072e+6", "-1.072e+6 -1.072e+6 9.855e+5"],
    ["D", s.D, "3.343e+4 6.461e+3 -5.240e+3", "6.461e+3 9.320e+3 -5.596e+3", "-5.240e+3 -5.596e+3 7.663e+3"],
  ] as const)("%s to the four printed digits", (_, found, ...rows) => {
    expect(Array.from(found, (value) => value.toExponential(3)).join(" ")).toBe(rows.join(" "));
  });
});

/** P. T. R. Mendonca, Materiais Compostos e Estruturas-sanduiche (2005), p. 201, second-hand. */
test("[45/0/45] of 3, 6, 3 mm: Mendonca, p. 201", () => {
  const ply: Ply = {
    ...T300_5208,
    E1: 54.87e9,
    E2: 18.32e9,
    G12: 8.9e9,
    nu12: 0.25,
  };
  const stack = [3e-3, 6e-3, 3e-3].map((thickness, i) => ({
    ply,
    angle: i === 1 ? 0 : Math.PI / 4,
    thickness,
  }));
  const s = laminateStiffness(stack);
  // N/mm as printed; the digits shown are 14, the plies' constants are exact.
  const A11 = 515794.00930665;
  const A12 = 100823.25453699;
  const A22 = 291820.23545835;
  const A16 = 55993.44346208;
  const A66 = 151491.93392275;
  const A = [A11, A12, A16, A12, A22, A16, A16, A16, A66];
  s.A.forEach((value, i) => {
    expect(value / 1e3 / A[i]).toBeCloseTo(1, 12);
  });
  expect(Array.from(s.B)).toEqual(new Array(9).fill(0));
  // Computed independently: D in N m, moduli in GPa.
  // biome-ignore format: matrix layout
  const D = [
    4779.419, 1612.106, 1175.862,
    1612.106, 4107.497, 1175.862,
    1175.862, 1175.862, 2220.131,
  ];
  s.D.forEach((value, i) => {
    expect(value).toBeCloseTo(D[i], 3);
  });
  const c = engineeringConstants(s);
  expect(c.Ex / 1e9).toBeCloseTo(39.28479, 6);
  expect(c.Ey / 1e9).toBeCloseTo(21.513033, 6);
  expect(c.Efx / 1e9).toBeCloseTo(26.915033, 6);
});

/**
 * T300/5208, computed by an independent program: stack, ply thickness (mm), A11 (MN/m), D11, D12,
 * D22, D16, D26, D66 (N m), Efx, Efy, Gfxy (GPa). Six to seven digits.
 */
// biome-ignore format: table
const COMPLETE: readonly (readonly [string, number, number, readonly number[], readonly number[]])[] = [
  ["[0/90]s",        0.25,  96.07865, [13.36483, 0.2414104, 2.648273, 0, 0, 0.5975],                   [160.11394, 31.726954, 7.17]],
  ["[0/45/-45/90]s", 0.125, 76.36822, [10.6907, 1.575971, 2.653283, 0.6697851, 0.6697851, 1.93206],    [116.552087, 26.981188, 21.064806]],
  ["[45/-45/0/90]s", 0.25,  152.7364, [46.41521, 24.92679, 35.69865, 8.037421, 8.037421, 27.7755],     [43.175128, 32.680797, 38.644733]],
];

test.each(COMPLETE)("%s of %d mm plies", (stack, mm, A11, D, moduli) => {
  const s = laminateStiffness(layers(T300_5208, stack, mm * 1e-3));
  expect(s.A[0] / 1e6 / A11).toBeCloseTo(1, 6);
  [0, 1, 4, 2, 5, 8].forEach((entry, i) => {
    expect(Math.abs(s.D[entry] - D[i])).toBeLessThan(1e-6 * D[0]);
  });
  const c = engineeringConstants(s);
  [c.Efx, c.Efy, c.Gfxy].forEach((value, i) => {
    expect(value / 1e9 / moduli[i]).toBeCloseTo(1, 7);
  });
});

/** Every entry within one unit in its last printed digit. */
function expectPrinted(found: Float64Array, printed: string, factor: number): void {
  printed.split(" ").forEach((text, i) => {
    const value = found[PRINTED_ORDER[i]] * factor;
    expect(Math.abs(value - Number(text)), `${value} against printed ${text}`).toBeLessThan(
      lastUnit(text),
    );
  });
}
