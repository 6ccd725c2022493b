import { describe, expect, test } from "vitest";
import {
  isotropic,
  laminateFromStack,
  type Measured,
  plateStiffness,
} from "../../src/material/material.ts";
import { stripStiffness } from "../../src/material/strip.ts";
import { T300_5208 } from "./plies.ts";

const DEGREE = Math.PI / 180;
const CLOTH: Measured = {
  kind: "measured",
  E1: 70e9,
  E2: 70e9,
  G12: 5e9,
  nu12: 0.1,
  G13: 4e9,
  G23: 3e9,
  density: 1550,
  lossFactor: 0.006,
};

describe("strip", () => {
  test("of an isotropic sheet has the sheet's own moduli", () => {
    const strip = stripStiffness(isotropic(68.9e9, 0.33, 2700, 0.002), 4e-3, 0.4);
    for (const E of [strip.Ex, strip.Efx]) expect(E / 68.9e9).toBeCloseTo(1, 12);
    const G = 68.9e9 / 2.66;
    for (const found of [strip.Gxy, strip.Gfxy, strip.Gxz]) expect(found / G).toBeCloseTo(1, 12);
    expect(strip.nuxy).toBeCloseTo(0.33, 12);
    expect([strip.bendTwist, strip.stretchBend]).toEqual([expect.closeTo(0), expect.closeTo(0)]);
    expect([strip.density, strip.thickness, strip.plyFit]).toEqual([2700, 4e-3, undefined]);
    expect(strip.lossFactor).toBeCloseTo(0.002, 14);
  });

  /** 1/Ex = c^4/E1 + s^4/E2 + (1/G12 - 2 nu12/E1) c^2 s^2: 70 GPa along the warp, 17.7 at 45. */
  test("of 0/90 cloth loses three quarters of its stiffness at 45 degrees to the warp", () => {
    const along = stripStiffness(CLOTH, 4e-3);
    const diagonal = stripStiffness(CLOTH, 4e-3, 45 * DEGREE);
    expect(along.Efx / 70e9).toBeCloseTo(1, 12);
    expect((diagonal.Efx / 1e9).toFixed(1)).toBe("17.7");
    expect((diagonal.Gfxy / 1e9).toFixed(1)).toBe("31.8");
    expect(diagonal.nuxy.toFixed(2)).toBe("0.77");
    expect(diagonal.bendTwist).toBeCloseTo(0, 12); // 45 degrees halves the cloth
    expect(diagonal.Gxz / 3.5e9).toBeCloseTo(1, 12);
  });

  test("bend-twist coupling: none along the fibre, opposite signs on the two sides", () => {
    const ud = laminateFromStack(T300_5208, "[0_8]");
    const at = (degrees: number) => stripStiffness(ud, 1e-3, degrees * DEGREE).bendTwist;
    expect(at(0)).toBe(0);
    expect(at(90)).toBeCloseTo(0, 14);
    expect(Math.abs(at(20))).toBeGreaterThan(0.4);
    expect(at(-20) / at(20)).toBeCloseTo(-1, 12);
    // d16 has the sign of -D16, and D16 > 0 for fibres turned to the left.
    expect(at(20)).toBeLessThan(0);
  });

  test("twist is free to bend the strip: D66 less what d16 gives away, My being zero", () => {
    const t = 1e-3;
    const ud = laminateFromStack(T300_5208, "[30_8]");
    const { D } = plateStiffness(ud, t, 0);
    // Eliminate kappa_y by My = 0, then kappa_x by Mx = 0.
    const D11 = D[0] - D[1] ** 2 / D[4];
    const D16 = D[2] - (D[1] * D[5]) / D[4];
    const D66 = D[8] - D[5] ** 2 / D[4];
    const strip = stripStiffness(ud, t);
    expect((strip.Gfxy * t ** 3) / 12 / (D66 - D16 ** 2 / D11)).toBeCloseTo(1, 11);
    expect(strip.bendTwist ** 2 / (D16 ** 2 / (D11 * D66))).toBeCloseTo(1, 11);
    expect((strip.Gfxy * t ** 3) / 12 / D66).toBeCloseTo(1 - strip.bendTwist ** 2, 11);
    expect(strip.bendTwist ** 2).toBeGreaterThan(0.2);
  });

  test("an unsymmetric stack couples stretching with bending and is softer for it", () => {
    const oneSided = stripStiffness(laminateFromStack(T300_5208, "[0/90]"), 1e-3);
    const even = stripStiffness(laminateFromStack(T300_5208, "[0/90]s"), 1e-3);
    expect(even.stretchBend).toBe(0);
    expect(Math.abs(oneSided.stretchBend)).toBeGreaterThan(0.5);
    expect(oneSided.Ex).toBeLessThan(even.Ex);
    const upsideDown = stripStiffness(laminateFromStack(T300_5208, "[90/0]"), 1e-3);
    expect(upsideDown.stretchBend / oneSided.stretchBend).toBeCloseTo(-1, 12);
  });

  test("loss factors of bending and of stretching: outer plies count only in bending", () => {
    const lossy = { ...T300_5208, lossFactor1: 0.0007, lossFactor2: 0.0067, lossFactor12: 0.0113 };
    const outside = stripStiffness(laminateFromStack(lossy, "[0_4/90_4]s"), 2e-3);
    const inside = stripStiffness(laminateFromStack(lossy, "[90_4/0_4]s"), 2e-3);
    expect(inside.lossFactor).toBeGreaterThan(1.3 * outside.lossFactor);
    expect(inside.stretchLossFactor / outside.stretchLossFactor).toBeCloseTo(1, 10);
  });

  test("bending and stretching moduli differ when plies are few", () => {
    const strip = stripStiffness(laminateFromStack(T300_5208, "[0/90]s"), 1e-3);
    // T300/5208, computed independently: 95.991302 and 160.113940 GPa.
    expect(strip.Ex / 1e9).toBeCloseTo(95.991302, 6);
    expect(strip.Efx / 1e9).toBeCloseTo(160.11394, 6);
    expect(strip.plyFit?.scale).toBeCloseTo(2, 12);
  });
});
