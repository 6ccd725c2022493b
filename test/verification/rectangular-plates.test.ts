/**
 * Plates whose cells are not square, and a plate that is stiffer one way: tests the parts of the cell
 * that a square isotropic plate cannot see.
 *
 * Free isotropic rectangles, nu = 0.3: converged thin-plate values (Ritz, 24 x 24 Legendre products).
 *
 * Simply supported orthotropic plate: J. E. Ashton & J. M. Whitney, Theory of Laminated Plates (from
 * memory), with the rotary inertia rho h^3/12 that the program's plates have:
 *
 *   omega^2 (1 + h^2/12 (p^2 + q^2)) = (D11 p^4 + 2 (D12 + 2 D66) p^2 q^2 + D22 q^4)/(rho h),
 *   p = m pi/a, q = n pi/b
 */

import { describe, expect, test } from "vitest";
import { expectClose, worstError } from "./compare.ts";
import { frequencies } from "./frequencies.ts";
import {
  outOfPlaneOnly,
  plateParameter,
  type Sheet,
  STEEL,
  sheetFrame,
  simplySupported,
} from "./sheet.ts";

describe("free rectangular plates", () => {
  test.each([
    {
      ratio: "2/3",
      b: 15,
      lambda: [8.93135, 9.51701, 20.59865, 22.1822, 25.65043, 29.79099],
    },
    {
      ratio: "1.5",
      b: 10 / 1.5,
      lambda: [20.09554, 21.41326, 46.34697, 49.90994, 57.71348, 67.02974],
    },
    {
      ratio: "2.5",
      b: 4,
      lambda: [21.45394, 32.989, 59.62873, 70.80316, 116.42083, 118.26814],
    },
  ])("a/b = $ratio at 20 cells along x", ({ b, lambda }) => {
    const sheet: Sheet = { a: 10, b, thickness: "50 mm", material: STEEL };
    const found = frequencies(sheetFrame(sheet, 20, {}), { modes: 6 });
    expectClose(
      found.map((f) => plateParameter(f, sheet.a)),
      lambda,
      0.01,
    );
  });

  test("a strip four cells across: bending and twisting within 1 %", () => {
    // As coarse as the narrow plates of a frame: modes 1 and 3 bend, mode 2 twists.
    const sheet: Sheet = { a: 10, b: 4, thickness: "50 mm", material: STEEL };
    const found = frequencies(sheetFrame(sheet, 10, {}), { modes: 3 });
    expectClose(
      found.map((f) => plateParameter(f, sheet.a)),
      [21.45394, 32.989, 59.62873],
      0.01,
    );
  });

  test("turned by a quarter, the plate keeps its frequencies", () => {
    const lying: Sheet = { a: 10, b: 4, thickness: "50 mm", material: STEEL };
    const upright: Sheet = { ...lying, a: 4, b: 10 };
    const one = frequencies(sheetFrame(lying, 10, {}), { modes: 10 });
    const other = frequencies(sheetFrame(upright, 4, {}), { modes: 10 });
    expectClose(one, other, 1e-9);
  });
});

describe("simply supported cross-ply plate", () => {
  // T300/5208, [0_4/90_4]s, 2 mm, 0.2 m x 0.2 m, rho = 1600 kg/m^3; D in N m as computed from the
  // plies and printed in S. W. Tsai & H. T. Hahn, Introduction to Composite Materials, to 0.1 %.
  const [D11, D22, D12, D66] = [106.9187, 21.1862, 1.9313, 4.78];
  const SHEET: Sheet = {
    a: 0.2,
    b: 0.2,
    thickness: "2 mm",
    material: { kind: "laminate", stack: "[0_4/90_4]s", ply: "tape" },
    plies: {
      tape: {
        E1: "181 GPa",
        E2: "10.3 GPa",
        G12: "7.17 GPa",
        nu12: 0.28,
        density: "1600 kg/m^3",
        thickness: "0.125 mm",
      },
    },
  };

  function closedForm(m: number, n: number): number {
    const [p, q] = [(m * Math.PI) / SHEET.a, (n * Math.PI) / SHEET.b];
    const h = 2e-3;
    const bending = D11 * p ** 4 + 2 * (D12 + 2 * D66) * p * p * q * q + D22 * q ** 4;
    const mass = 1600 * h * (1 + (h * h * (p * p + q * q)) / 12);
    return Math.sqrt(bending / mass) / (2 * Math.PI);
  }

  const MODES = [
    [1, 1],
    [1, 2],
    [2, 1],
    [1, 3],
    [2, 2],
    [2, 3],
  ] as const;
  const exact = MODES.map(([m, n]) => closedForm(m, n));
  const supports = { ...outOfPlaneOnly(SHEET), ...simplySupported(SHEET) };
  const solved = (cells: number) => frequencies(sheetFrame(SHEET, cells, supports), { modes: 6 });

  test("the closed form without rotary inertia, as tabulated", () => {
    // 269.83555 ... Hz without rotary inertia, which takes off (k h)^2/24: 8e-5 to 5e-4.
    const tabulated = [269.83555, 509.10425, 937.50887, 989.04547, 1079.3422, 1431.83031];
    expectClose(exact, tabulated, 6e-4);
    expect(exact.every((f, i) => f < tabulated[i])).toBe(true);
  });

  test("converges to the closed form", () => {
    const [coarse, fine] = [12, 24].map(solved);
    expectClose(fine, exact, 3e-3);
    expect(worstError(fine, exact)).toBeLessThan(worstError(coarse, exact) / 2);
  });
});
