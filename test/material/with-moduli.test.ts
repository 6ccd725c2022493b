import { describe, expect, test } from "vitest";
import { laminateCompliance, transverseShear } from "../../src/material/lamination.ts";
import { libraryMaterial } from "../../src/material/library-materials.ts";
import { libraryPly } from "../../src/material/library-plies.ts";
import {
  laminateFromStack,
  layersOf,
  type Material,
  plateStiffness,
} from "../../src/material/material.ts";
import { stripStiffness } from "../../src/material/strip.ts";
import { withModuli } from "../../src/material/with-moduli.ts";

const MATERIALS: [string, Material][] = [
  ["a metal", libraryMaterial("aluminium-7075-t651").material],
  ["a measured plate", libraryMaterial("carbon-plate-0-90").material],
  ["a stack of one ply", laminateFromStack(libraryPly("carbon-fabric").ply, "[0/45]3s")],
  [
    "an unsymmetric stack of two plies",
    laminateFromStack([libraryPly("carbon-fabric").ply, libraryPly("carbon-ud").ply], "[0/30]"),
  ],
];

describe.each(MATERIALS)("%s with its moduli 8 %% lower", (_name, material) => {
  const factor = 0.92;
  const soft = withModuli(material, factor);

  test("A, B and D are lower by as much, density and loss factor stay", () => {
    const [was, is] = [material, soft].map((one) => plateStiffness(one, 4e-3, 0.3));
    for (const key of ["A", "B", "D"] as const) {
      const size = Math.max(...was[key].map(Math.abs), 1e-30);
      was[key].forEach((value, i) => {
        expect((is[key][i] - factor * value) / size).toBeCloseTo(0, 12);
      });
    }
    expect(is.density).toBe(was.density);
    expect(is.lossFactor).toBeCloseTo(was.lossFactor, 14);
    expect(is.plyFit).toEqual(was.plyFit);
  });

  test("so are a strip's moduli and its transverse shear; its couplings and contraction stay", () => {
    const [was, is] = [material, soft].map((one) => stripStiffness(one, 4e-3, 0.3));
    for (const key of ["Ex", "Efx", "Gxy", "Gfxy", "Gxz"] as const) {
      expect(is[key] / was[key]).toBeCloseTo(factor, 12);
    }
    for (const key of ["nuxy", "bendTwist", "stretchBend", "lossFactor", "density"] as const) {
      expect(is[key]).toBeCloseTo(was[key], 12);
    }
    const across = (one: Material) => transverseShear(layersOf(one, 4e-3, 0.3)).Gnz;
    expect(across(soft) / across(material)).toBeCloseTo(factor, 12);
    expect(laminateCompliance(plateStiffness(soft, 4e-3)).d[0]).toBeGreaterThan(0);
  });

  test("a factor of 1 gives the material itself", () => {
    expect(withModuli(material, 1)).toBe(material);
  });
});
