/** The sample frames: masses from the drawing and from the matrices, and no force in rigid motion. */

import { describe, expect, test } from "vitest";
import { readFrame } from "../../src/frame/read.ts";
import { multiply } from "../../src/linalg/product.ts";
import { assemble } from "../../src/matrices/assemble.ts";
import { massDifference, massFromDrawing, massFromMatrices } from "../../src/matrices/mass.ts";
import { restrict } from "../../src/matrices/reduction.ts";
import { rigidMotions } from "../../src/matrices/rigid.ts";
import { buildMesh } from "../../src/mesh/build.ts";
import { buildModel } from "../../src/model/build.ts";
import { largest } from "../element/dense.ts";

describe.each(["three", "five", "seven", "ten"])("%s-inch sample", (size) => {
  const model = buildModel(readFrame(`frames/${size}-inch.jsonc`));
  const mesh = buildMesh(model);
  const system = assemble(mesh, model);
  const drawn = massFromDrawing(model, mesh);

  test("R'MR equals mass, centre of gravity and inertia of the drawing", () => {
    const assembled = massFromMatrices(system, mesh, drawn.cg);
    // Exact by construction; sums over thousands of cells and ties leave 1e-12.
    expect(massDifference(drawn, assembled)).toBeLessThan(1e-9);
  });

  test("the same about any other point", () => {
    const elsewhere = massFromMatrices(system, mesh, [0.1, -0.2, 0.3]);
    expect(massDifference(drawn, elsewhere)).toBeLessThan(1e-9);
  });

  test("the parts' masses sum to the whole", () => {
    const sum = drawn.parts.reduce((s, p) => s + p.mass, 0);
    expect(sum / drawn.mass).toBeCloseTo(1, 13);
    expect(drawn.parts.every((p) => p.mass >= 0)).toBe(true);
  });

  test("K R = 0", () => {
    for (const R of rigidMotions(mesh, drawn.cg)) {
      const q = restrict(system.reduction, R);
      const f = new Float64Array(q.length);
      multiply(f, system.K, q);
      expect(largest(f) / (largest(system.K.values) * largest(q))).toBeLessThan(1e-12);
    }
  });
});
