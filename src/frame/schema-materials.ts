import { z } from "zod";
import { KINDS } from "./quantity-kinds.ts";
import { lossFactor, nameOf, POSITIVE, plainNumber, quantity, text } from "./schema-fields.ts";
import { named, section, sectionBy } from "./schema-shapes.ts";

/** Plies and materials. */

const modulus = (meaning: string) => quantity(KINDS.modulus, POSITIVE, meaning);
const density = () => quantity(KINDS.density, POSITIVE, "Density.");

const E1 = modulus("Young's modulus along the warp or the fibres.");
const G12 = modulus("Shear modulus in the plane.");
const G23 = modulus("Transverse shear modulus along 2. Default: G13.").exactOptional();

interface PoissonInput {
  readonly E1: number;
  readonly E2: number;
  readonly nu12: number;
}

/** |nu12| < sqrt(E1 / E2), or the plate would give energy when it is stretched. */
function poissonIsPossible({ E1, E2, nu12 }: PoissonInput): boolean {
  return nu12 * nu12 < E1 / E2;
}

const POISSON_MESSAGE = {
  path: ["nu12"],
  error:
    "This Poisson's ratio is not possible: it must be smaller than the square root of E1 / E2.",
};

const plySection = section("a ply", {
  E1,
  E2: modulus("Young's modulus across the warp or the fibres."),
  G12,
  nu12: plainNumber("Poisson's ratio in the plane.", "0.1"),
  G13: modulus("Transverse shear modulus along 1. Default: G12.").exactOptional(),
  G23,
  density: density(),
  thickness: quantity(KINDS.length, POSITIVE, "Cured thickness of one layer."),
  lossFactor: lossFactor("Loss factor. Default: 0.006.").default(0.006),
})
  .refine(poissonIsPossible, POISSON_MESSAGE)
  .transform((ply) => {
    const G13 = ply.G13 ?? ply.G12;
    return { ...ply, G13, G23: ply.G23 ?? G13 };
  });

const isotropic = section("an isotropic material", {
  kind: z.literal("isotropic").describe("Metal or plastic: the same in every direction."),
  E: modulus("Young's modulus."),
  nu: plainNumber("Poisson's ratio; give this or G.", "0.33", { above: -1 }).exactOptional(),
  G: modulus("Shear modulus; give this or nu.").exactOptional(),
  density: density(),
  lossFactor: lossFactor("Loss factor. Default: 0.002.").default(0.002),
}).transform((material, context) => {
  const { E } = material;
  const fail = (key: string, message: string) => {
    context.issues.push({ code: "custom", message, path: [key], input: material });
    return z.NEVER;
  };
  if (material.nu === undefined && material.G === undefined) {
    return fail(
      "nu",
      "Missing: give Poisson's ratio nu (for example 0.33), or the shear modulus G.",
    );
  }
  // G = E / (2 (1 + nu))
  const nu = material.nu ?? E / (2 * (material.G as number)) - 1;
  const G = material.G ?? E / (2 * (1 + nu));
  if (!(nu > -1 && nu < 0.5)) {
    return material.nu === undefined
      ? fail(
          "G",
          `This G does not go with E: Poisson's ratio would be ${round3(nu)}, it must be between -1 and 0.5.`,
        )
      : fail("nu", `${nu} is not possible: Poisson's ratio must be between -1 and 0.5.`);
  }
  const expected = E / (2 * (1 + nu));
  if (Math.abs(G - expected) > 0.01 * expected) {
    const GPa = round3(expected / 1e9);
    return fail(
      "G",
      `E, nu and G do not fit together: with this E and nu, G is ${GPa} GPa. Give nu or G, not both.`,
    );
  }
  return { ...material, nu, G };
});

function round3(value: number): string {
  return String(Number(value.toPrecision(3)));
}

const laminate = section("a laminate", {
  kind: z.literal("laminate").describe("Layers of one ply, laid up as the stack says."),
  stack: text('The layers in laminate notation, bottom layer first, for example "[0/90]4s".', 400),
  ply: nameOf("a ply", "A ply of this file or of the built-in library."),
  lossFactor: lossFactor("Loss factor. Default: that of the ply.").exactOptional(),
});

const measured = section("a measured plate", {
  kind: z
    .literal("measured")
    .describe("Constants of the whole plate, as measured or from a data sheet."),
  E1: modulus("Bending modulus along the warp."),
  E2: modulus("Bending modulus across the warp. Default: E1.").exactOptional(),
  G12,
  nu12: plainNumber("Poisson's ratio in the plane. Default: 0.1.", "0.1").default(0.1),
  G13: modulus("Transverse shear modulus along 1. Default: 3 GPa.").prefault("3 GPa"),
  G23,
  density: density(),
  lossFactor: lossFactor("Loss factor. Default: 0.006.").default(0.006),
})
  .transform((plate) => ({ ...plate, E2: plate.E2 ?? plate.E1, G23: plate.G23 ?? plate.G13 }))
  .refine(poissonIsPossible, POISSON_MESSAGE);

export const plies = named(plySection, "plies", "Layers of cloth or tape, by name.");

export const materials = named(
  sectionBy(
    "kind",
    "a material",
    ["isotropic", "laminate", "measured"],
    [isotropic, laminate, measured],
  ),
  "materials",
  "Materials of this file, by name, beside those of the built-in library.",
);
