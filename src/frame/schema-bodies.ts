import { KINDS } from "./quantity-kinds.ts";
import {
  ANY,
  copies,
  lossFactor,
  NOT_NEGATIVE,
  namesOf,
  oneOf,
  POSITIVE,
  quantity,
  text,
} from "./schema-fields.ts";
import { boxSize, named, points2, section, twoLengths, vec3 } from "./schema-shapes.ts";
import type { InertiaDef } from "./types.ts";

/** Batteries, cameras, boards, payload: rigid bodies and spread masses. */

const moment = (axis: string) =>
  quantity(KINDS.inertia, NOT_NEGATIVE, `Moment of inertia about ${axis}.`);
const product = (name: string) =>
  quantity(
    KINDS.inertia,
    ANY,
    `Entry ${name} of the inertia tensor, minus the integral. Default: 0.`,
  ).default(0);

const inertia = section("the inertia of a body", {
  xx: moment("x"),
  yy: moment("y"),
  zz: moment("z"),
  xy: product("xy"),
  xz: product("xz"),
  yz: product("yz"),
}).refine(isPossibleTensor, {
  error:
    "This inertia is not possible: the products xy, xz, yz are too large for the moments xx, yy, zz.",
});

/** No axis may have a negative moment: every principal minor is zero or more (with some slack). */
function isPossibleTensor({ xx, yy, zz, xy, xz, yz }: InertiaDef): boolean {
  const slack = -1e-9;
  const pairs = [
    [xx, yy, xy],
    [xx, zz, xz],
    [yy, zz, yz],
  ];
  const determinant =
    xx * (yy * zz - yz * yz) - xy * (xy * zz - yz * xz) + xz * (xy * yz - yy * xz);
  const size = Math.max(xx, yy, zz);
  return (
    pairs.every(([a, b, c]) => a * b - c * c >= slack * size * size) &&
    determinant >= slack * size ** 3
  );
}

const softMount = section("a soft mount", {
  bounce: quantity(KINDS.frequency, POSITIVE, "Frequency at which the body bounces on its mount."),
  sway: quantity(
    KINDS.frequency,
    POSITIVE,
    "Frequency at which it sways sideways. Default: 0.7 of the bounce.",
  ).exactOptional(),
  lossFactor: lossFactor("Loss factor of the mount. Default: 0.2.").default(0.2),
}).transform((soft) => ({ ...soft, sway: soft.sway ?? 0.7 * soft.bounce }));

// which of these fields go together is checked in `body-fields.ts`, on the raw file
const body = section("a body", {
  mass: quantity(KINDS.mass, NOT_NEGATIVE, "Mass of one body; zero only for a rigidly held one."),
  at: vec3("Centre of gravity [x, y, z]. May be left out for a body on a point.").exactOptional(),
  size: boxSize("Size of the box [along x, along y, along z]; gives the inertia.").exactOptional(),
  inertia: inertia
    .describe("Moments about the centre of gravity, where the box is not good enough.")
    .exactOptional(),
  on: namesOf(
    "a plate, an arm or a point",
    "What carries it: one name; a list for a smeared mass.",
  ),
  hold: oneOf(
    ["rigid", "spread", "soft", "smeared"],
    "rigid: screwed down; spread: glued or taped on, adds mass but no stiffness; soft: on rubber or foam; smeared: shared out evenly over the named parts. Default: rigid.",
  ).default("rigid"),
  screws: points2("Where it is screwed down [x, y], one or a list.").exactOptional(),
  footprint: twoLengths(
    "two lengths [along x, along y]",
    "Size of the patch it rests on [along x, along y]. Default: from size.",
  ).exactOptional(),
  soft: softMount.describe('The soft mount; goes with hold "soft".').exactOptional(),
  copies: copies(),
  note: text("A remark.").default(""),
});

export const bodies = named(
  body,
  "bodies",
  "Batteries, cameras, boards and other masses, by name.",
);
