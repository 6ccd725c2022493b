import { z } from "zod";
import { KINDS } from "./quantity-kinds.ts";
import {
  copies,
  count,
  DOF_NAMES,
  directions,
  finding,
  lossFactor,
  NOT_NEGATIVE,
  nameOf,
  POSITIVE,
  pairOf,
  plainNumber,
  quantity,
  wrongType,
} from "./schema-fields.ts";
import { crossSection, hasOuterSize } from "./schema-sections.ts";
import { named, points2, polygon, section, sectionOf, vec2, vec3 } from "./schema-shapes.ts";
import type { LinkDef, SupportDef } from "./types.ts";
import type { DofName, Stiffness } from "./types-basic.ts";

/** What holds the frame together: points, standoffs, members, joints, links, springs, supports. */

const materialName = () =>
  nameOf("a material", "A material of this file or of the built-in library.");
const footprint = (meaning: string) => quantity(KINDS.length, POSITIVE, meaning);

export const points = named(
  vec3("A point [x, y, z]. Bare numbers in mm."),
  "points",
  "Points with names, for members, links, springs, supports and bodies.",
);

const standoff = section("a standoff", {
  at: points2("Axis of the standoff [x, y], or a list of them."),
  copies: copies(),
  between: pairOf("plate", "The two plates it stands between."),
  section: crossSection.describe("Cross-section."),
  material: materialName(),
  footprint: footprint(
    "Diameter of its faces. Default: the outer size of the section.",
  ).exactOptional(),
}).refine(({ section, footprint }) => footprint !== undefined || hasOuterSize(section.shape), {
  path: ["footprint"],
  error:
    'Missing: this section has no outer size, so the diameter of the faces is needed, for example "5 mm".',
});

const direction = plainNumber("One component.", "1");

const member = section("a member", {
  from: nameOf("a point", "The point where it begins."),
  to: nameOf("a point", "The point where it ends."),
  section: crossSection.describe("Cross-section."),
  material: materialName().exactOptional(),
  up: z
    .tuple([direction, direction, direction], {
      error: (issue) => wrongType(issue.input, "a direction [x, y, z]"),
    })
    .refine(([x, y, z]) => x !== 0 || y !== 0 || z !== 0, "This direction has no length.")
    .describe("Direction of the section's height [x, y, z], without units.")
    .exactOptional(),
  elements: count(
    "Beam elements along it. Default: chosen by the program.",
    1,
    1000,
  ).exactOptional(),
}).superRefine(({ from, to, section, material }, context) => {
  const fail = (key: string, message: string) => context.addIssue(finding(message, [key]));
  if (from === to) fail("to", "This member ends at the point where it begins.");
  if (section.shape === "stiffness" && material !== undefined) {
    fail("material", "A section given by its stiffness takes no material: leave this out.");
  }
  if (section.shape !== "stiffness" && material === undefined) {
    fail("material", 'Missing: write the name of a material, for example "aluminium-6061-t6".');
  }
});

const along = (axis: string) =>
  quantity(KINDS.stiffness, NOT_NEGATIVE, `Stiffness along ${axis}.`).exactOptional();
const about = (axis: string) =>
  quantity(KINDS.rotationalStiffness, NOT_NEGATIVE, `Stiffness about ${axis}.`).exactOptional();

const stiffnessShape = {
  x: along("x"),
  y: along("y"),
  z: along("z"),
  rx: about("x"),
  ry: about("y"),
  rz: about("z"),
};

const joint = section("a joint", {
  plates: pairOf("plate", "The two plates that are screwed together."),
  at: points2("The screw [x, y], or a list of screws."),
  copies: copies(),
  footprint: footprint("Diameter under the screw head. Default: 6 mm.").prefault("6 mm"),
  stiffness: section("the stiffness of a joint", stiffnessShape)
    .describe("Stiffness by direction; a direction that is left out is rigid.")
    .exactOptional(),
  lossFactor: lossFactor("Loss factor. Default: 0.05, common practice, no source.").default(0.05),
});

const ties = () =>
  directions('Directions that are tied: "all" or a list. Default: all.').prefault("all");

const link = sectionOf("a link", [
  section("a link between points", {
    points: pairOf("point", "The two points."),
    ties: ties(),
  }).transform((link): LinkDef => ({ kind: "points", ...link })),
  section("a link from a point to a plate", {
    point: nameOf("a point", "The point."),
    plate: nameOf("a plate", "The plate."),
    footprint: footprint("Diameter of the patch of the plate that is held."),
    ties: ties(),
  }).transform((link): LinkDef => ({ kind: "plate", ...link })),
]);

const spring = section("a spring", {
  between: pairOf("point", 'Two points, or a point and "ground".'),
  ...stiffnessShape,
  lossFactor: lossFactor("Loss factor. Default: 0.").default(0),
})
  .superRefine((spring, context) => {
    if (DOF_NAMES.every((name) => spring[name] === undefined)) {
      const message =
        'This spring has no stiffness: give at least one of x, y, z, rx, ry, rz, for example "z": "10 N/mm".';
      context.addIssue(finding(message));
    }
    if (spring.between[0] === "ground") {
      const message = 'Name the point first and "ground" second.';
      context.addIssue(finding(message, ["between"]));
    }
  })
  .transform(({ between, lossFactor, ...stiffness }) => ({
    between,
    stiffness: stiffness satisfies Partial<Record<DofName, number>> as Stiffness,
    lossFactor,
  }));

const fix = directions('Directions that are held: "all" or a list.');

const support = sectionOf("a support", [
  section("a support of a point", {
    point: nameOf("a point", "The point that is held."),
    fix,
  }).transform((support): SupportDef => ({ kind: "point", ...support })),
  section("a support of a plate", {
    plate: nameOf("a plate", "The plate that is held."),
    along: z
      .tuple([vec2("One end."), vec2("Other end.")], {
        error: (issue) => wrongType(issue.input, "two points [[x, y], [x, y]]"),
      })
      .describe("Held along the line between these two points.")
      .exactOptional(),
    within: polygon(3, "Held inside this outline.").exactOptional(),
    fix,
  })
    .refine(({ along, within }) => (along === undefined) !== (within === undefined), {
      error: "Say where the plate is held: along a line, or within an outline (one of the two).",
    })
    .transform((support): SupportDef => ({ kind: "plate", ...support })),
]);

export const standoffs = named(standoff, "standoffs", "Spacers between two plates, by name.");
export const members = named(member, "members", "Beams between named points, by name.");
export const joints = named(
  joint,
  "joints",
  "Places where two plates are screwed together, by name.",
);
export const links = named(link, "links", "Rigid and massless ties, by name.");
export const springs = named(
  spring,
  "springs",
  "Springs between points or to the ground, by name.",
);
export const supports = named(
  support,
  "supports",
  "What is held fast; without any the frame is free.",
);
