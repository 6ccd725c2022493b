import { z } from "zod";
import { KINDS } from "./quantity-kinds.ts";
import { NOT_NEGATIVE, POSITIVE, quantity } from "./schema-fields.ts";
import { section, sectionBy } from "./schema-shapes.ts";

/** Cross-sections of standoffs and members. */

const length = (meaning: string) => quantity(KINDS.length, POSITIVE, meaning);
const area = (meaning: string) => quantity(KINDS.area, POSITIVE, meaning);
const secondMoment = (meaning: string) => quantity(KINDS.secondMoment, POSITIVE, meaning);
const rigidity = (meaning: string) => quantity(KINDS.bendingRigidity, POSITIVE, meaning);
const force = (meaning: string) => quantity(KINDS.force, POSITIVE, meaning);

const BORE_TOO_WIDE = { path: ["bore"], error: "The bore must be smaller than the outside." };

const SHAPES = ["rectangle", "tube", "rod", "hexagon", "constants", "stiffness"] as const;

export const crossSection = sectionBy("shape", "a cross-section", SHAPES, [
  section("a rectangle", {
    shape: z.literal("rectangle"),
    width: length("Width, across the member's up direction."),
    height: length("Height, along the member's up direction."),
  }),
  section("a tube", {
    shape: z.literal("tube"),
    outer: length("Outside diameter."),
    bore: length("Inside diameter."),
  }).refine(({ outer, bore }) => bore < outer, BORE_TOO_WIDE),
  section("a rod", {
    shape: z.literal("rod").describe("Solid and round."),
    diameter: length("Diameter."),
  }),
  section("a hexagon", {
    shape: z.literal("hexagon"),
    acrossFlats: length("Distance between opposite flats."),
    bore: quantity(KINDS.length, NOT_NEGATIVE, "Diameter of the hole. Default: none.").default(0),
  }).refine(({ acrossFlats, bore }) => bore < acrossFlats, BORE_TOO_WIDE),
  section("a section given by constants", {
    shape: z.literal("constants").describe("Any shape, by its constants; goes with a material."),
    A: area("Area."),
    Iy: secondMoment("Second moment of area for bending about the local y axis."),
    Iz: secondMoment("Second moment of area for bending about the local z axis."),
    J: secondMoment("Torsion constant."),
    Ip: secondMoment(
      "Polar second moment of area, for rotary inertia. Default: Iy + Iz.",
    ).exactOptional(),
    shearAreaY: area("Effective shear area along local y.").exactOptional(),
    shearAreaZ: area("Effective shear area along local z.").exactOptional(),
  }),
  section("a section given by its stiffness", {
    shape: z
      .literal("stiffness")
      .describe("By measured or published stiffness; takes no material."),
    EA: force("Stiffness along the member."),
    EIy: rigidity("Bending rigidity about the local y axis."),
    EIz: rigidity("Bending rigidity about the local z axis."),
    GJ: rigidity("Torsion rigidity."),
    kGAy: force("Shear rigidity along local y.").exactOptional(),
    kGAz: force("Shear rigidity along local z.").exactOptional(),
    massPerLength: quantity(KINDS.massPerLength, NOT_NEGATIVE, "Mass per length; may be 0."),
    inertiaPerLength: quantity(
      KINDS.inertiaPerLength,
      NOT_NEGATIVE,
      "Rotary inertia per length about the member's axis, rho Ip. Default: 0.",
    ).default(0),
  }),
]);

/** Shapes whose outer size says how large the face of a standoff is. */
export function hasOuterSize(shape: (typeof SHAPES)[number]): boolean {
  return shape !== "constants" && shape !== "stiffness";
}
