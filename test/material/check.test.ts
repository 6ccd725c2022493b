import { describe, expect, test } from "vitest";
import { InputError } from "../../src/errors.ts";
import { checkMaterial, checkPly } from "../../src/material/check.ts";
import { isotropic, laminateFromStack, type Material } from "../../src/material/material.ts";
import { T300_5208 } from "./plies.ts";

const METAL = isotropic(70e9, 0.33, 2700, 0.002);
const LAMINATE = laminateFromStack(T300_5208, "[0/90]s");

describe("a ply", () => {
  test("of published constants passes", () => {
    expect(() => checkPly(T300_5208)).not.toThrow();
  });

  test("everything that is wrong is said at once, with its place", () => {
    const wrong = { ...T300_5208, E1: 0, density: Number.NaN, lossFactor2: -0.1 };
    expect(findingsOf(() => checkPly(wrong, "plies.cloth"))).toEqual([
      "plies.cloth.E1: must be greater than 0, but is 0.",
      "plies.cloth.density: must be greater than 0, but is NaN.",
      "plies.cloth.lossFactor2: must be 0 or greater, but is -0.1.",
      "plies.cloth.nu12: must be smaller in size than sqrt(E1/E2) = 0.000, but is 0.28: no real material can have these constants. Check that nu12 and not nu21 is given.",
    ]);
  });

  test("nu12 and nu21 exchanged is found", () => {
    // Axis 1 the soft one: nu12 = 0.28 would need E1/E2 > 0.0784, and 10.3/181 = 0.0569.
    const swapped = { ...T300_5208, E1: 10.3e9, E2: 181e9 };
    expect(() => checkPly(swapped)).toThrow(/nu12: must be smaller .* 0\.2385, but is 0\.28/);
  });
});

describe("a material", () => {
  test.each<readonly [string, Material, string]>([
    ["negative E", { ...METAL, E: -1 }, "m.E: must be greater than 0, but is -1."],
    ["nu = 0.5", { ...METAL, nu: 0.5 }, "m.nu: must lie between -1 and 0.5 (both excluded)"],
    [
      "G of another material",
      { ...METAL, G: 80e9 },
      "m.G: does not fit the other two: an isotropic material has G = E/(2(1 + nu)) = 26.32 GPa, but G is 80 GPa.",
    ],
    [
      "a measured sheet without shear",
      {
        kind: "measured",
        E1: 60e9,
        E2: 60e9,
        G12: 0,
        nu12: 0.1,
        G13: 3e9,
        G23: 3e9,
        density: 1550,
        lossFactor: 0.006,
      },
      "m.G12: must be greater than 0, but is 0.",
    ],
    [
      "a bad ply in a laminate",
      { ...LAMINATE, plies: [{ ...T300_5208, thickness: 0 }] },
      "m.ply.thickness: must be greater than 0, but is 0.",
    ],
    ["no plies", { ...LAMINATE, angles: [] }, "m.stack: must have 1 to 500 plies, but has 0."],
    [
      "plies that do not match the stack",
      { ...LAMINATE, plies: [T300_5208, T300_5208] },
      "m.plies: must be one ply, or one for each of the 4 angles of the stack, but 2 are given.",
    ],
  ])("%s", (_, material, message) => {
    expect(() => checkMaterial(material, "m")).toThrow(message);
    expect(() => checkMaterial(material, "m")).toThrow(InputError);
  });

  test("rounded handbook values of E, G and nu fit together", () => {
    expect(() => checkMaterial({ ...METAL, E: 71.7e9, G: 26.9e9, nu: 0.33 })).not.toThrow();
    expect(() => checkMaterial(LAMINATE)).not.toThrow();
  });
});

function findingsOf(action: () => void): readonly string[] {
  try {
    action();
  } catch (error) {
    if (error instanceof InputError) return error.message.split("\n");
    throw error;
  }
  throw new Error("nothing was found");
}
