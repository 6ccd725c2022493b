import { expect, test } from "vitest";
import { laminateStiffness } from "../../src/material/lamination.ts";
import { layers, T300_5208 } from "./plies.ts";

test("[0/60/-60], three plies: A is isotropic, although B is not zero", () => {
  const { A, B, thickness } = laminateStiffness(layers(T300_5208, "[0/60/-60]"));
  // E of the quasi-isotropic laminates of the same ply, computed from the invariants.
  expect((A[0] - A[1] ** 2 / A[0]) / thickness / 1e9).toBeCloseTo(69.67574092, 7);
  expect(A[4] / A[0]).toBeCloseTo(1, 13);
  expect(A[8] / ((A[0] - A[1]) / 2)).toBeCloseTo(1, 13);
  expect(B[0]).not.toBe(0);
});
