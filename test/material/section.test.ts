import { describe, expect, test } from "vitest";
import { InputError } from "../../src/errors.ts";
import { isotropic, laminateFromStack, type Measured } from "../../src/material/material.ts";
import { beamSection } from "../../src/material/section.ts";
import type { SectionShape } from "../../src/material/section-shape.ts";
import {
  hexagonTorsion,
  orthotropicRectangleTorsion,
  torsionBeta,
} from "../../src/material/torsion.ts";
import { T300_5208 } from "./plies.ts";

const E = 70e9;
const NU = 0.25;
const G = E / (2 * (1 + NU));
const RHO = 2700;
const METAL = isotropic(E, NU, RHO, 0.002);
const PLATE: Measured = {
  kind: "measured",
  E1: 60e9,
  E2: 60e9,
  G12: 5e9,
  nu12: 0.1,
  G13: 3e9,
  G23: 3e9,
  density: 1550,
  lossFactor: 0.006,
};

describe("strip", () => {
  const b = 15e-3;
  const t = 5e-3;
  const section = beamSection({ shape: "strip", width: b, thickness: t }, METAL);

  test("isotropic, 15 x 5 mm: every constant by hand", () => {
    expectClose(section, {
      EA: E * 75e-6,
      EIy: (E * b * t ** 3) / 12,
      EIz: (E * t * b ** 3) / 12,
      GJ: G * torsionBeta(3) * b * t ** 3,
      kGAy: (5 / 6) * G * 75e-6,
      kGAz: (5 / 6) * G * 75e-6,
      rhoA: RHO * 75e-6,
      rhoIy: (RHO * b * t ** 3) / 12,
      rhoIz: (RHO * t * b ** 3) / 12,
      rhoIp: (RHO * b * t * (b ** 2 + t ** 2)) / 12,
      lossFactor: 0.002,
    });
  });

  test("a bar is a strip as thick as the bar is high", () => {
    expect(beamSection({ shape: "bar", width: b, height: t }, METAL)).toEqual(section);
  });

  /**
   * Using the polar moment for both would raise torsion frequencies by sqrt((r^2 + 1)/(12 beta)):
   * 8.9 % for a square, a factor 5.2 for a 10 : 1 strip.
   */
  test.each([
    [1, 1.089],
    [10, 5.19],
  ])("%d : 1 strip: rotary inertia is the polar moment, stiffness is J (ratio %d)", (r, factor) => {
    const s = beamSection({ shape: "strip", width: r * t, thickness: t }, METAL);
    const mixed = Math.sqrt(s.rhoIp / RHO / (s.GJ / G));
    expect(Math.abs(mixed - factor)).toBeLessThan(0.005);
  });

  test("a slot down the middle leaves two legs", () => {
    const s = 5e-3;
    const slotted = beamSection({ shape: "strip", width: b, thickness: t, slot: s }, METAL);
    expectClose(slotted, {
      EA: E * 50e-6,
      EIy: (E * (b - s) * t ** 3) / 12,
      EIz: (E * t * (b ** 3 - s ** 3)) / 12,
      GJ: 2 * G * torsionBeta(1) * t ** 4,
      kGAy: (5 / 6) * G * 50e-6,
      kGAz: (5 / 6) * G * 50e-6,
      rhoA: RHO * 50e-6,
      rhoIy: (RHO * (b - s) * t ** 3) / 12,
      rhoIz: (RHO * t * (b ** 3 - s ** 3)) / 12,
      rhoIp: (RHO * ((b - s) * t ** 3 + t * (b ** 3 - s ** 3))) / 12,
      lossFactor: 0.002,
    });
    expect(beamSection({ shape: "strip", width: b, thickness: t, slot: 0 }, METAL)).toEqual(
      section,
    );
  });

  test("of carbon plate along the warp: flat torsion by the orthotropic rectangle", () => {
    const s = beamSection({ shape: "strip", width: b, thickness: t }, PLATE);
    expect(s.EIy / ((60e9 * b * t ** 3) / 12)).toBeCloseTo(1, 12);
    expect(s.EIz / ((60e9 * t * b ** 3) / 12)).toBeCloseTo(1, 12);
    expect(s.GJ / orthotropicRectangleTorsion(b, t, 5e9, 3e9)).toBeCloseTo(1, 12);
    expect(s.kGAz / ((5 / 6) * 3e9 * 75e-6)).toBeCloseTo(1, 12);
    expect(s.kGAy / ((5 / 6) * 5e9 * 75e-6)).toBeCloseTo(1, 12);
  });

  test("turning the cloth by 45 degrees makes the arm soft in bending and stiffer in torsion", () => {
    const shape: SectionShape = { shape: "strip", width: b, thickness: t };
    const along = beamSection(shape, PLATE);
    const diagonal = beamSection(shape, PLATE, Math.PI / 4);
    expect(diagonal.EIy / along.EIy).toBeLessThan(0.3);
    expect(diagonal.GJ / along.GJ).toBeGreaterThan(2);
    // Shear along the width profits from the diagonal fibres, shear through the plate does not.
    expect(diagonal.kGAy / along.kGAy).toBeGreaterThan(5);
    expect(diagonal.kGAz / along.kGAz).toBeCloseTo(1, 12);
  });

  test("of few plies: flat bending and twist by d, stretching, edgewise bending and shear by a", () => {
    const stack = laminateFromStack(T300_5208, "[0/45/-45/90]s");
    const s = beamSection({ shape: "strip", width: b, thickness: t }, stack);
    // T300/5208, computed independently: Ex 69.675741, Efx 116.552087, Gxy 26.880431,
    // Gfxy 21.064806 GPa. Gxz is the mean of G13 and G23, 4.5 GPa.
    expect(s.EA / (69.675741e9 * b * t)).toBeCloseTo(1, 7);
    expect(s.EIy / ((116.552087e9 * b * t ** 3) / 12)).toBeCloseTo(1, 7);
    expect(s.EIz / ((69.675741e9 * t * b ** 3) / 12)).toBeCloseTo(1, 7);
    expect(s.GJ / orthotropicRectangleTorsion(b, t, 21.064806e9, 4.5e9)).toBeCloseTo(1, 7);
    expect(s.kGAy / ((5 / 6) * 26.880431e9 * b * t)).toBeCloseTo(1, 7);
    expect(s.kGAz / ((5 / 6) * 4.5e9 * b * t)).toBeCloseTo(1, 12);
  });

  test("quasi-isotropic T300/5208, 12 x 5 mm, Gxz 4 GPa: GJ = 5.2331 N m^2 in the limit of many plies", () => {
    // The tabulated 5.23314120 has Gxy = 26.88 GPa through the whole depth.
    const many = laminateFromStack({ ...T300_5208, G13: 4e9, G23: 4e9 }, "[(0/45/-45/90)31]s");
    const { GJ } = beamSection({ shape: "strip", width: 12e-3, thickness: 5e-3 }, many);
    expect(Math.abs(GJ / 5.2331412 - 1)).toBeLessThan(0.01);
  });
});

