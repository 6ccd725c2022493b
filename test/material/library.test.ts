import { describe, expect, test } from "vitest";
import { checkMaterial, checkPly } from "../../src/material/check.ts";
import { describeMaterial } from "../../src/material/describe.ts";
import { type Fact, sourceText } from "../../src/material/library-facts.ts";
import { LIBRARY_MATERIALS, libraryMaterial } from "../../src/material/library-materials.ts";
import { LIBRARY_PLIES, libraryPly } from "../../src/material/library-plies.ts";
import { laminateFromStack } from "../../src/material/material.ts";

describe("every entry", () => {
  test.each(LIBRARY_PLIES)("ply $id: sound, and every number says where it comes from", (entry) => {
    checkPly(entry.ply);
    expectEveryNumberHasOneFact(entry.ply, entry.facts);
    expect(entry.ply.source).toBe(sourceText(entry.facts));
  });

  test.each(LIBRARY_MATERIALS)(
    "material $id: sound, and every number says where it comes from",
    (entry) => {
      checkMaterial(entry.material);
      const { kind: _, ...values } = entry.material;
      expectEveryNumberHasOneFact(values, entry.facts);
    },
  );

  test("ids are unique and plain", () => {
    for (const list of [LIBRARY_PLIES, LIBRARY_MATERIALS]) {
      const ids = list.map((entry) => entry.id);
      expect(new Set(ids).size).toBe(ids.length);
      for (const id of ids) expect(id).toMatch(/^[a-z0-9-]+$/);
    }
  });
});

/**
 * E1, E2, G12 (GPa), nu12 as printed. Fabrics and the first two unidirectional plies: "Mechanical
 * Properties of Carbon Fibre Composite Materials, Fibre / Epoxy resin (120 C cure)"; then Acta
 * Mechanica et Automatica 2025, ama-2025-0022; Manufacturing Review 2020, 190034, Table 2.
 */
// biome-ignore format: table
const PRINTED: readonly (readonly [string, number, number, number, number])[] = [
  ["carbon-fabric",              70,     70,   5,     0.1],
  ["carbon-fabric-high-modulus", 85,     85,   5,     0.1],
  ["carbon-ud",                  135,    10,   5,     0.3],
  ["carbon-ud-high-modulus",     175,    8,    5,     0.3],
  ["carbon-ud-measured",         103.01, 7.36, 4.04,  0.37],
  ["carbon-ud-study",            109,    8.82, 4.315, 0.342],
];

test.each(PRINTED)("%s has the published %d, %d, %d GPa, %d", (id, E1, E2, G12, nu12) => {
  const { ply } = libraryPly(id);
  expect(ply.E1 / 1e9).toBeCloseTo(E1, 12);
  expect(ply.E2 / 1e9).toBeCloseTo(E2, 12);
  expect(ply.G12 / 1e9).toBeCloseTo(G12, 12);
  expect(ply.nu12).toBe(nu12);
});

/**
 * Laminates of the published carbon plies (70/70/5 GPa, 0.10 fabric; 135/10/5 GPa, 0.30
 * unidirectional) by lamination theory in a separate calculation: E along the arm, in-plane G
 * (GPa), nu. Three digits.
 */
// biome-ignore format: table
const LAMINATES: readonly (readonly [string, string, number, string, string, string])[] = [
  ["carbon-fabric", "[0]8s",           0,  "70.0", "5.0",  "0.10"],
  ["carbon-fabric", "[0]8s",           45, "17.7", "31.8", "0.77"],
  ["carbon-fabric", "[0/45]4s",        0,  "50.0", "18.4", "0.36"],
  ["carbon-ud",     "[0/90]8s",        0,  "72.9", "5.0",  "0.04"],
  ["carbon-ud",     "[0/45/-45/90]4s", 0,  "52.4", "20.0", "0.31"],
];

