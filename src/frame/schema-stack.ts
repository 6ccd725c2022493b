import { z } from "zod";
import { KINDS } from "./quantity-kinds.ts";
import {
  ANY,
  finding,
  fraction,
  NOT_NEGATIVE,
  nameOf,
  notAChoice,
  POSITIVE,
  quantity,
  text,
  wrongType,
} from "./schema-fields.ts";
import { side } from "./schema-propulsion.ts";
import { boxSize, named, section, vec2, vec3 } from "./schema-shapes.ts";
import type { IsolatorKind } from "./types-stack.ts";

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

export const ISOLATOR_KINDS = [
  "silicone grommets",
  "soft gel pads",
  "rubber rings",
  "over-tightened grommets",
] as const satisfies readonly IsolatorKind[];

/**
 * N/m: a mount this stiff is no isolator. The softest screw in use, nylon M3 with 10 mm between head
 * and nut, has E A / L = 2.8 GPa 5.03 mm^2 / 10 mm = 1.4 kN/mm (derived; E from memory).
 */
const AS_STIFF_AS_A_SCREW = 1e6;
/** Lateral stiffness as a share of axial; common practice, no source. */
const LATERAL_SHARE = 0.5;

const mountStiffness = (meaning: string) => quantity(KINDS.stiffness, POSITIVE, meaning);

const mount = section("a mount", {
  axial: mountStiffness("Dynamic stiffness of one mount along its screw."),
  lateral: mountStiffness(
    "Dynamic stiffness of one mount across its screw. Default: half of axial, common practice, no source.",
  ).exactOptional(),
  lossFactor: fraction(
    "Loss factor of the mounts, above 0 and up to 2. Default: 0.2, within the published range of silicone rubbers.",
    { above: 0, most: 2 },
  ).default(0.2),
})
  .superRefine((given, context) => {
    for (const key of ["axial", "lateral"] as const) {
      if ((given[key] ?? 0) < AS_STIFF_AS_A_SCREW) continue;
      const message = `A mount of ${Number(((given[key] as number) / 1e3).toPrecision(3))} kN/m is as stiff as a screw: the stack is screwed down. Write less than ${AS_STIFF_AS_A_SCREW / 1e3} kN/m, or leave "isolators" out (for a candidate: "none").`;
      context.addIssue(finding(message, [key]));
    }
  })
  .transform((given) => ({ ...given, lateral: given.lateral ?? LATERAL_SHARE * given.axial }));

const ISOLATOR_WORDS = ["none", ...ISOLATOR_KINDS] as const;

const isolators = (absent: string) =>
  z
    .union([z.enum(ISOLATOR_WORDS), mount], {
      error: ({ input }) => notIsolators(input),
    })
    .describe(
      `Soft mounts, one at each hole: a kind by name, "none", or the stiffness of one mount { "axial", "lateral", "lossFactor" }. Default: ${absent}.`,
    )
    .exactOptional();

/** Undefined for a section: what is wrong inside it is said there. */
function notIsolators(input: unknown): string | undefined {
  if (typeof input === "object" && input !== null && !Array.isArray(input)) return undefined;
  const own = 'or give one mount as { "axial": "8 kN/m" }';
  if (typeof input === "string") {
    return `${notAChoice(input, ISOLATOR_WORDS).replace(/\.$/, "")}, ${own}.`;
  }
  return wrongType(input, `a kind of mount such as "${ISOLATOR_KINDS[0]}", ${own}`);
}

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
    "The sensor chip [x, y, z] from the stack's centre of gravity, as it stands on a plate; under one it hangs turned about x. Default: [0, 0, 0].",
  ).default([0, 0, 0]),
  holes: holes.describe("Mounting holes of the stack."),
  isolators: isolators("screwed down"),
}).describe("The sensor stack as it is designed now.");

const candidate = section("a candidate", {
  ...where,
  holes: holes.describe("Hole pattern there. Default: that of the stack.").exactOptional(),
  height: height(
    "Height of the stack's centre of gravity over the face there. Default: that of the stack.",
  ).exactOptional(),
  isolators: isolators("those of the stack"),
  note: text("A remark.").default(""),
});

export const candidates = named(
  candidate,
  "candidates",
  "Places where the stack could sit, by name.",
);