describe("round and hexagonal sections", () => {
  test("tube 5 x 3 mm", () => {
    const A = (Math.PI / 4) * 16e-6;
    const I = (Math.PI / 64) * (625 - 81) * 1e-12;
    const s = beamSection({ shape: "tube", outer: 5e-3, bore: 3e-3 }, METAL);
    expectClose(s, {
      EA: E * A,
      EIy: E * I,
      EIz: E * I,
      GJ: 2 * G * I,
      // Cowper's formula worked by hand with nu = 1/4, m = 0.6.
      kGAy: ((7.5 * 1.8496) / (8.5 * 1.8496 + 23 * 0.36)) * G * A,
      kGAz: ((7.5 * 1.8496) / (8.5 * 1.8496 + 23 * 0.36)) * G * A,
      rhoA: RHO * A,
      rhoIy: RHO * I,
      rhoIz: RHO * I,
      rhoIp: 2 * RHO * I,
      lossFactor: 0.002,
    });
  });

  test("shear coefficient: 6 (1 + nu)/(7 + 6 nu) of a rod, 2 (1 + nu)/(4 + 3 nu) of a thin tube", () => {
    const rod = beamSection({ shape: "rod", diameter: 4e-3 }, METAL);
    expect(rod.kGAz / (G * Math.PI * 4e-6)).toBeCloseTo(7.5 / 8.5, 12);
    const thin = beamSection({ shape: "tube", outer: 1, bore: 1 - 1e-6 }, METAL);
    const A = (Math.PI / 4) * (1 - (1 - 1e-6) ** 2);
    expect(thin.kGAz / (G * A)).toBeCloseTo(2.5 / 4.75, 5);
  });

  test("hexagon 5 mm with a 3 mm bore: area and second moment by integration over the polygon", () => {
    const { A, Iy, Iz } = polygonMoments(5e-3);
    const bore = (Math.PI / 64) * 81e-12;
    const s = beamSection({ shape: "hexagon", acrossFlats: 5e-3, bore: 3e-3 }, METAL);
    expect(s.EA / (E * (A - (Math.PI / 4) * 9e-6))).toBeCloseTo(1, 12);
    expect(s.EIy / (E * (Iy - bore))).toBeCloseTo(1, 12);
    expect(s.EIz / (E * (Iz - bore))).toBeCloseTo(1, 12);
    expect(s.rhoIp / (RHO * (Iy + Iz - 2 * bore))).toBeCloseTo(1, 12);
    expect(s.GJ / (G * hexagonTorsion(5e-3, 3e-3))).toBeCloseTo(1, 12);
    // The tube of the same outer area has bore / outer = m; Cowper's formula with nu = 1/4.
    const m2 = 9e-6 / ((4 / Math.PI) * A);
    const kappa = (7.5 * (1 + m2) ** 2) / (8.5 * (1 + m2) ** 2 + 23 * m2);
    expect(s.kGAz / (kappa * (s.EA / E) * G)).toBeCloseTo(1, 12);
    const solid = beamSection({ shape: "hexagon", acrossFlats: 5e-3 }, METAL);
    expect(solid.EA / (E * A)).toBeCloseTo(1, 12);
  });

  test("a carbon tube uses the axial modulus and the in-plane shear modulus of its wall", () => {
    const wall = laminateFromStack(T300_5208, "[0/90]s");
    const s = beamSection({ shape: "tube", outer: 12e-3, bore: 10e-3 }, wall);
    const I = (Math.PI / 64) * (12 ** 4 - 10 ** 4) * 1e-12;
    expect(s.EIy / (95.991302e9 * I)).toBeCloseTo(1, 7);
    expect(s.GJ / (7.17e9 * 2 * I)).toBeCloseTo(1, 12);
    // A bent tube stretches its wall: the order of the wall's plies changes no loss.
    const lossy = { ...T300_5208, lossFactor1: 0.0007, lossFactor2: 0.0067 };
    const [outside, inside] = ["[0/90]s", "[90/0]s"].map(
      (stack) =>
        beamSection({ shape: "tube", outer: 12e-3, bore: 10e-3 }, laminateFromStack(lossy, stack))
          .lossFactor,
    );
    expect(inside / outside).toBeCloseTo(1, 10);
  });
});

