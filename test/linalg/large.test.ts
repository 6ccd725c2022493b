/** Fifty thousand unknowns: masses and springs in closed form, and a plate of beams. */

import { describe, expect, test } from "vitest";
import { lowestModes, type ModeSet } from "../../src/linalg/modes.ts";
import { plateStack } from "./beam-grid.ts";
import { chainEigenvalue, squareGrid } from "./chains.ts";

function expectProven({ evidence }: ModeSet, residual: number): void {
  expect(evidence.countedBelow).toBe(evidence.expectedBelow);
  expect(evidence.maxResidual).toBeLessThan(residual);
  expect(evidence.orthogonality).toBeLessThan(1e-12);
  expect(evidence.factorError).toBeLessThan(1e-14);
}

/** Most memory that this process has had at any time, bytes. */
const peakMemory = () => process.resourceUsage().maxRSS * 1024;

describe("50 thousand unknowns", () => {
  test("a square grid of 224 x 224 masses, in pairs: the closed form", () => {
    const side = 224;
    const { K, M } = squareGrid(side);
    const modes = lowestModes(K, M, { count: 16 });
    expectProven(modes, 1e-12);
    const single = Array.from({ length: 12 }, (_, i) =>
      chainEigenvalue(side, "fixed-fixed", i + 1),
    );
    const exact = single.flatMap((a) => single.map((b) => a + b)).sort((a, b) => a - b);
    modes.lambda.forEach((l, k) => {
      expect(Math.abs(l / exact[k] - 1)).toBeLessThan(5e-13);
    });
  });

  test("a square plate of 92 x 92 nodes: proved, in pairs, and as coarser plates let expect", () => {
    const count = 9;
    const frequencies = (side: number) => {
      const size = { length: 0.3, width: 0.3, thickness: 0.003 };
      const { K, M, n, rigid } = plateStack({ nx: side, ny: side, ...size });
      const modes = lowestModes(K, M, { count, deflate: rigid });
      return { n, modes, f: modes.lambda.map(Math.sqrt) };
    };
    const fine = frequencies(92);
    expect(fine.n).toBe(50784);
    expectProven(fine.modes, 4e-11);
    const { lambda, evidence } = fine.modes;
    evidence.uncertainty.forEach((u, k) => {
      expect(u / lambda[k]).toBeLessThan(2e-8);
    });
    for (const k of [3, 5]) {
      expect(Math.abs(lambda[k + 1] - lambda[k])).toBeLessThan(2 * evidence.uncertainty[k]);
    }
    // Edge beams weigh as much as inner ones, so the error falls with the size of the cells, h.
    const coarse = [frequencies(12).f, frequencies(23).f];
    const h = [12, 23, 92].map((side) => 1 / (side - 1));
    fine.f.forEach((f, k) => {
      const slope = (coarse[1][k] - coarse[0][k]) / (h[1] - h[0]);
      expect(Math.abs((coarse[1][k] + slope * (h[2] - h[1])) / f - 1)).toBeLessThan(0.01);
      expect(f).toBeGreaterThan(coarse[1][k]);
    });
  });

  test("in less than 1 GB", () => {
    expect(peakMemory()).toBeLessThan(1e9);
  });
});
