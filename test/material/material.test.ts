import { describe, expect, test } from "vitest";
import { InputError } from "../../src/errors.ts";
import {
  isotropic,
  laminateFromStack,
  layersOf,
  type Measured,
  nominalThickness,
  plateStiffness,
  plyFit,
} from "../../src/material/material.ts";
import { T300_5208 } from "./plies.ts";

const ALUMINIUM = isotropic(71.7e9, 0.33, 2810, 0.002);
const CLOTH: Measured = {
  kind: "measured",
  E1: 60e9,
  E2: 50e9,
  G12: 5e9,
  nu12: 0.1,
  G13: 3e9,
  G23: 2.5e9,
  density: 1550,
  lossFactor: 0.006,
};

describe("plate of an isotropic material", () => {
  test.each([0, 0.3, Math.PI / 2])("warp angle %d: D = E t^3 / (12 (1 - nu^2))", (warp) => {
    const t = 2e-3;
    const { A, B, D, ...rest } = plateStiffness(ALUMINIUM, t, warp);
    const bending = (71.7e9 * t ** 3) / (12 * (1 - 0.33 ** 2));
    expect(D[0] / bending).toBeCloseTo(1, 13);
    expect(D[4] / bending).toBeCloseTo(1, 13);
    expect(D[1] / bending).toBeCloseTo(0.33, 13);
    expect(D[8] / bending).toBeCloseTo((1 - 0.33) / 2, 13);
    expect([D[2], D[5]]).toEqual([0, 0]);
    expect(A[0] / ((12 * bending) / t ** 2)).toBeCloseTo(1, 13);
    expect(Array.from(B)).toEqual(new Array(9).fill(0));
    expect(rest).toEqual({
      thickness: t,
      density: 2810,
      lossFactor: expect.closeTo(0.002, 14),
      plyFit: undefined,
    });
  });
});

describe("plate of measured constants", () => {
  test("warp along x, then along y: 11 and 22 change places exactly", () => {
    const x = plateStiffness(CLOTH, 3e-3);
    const y = plateStiffness(CLOTH, 3e-3, Math.PI / 2);
    const k = 1 - 0.1 * 0.1 * (50 / 60);
    expect(x.D[0] / ((60e9 * 27e-9) / 12 / k)).toBeCloseTo(1, 13);
    expect(x.D[4] / ((50e9 * 27e-9) / 12 / k)).toBeCloseTo(1, 13);
    expect([y.D[0], y.D[4], y.D[8]]).toEqual([x.D[4], x.D[0], x.D[8]]);
    expect([y.D[2], y.D[5]]).toEqual([0, 0]);
    expect([x.density, x.plyFit]).toEqual([1550, undefined]);
  });

  test("a warp at +30 degrees has D16 > 0, at -30 degrees D16 < 0", () => {
    const left = plateStiffness(CLOTH, 3e-3, Math.PI / 6).D;
    const right = plateStiffness(CLOTH, 3e-3, -Math.PI / 6).D;
    expect(left[2]).toBeGreaterThan(0);
    expect(right[2] / left[2]).toBeCloseTo(-1, 12);
  });
});

describe("plate of a laminate", () => {
  const stack = laminateFromStack(T300_5208, "[0/90]4s");

  test("16 plies of 0.125 mm are 2 mm thick", () => {
    expect(nominalThickness(stack)).toBeCloseTo(2e-3, 15);
    expect(nominalThickness(ALUMINIUM)).toBeUndefined();
  });

  test("the plies are scaled to fill the part, and the fit is reported", () => {
    const { D, thickness, plyFit: fit } = plateStiffness(stack, 3e-3);
    expect(thickness).toBeCloseTo(3e-3, 15);
    expect(fit).toEqual({
      count: 16,
      nominal: expect.closeTo(0.125e-3, 12),
      implied: 3e-3 / 16,
      scale: expect.closeTo(1.5, 12),
    });
    expect(D[0] / plateStiffness(stack, 2e-3).D[0]).toBeCloseTo(1.5 ** 3, 12);
    expect(plyFit(ALUMINIUM, 3e-3)).toBeUndefined();
  });

  test("plies of different kinds keep their share of the thickness", () => {
    const thick = { ...T300_5208, thickness: 0.25e-3, density: 2000 };
    const mixed = laminateFromStack([thick, T300_5208, T300_5208], "[0/45/90]");
    const list = layersOf(mixed, 2e-3);
    expect(list.map((layer) => layer.thickness / 1e-3)).toEqual([
      expect.closeTo(1, 12),
      expect.closeTo(0.5, 12),
      expect.closeTo(0.5, 12),
    ]);
    expect(plateStiffness(mixed, 2e-3).density).toBeCloseTo(1800, 9);
  });

  test("the warp angle turns every ply", () => {
    const list = layersOf(laminateFromStack(T300_5208, "[0/30]"), 1e-3, Math.PI / 2);
    expect(list[0].angle).toBeCloseTo(Math.PI / 2, 14);
    expect(list[1].angle).toBeCloseTo((2 * Math.PI) / 3, 14);
  });

  test("a wrong number of ply kinds is an error that counts both", () => {
    const build = () => laminateFromStack([T300_5208, T300_5208], "[0/90]s", "materials.arm.plies");
    expect(build).toThrow(InputError);
    expect(build).toThrow(
      'materials.arm.plies: The stack "[0/90]s" has 4 plies, but 2 ply kinds are given',
    );
  });
});
