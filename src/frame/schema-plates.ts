import { z } from "zod";
import { KINDS } from "./quantity-kinds.ts";
import {
  ANY,
  COPIES,
  coordinate,
  copies,
  finding,
  fraction,
  nameOf,
  oneOf,
  POSITIVE,
  quantity,
  text,
  wrongType,
} from "./schema-fields.ts";
import { named, points2, polygon, section, sectionOf } from "./schema-shapes.ts";
import type { HoleDef } from "./types.ts";
import type { Copies, Vec2 } from "./types-basic.ts";

/** Plates and their holes. */

const roundHole = section("a round hole", {
  at: points2("Centre [x, y] of the hole, or a list of centres."),
  diameter: quantity(KINDS.length, POSITIVE, "Diameter of the hole."),
  copies: copies(),
}).transform((hole): HoleDef => ({ kind: "round", ...hole }));

const polygonHole = section("a cut-out", {
  outline: polygon(3, "Corners [x, y] of the cut-out in order."),
  copies: copies(),
}).transform((hole): HoleDef => ({ kind: "polygon", ...hole }));

const symmetry = oneOf(
  COPIES,
  'What the outline lists: "none", the whole plate; "left and right", the left half from front to rear; "front and rear", the front half; "all four corners", the front-left quarter. Default: none.',
).default("none");

const plate = section("a plate", {
  material: nameOf("a material", "A material of this file or of the built-in library."),
  thickness: quantity(KINDS.length, POSITIVE, "Thickness of the plate."),
  z: coordinate("Height of the middle of the plate."),
  // two corners can bound a half or a quarter; a whole plate needs three
  outline: polygon(2, "Corners [x, y] in order; see symmetry."),
  symmetry,
  holes: z
    .array(sectionOf("a hole", [roundHole, polygonHole]), {
      error: (issue) => wrongType(issue.input, "a list of holes, each in { }"),
    })
    .default([])
    .describe("Round holes and cut-outs. Leave out what `fill` already covers."),
  fill: fraction(
    "Share of the outline that is material, for the many small cut-outs. Default: 1.",
    {
      above: 0,
      most: 1,
    },
  ).default(1),
  warp: quantity(
    KINDS.angle,
    ANY,
    "Direction of the cloth's warp, from forward towards left. Default: 0.",
  ).default(0),
  note: text("A remark.").default(""),
}).superRefine(({ outline, symmetry }, context) => {
  const problem = outlineProblem(outline, symmetry);
  if (problem !== undefined) {
    context.addIssue(finding(problem.message, ["outline", ...problem.at]));
  }
});

interface OutlineProblem {
  readonly at: readonly number[];
  readonly message: string;
}

/** A half or a quarter must lie on its side of the mirror, or the mirrored plate crosses itself. */
function outlineProblem(outline: readonly Vec2[], symmetry: Copies): OutlineProblem | undefined {
  if (symmetry === "none" && outline.length < 3) {
    return { at: [], message: "An outline needs at least 3 corners [x, y]." };
  }
  const left = symmetry === "left and right" || symmetry === "all four corners";
  const front = symmetry === "front and rear" || symmetry === "all four corners";
  const wrong = outline.findIndex(([x, y]) => (left && y < 0) || (front && x < 0));
  if (wrong < 0) return undefined;
  const [half, rule] = left
    ? front
      ? ["front-left quarter", "neither x nor y can be negative"]
      : ["left half", "y cannot be negative"]
    : ["front half", "x cannot be negative"];
  const words = `With symmetry "${symmetry}" the outline lists the ${half} only, so ${rule}.`;
  return { at: [wrong], message: words };
}

export const plates = named(plate, "plates", "Flat plates, by name.");