describe("given constants", () => {
  const given = { shape: "given", A: 1e-4, Iy: 2e-9, Iz: 3e-9, J: 4e-9 } as const;

  test("are multiplied with the material; the polar moment defaults to Iy + Iz", () => {
    expectClose(beamSection(given, METAL), {
      EA: E * 1e-4,
      EIy: E * 2e-9,
      EIz: E * 3e-9,
      GJ: G * 4e-9,
      kGAy: (5 / 6) * G * 1e-4,
      kGAz: (5 / 6) * G * 1e-4,
      rhoA: RHO * 1e-4,
      rhoIy: RHO * 2e-9,
      rhoIz: RHO * 3e-9,
      rhoIp: RHO * 5e-9,
      lossFactor: 0.002,
    });
  });

  test("polar moment and shear areas may be given", () => {
    const s = beamSection({ ...given, Ip: 7e-9, Ay: 5e-5, Az: 6e-5 }, METAL);
    expect(s.rhoIp).toBeCloseTo(RHO * 7e-9, 15);
    expect(s.kGAy / (G * 5e-5)).toBeCloseTo(1, 12);
    expect(s.kGAz / (G * 6e-5)).toBeCloseTo(1, 12);
  });
});

describe("sizes that make no section", () => {
  test.each<readonly [SectionShape, string]>([
    [{ shape: "strip", width: 0, thickness: 5e-3 }, "arm.width: must be greater than 0, but is 0."],
    [
      { shape: "strip", width: 0.01, thickness: Number.NaN },
      "arm.thickness: must be greater than 0, but is NaN.",
    ],
    [
      { shape: "strip", width: 0.01, thickness: 0.005, slot: 0.01 },
      "arm.slot: must be at least 0 and less than width (0.01 m), but is 0.01 m.",
    ],
    [{ shape: "bar", width: 0.01, height: -1 }, "arm.height: must be greater than 0, but is -1."],
    [
      { shape: "tube", outer: 0.005, bore: 0.006 },
      "arm.bore: must be at least 0 and less than outer (0.005 m), but is 0.006 m.",
    ],
    [{ shape: "rod", diameter: 0 }, "arm.diameter: must be greater than 0, but is 0."],
    [
      { shape: "hexagon", acrossFlats: 0.005, bore: -0.001 },
      "arm.bore: must be at least 0 and less than acrossFlats (0.005 m), but is -0.001 m.",
    ],
    [
      { shape: "given", A: 1e-4, Iy: 1e-9, Iz: 1e-9, J: 0 },
      "arm.J: must be greater than 0, but is 0.",
    ],
  ])("%o", (shape, message) => {
    const build = () => beamSection(shape, METAL, 0, "arm");
    expect(build).toThrow(InputError);
    expect(build).toThrow(message);
  });

  test("all of them are reported at once", () => {
    expect(() => beamSection({ shape: "bar", width: 0, height: 0 }, METAL)).toThrow(
      "width: must be greater than 0, but is 0.\nheight: must be greater than 0, but is 0.",
    );
  });
});

/** Area and second moments of a regular hexagon by Green's theorem over its corners. */
function polygonMoments(acrossFlats: number) {
  const R = acrossFlats / Math.sqrt(3);
  let A = 0;
  let Iy = 0;
  let Iz = 0;
  for (let i = 0; i < 6; i++) {
    const [y0, z0] = [R * Math.cos((i * Math.PI) / 3), R * Math.sin((i * Math.PI) / 3)];
    const [y1, z1] = [R * Math.cos(((i + 1) * Math.PI) / 3), R * Math.sin(((i + 1) * Math.PI) / 3)];
    const cross = y0 * z1 - y1 * z0;
    A += cross / 2;
    Iy += (cross * (z0 * z0 + z0 * z1 + z1 * z1)) / 12;
    Iz += (cross * (y0 * y0 + y0 * y1 + y1 * y1)) / 12;
  }
  return { A, Iy, Iz };
}

function expectClose<T extends object>(found: T, expected: Record<keyof T, number>): void {
  expect(Object.keys(found).sort()).toEqual(Object.keys(expected).sort());
  for (const key of Object.keys(expected) as (keyof T)[]) {
    expect(Number(found[key]) / expected[key], String(key)).toBeCloseTo(1, 12);
  }
}