describe("numbers people ask for", () => {
  test.each(LAMINATES)(
    "%s %s at %d degrees: E %s, G %s GPa, nu %s",
    (ply, stack, turn, E, G, nu) => {
      const material = laminateFromStack(libraryPly(ply).ply, stack);
      const angles = material.angles.map((angle) => angle + (turn * Math.PI) / 180);
      const found = describeMaterial({ ...material, angles });
      expect((found.E.at0 / 1e9).toFixed(1)).toBe(E);
      expect((found.G.at0 / 1e9).toFixed(1)).toBe(G);
      expect(found.nu.toFixed(2)).toBe(nu);
    },
  );

  test("0/90 cloth: 70 GPa along, 17.7 at 45, 70 across", () => {
    const { material } = libraryMaterial("carbon-fabric-0-90");
    const found = describeMaterial(material);
    const gpa = (values: { at0: number; at45: number; at90: number }) =>
      [values.at0, values.at45, values.at90].map((value) => (value / 1e9).toFixed(1));
    expect(gpa(found.E)).toEqual(["70.0", "17.7", "70.0"]);
    expect(gpa(found.flexuralE)).toEqual(["70.0", "17.7", "70.0"]);
    expect(gpa(found.G)).toEqual(["5.0", "31.8", "5.0"]);
    expect(found.density).toBe(1600);
    expect(found.lossFactor).toBeCloseTo(0.006, 12);
    expect(found.thickness).toBeCloseTo(16 * 0.22e-3, 12);
  });

  test("at 45 degrees is measured from the warp towards the left, as plies are", () => {
    const oneWay = laminateFromStack(libraryPly("carbon-ud").ply, "[45]");
    const { E } = describeMaterial(oneWay);
    expect(E.at45 / 135e9).toBeCloseTo(1, 12);
    expect(E.at0 / E.at90).toBeCloseTo(1, 12);
  });

  test("plates: 60 GPa along the warp, and 50 GPa in every direction", () => {
    const cloth = describeMaterial(libraryMaterial("carbon-plate-0-90").material);
    expect(cloth.flexuralE.at0 / 60e9).toBeCloseTo(1, 12);
    expect(cloth.thickness).toBeUndefined();
    const even = describeMaterial(libraryMaterial("carbon-plate-quasi-isotropic").material);
    for (const E of Object.values(even.flexuralE))
      expect(Math.abs(E / 50e9 - 1)).toBeLessThan(1e-3);
  });

  test("the plate's rounded constants are those of the laminate they are derived from", () => {
    const plate = describeMaterial(libraryMaterial("carbon-plate-quasi-isotropic").material);
    const laminate = describeMaterial(libraryMaterial("carbon-fabric-quasi-isotropic").material);
    expect(Math.abs(plate.E.at0 / laminate.E.at0 - 1)).toBeLessThan(2e-3);
    expect(Math.abs(plate.G.at0 / laminate.G.at0 - 1)).toBeLessThan(2e-3);
    expect(Math.abs(plate.nu - laminate.nu)).toBeLessThan(5e-3);
  });

  test.each([
    ["aluminium-7075-t651", 71.7, 2810],
    ["aluminium-6061-t6", 68.9, 2700],
    ["steel", 207, 7850],
    ["titanium", 110, 4430],
  ])("%s: E %d GPa in every direction, density %d", (id, E, density) => {
    const found = describeMaterial(libraryMaterial(id).material);
    for (const value of Object.values(found.E)) expect(value / 1e9 / E).toBeCloseTo(1, 12);
    expect(found.density).toBe(density);
  });
});

describe("an id that does not exist", () => {
  test("is an error that lists what exists", () => {
    expect(() => libraryMaterial("wood", "materials.arm")).toThrow(
      /^materials\.arm: There is no material "wood" in the library; it has carbon-plate-0-90, .*, silicone\.$/,
    );
    expect(() => libraryPly("wood")).toThrow(
      /^There is no ply "wood" in the library; it has carbon-fabric, /,
    );
  });
});

function expectEveryNumberHasOneFact(values: object, facts: readonly Fact[]): void {
  const told = facts.flatMap((fact) => fact.fields).sort();
  const needed = Object.keys(values)
    .filter((key) => key !== "note" && key !== "source")
    .sort();
  expect(told).toEqual(needed);
}
