import { z } from "zod";
import { KINDS } from "./quantity-kinds.ts";
import { ANY, NOT_NEGATIVE, nameOf, POSITIVE, quantity, text, wrongType } from "./schema-fields.ts";
import { side } from "./schema-propulsion.ts";
import { boxSize, named, section, vec2, vec3 } from "./schema-shapes.ts";

/** The sensor stack and the places where it could sit. */

const spacing = quantity(KINDS.length, POSITIVE, "Distance between holes.");

const holes = section("a hole pattern", {
  spacing: z
    .union([
      spacing,
      z.tuple([spacing, spacing], {
        error: (issue) => wrongType(issue.input, "a length, or two lengths [x, y]"),
      }),
    ])
    .transform((given): readonly [number, number] =>
      typeof given === "number" ? [given, given] : given,
    )
    .describe(
      "Distance between the holes: one length for a square, or [along x, along y]. Bare numbers in mm.",
    ),
  turned: quantity(
    KINDS.angle,
    ANY,
    "Turn of the pattern, from forward towards left. Default: 0.",
  ).default(0),
  footprint: quantity(
    KINDS.length,
    POSITIVE,
    "Diameter of the screw head or grommet. Default: 6 mm.",
  ).prefault("6 mm"),
});

const where = {
  plate: nameOf("a plate", "The plate it is mounted on."),
  at: vec2("Centre of the hole pattern [x, y]."),
  side: side(),
};

const height = (meaning: string) => quantity(KINDS.length, NOT_NEGATIVE, meaning);

export const stack = section("the stack", {
  mass: quantity(KINDS.mass, POSITIVE, "Mass of the stack."),
  size: boxSize("Size of the stack [along x, along y, along z]."),
  ...where,
  height: height("Height of the stack's centre of gravity over the face of the plate."),
  chip: vec3(
    "The sensor chip [x, y, z] from the stack's centre of gravity. Default: [0, 0, 0].",
  ).default([0, 0, 0]),
  holes: holes.describe("Mounting holes of the stack."),
}).describe("The sensor stack as it is designed now.");

const candidate = section("a candidate", {
  ...where,
  holes: holes.describe("Hole pattern there. Default: that of the stack.").exactOptional(),
  height: height(
    "Height of the stack's centre of gravity over the face there. Default: that of the stack.",
  ).exactOptional(),
  note: text("A remark.").default(""),
});

export const candidates = named(
  candidate,
  "candidates",
  "Places where the stack could sit, by name.",
);
