import { z } from "zod";
import { KINDS } from "./quantity-kinds.ts";
import {
  ANY,
  coordinate,
  copies,
  count,
  finding,
  fraction,
  lengthRule,
  lossFactor,
  NOT_NEGATIVE,
  nameOf,
  namesOf,
  POSITIVE,
  plainNumber,
  quantity,
  text,
  wrongType,
} from "./schema-fields.ts";
import { named, section, sectionBy, vec2 } from "./schema-shapes.ts";

/** Arms: width profile, slots, and the joint at the root. */

const width = quantity(KINDS.length, POSITIVE, "Width.");
const along = (meaning: string) => fraction(`${meaning} 0 is the root, 1 the tip.`);
const station = z.tuple([along("Where, as a fraction of the free length."), width], {
  error: (issue) => wrongType(issue.input, "a pair [where from 0 to 1, width]"),
});

interface Station {
  readonly s: number;
  readonly width: number;
}

const widthProfile = z
  .union([
    width,
    z.tuple([width, width], {
      error: (issue) => wrongType(issue.input, "a width, or a list [root, tip]"),
    }),
    z.array(station).min(2, lengthRule("A width profile needs at least two pairs [where, width].")),
  ])
  .transform((given): readonly Station[] => {
    if (typeof given === "number") return straight(given, given);
    const [first, second] = given;
    if (typeof first === "number" && typeof second === "number") return straight(first, second);
    return (given as readonly (readonly [number, number])[]).map(([s, width]) => ({ s, width }));
  })
  .superRefine((profile, context) => {
    const fail = (at: number, message: string) => context.addIssue(finding(message, [at]));
    const last = profile.length - 1;
    if (profile[0].s !== 0) fail(0, "The first pair must be at the root: [0, width].");
    if (profile[last].s !== 1) fail(last, "The last pair must be at the tip: [1, width].");
    const back = profile.findIndex(({ s }, i) => i > 0 && s <= profile[i - 1].s);
    if (back > 0)
      fail(back, "The pairs must run from root to tip, each further out than the one before.");
  })
  .describe(
    "Width of the arm: one width, [root, tip] for a taper, or pairs [where, width] with where from 0 at the root to 1 at the tip. Bare numbers in mm.",
  );

function straight(root: number, tip: number): readonly Station[] {
  return [
    { s: 0, width: root },
    { s: 1, width: tip },
  ];
}

const slot = section("a slot", {
  from: along("Where the slot begins, as a fraction of the free length."),
  to: along("Where it ends."),
  width: quantity(KINDS.length, POSITIVE, "Width of the slot."),
}).refine(({ from, to }) => from < to, {
  path: ["to"],
  error: "A slot must end further out than it begins.",
});

const joint = sectionBy(
  "kind",
  "an arm joint",
  ["bolted", "one piece", "point"],
  [
    section("a bolted joint", {
      kind: z.literal("bolted").describe("The arm is screwed to one plate or between two."),
      plates: namesOf("a plate", "The plate or plates that hold the arm."),
      inserted: quantity(
        KINDS.length,
        POSITIVE,
        "Length of the arm on or between the plates, inside the root.",
      ),
      kappa: plainNumber(
        "Stiffness of the clamp: the root turns on a spring kappa E I / L. Default: 12.8, which lowers the arm's first frequency by about 10 %.",
        "12.8",
        POSITIVE,
      ).default(12.8),
      lossFactor: lossFactor(
        "Loss factor of the clamp. Default: 0.05, common practice, no source.",
      ).default(0.05),
    }),
    section("a one-piece joint", {
      kind: z
        .literal("one piece")
        .describe("The arm is cut from the plate: no clamp between them."),
      plate: nameOf("a plate", "The plate the arm is cut from."),
      inserted: quantity(
        KINDS.length,
        NOT_NEGATIVE,
        "How far the arm's strip reaches into the plate. Default: half the root width.",
      ).exactOptional(),
    }),
    section("a joint at a point", {
      kind: z.literal("point").describe("The arm's root is fixed to a named point."),
      point: nameOf("a point", "The named point."),
    }),
  ],
);

const ALONG_THE_ARM = "along the arm";
const warpAngle = quantity(KINDS.angle, ANY, "Angle from forward towards left.");
const warp = z
  .union([z.literal(ALONG_THE_ARM), warpAngle], {
    error: ({ input }) =>
      typeof input === "string" && /^\s*[\d.+-]/.test(input)
        ? undefined
        : wrongType(input, '"along the arm" or an angle such as "45 deg"'),
  })
  .default(ALONG_THE_ARM)
  .describe(
    'Direction of the cloth\'s warp: "along the arm", or an angle from forward towards left. Bare number in deg. Default: along the arm.',
  );

const arm = section("an arm", {
  material: nameOf("a material", "A material of this file or of the built-in library."),
  thickness: quantity(KINDS.length, POSITIVE, "Thickness of the arm."),
  z: coordinate("Height of the middle of the arm. Default: 0.").default(0),
  root: vec2("Where the free length begins [x, y]: the edge of the plates that hold it."),
  tip: vec2("The motor axis [x, y]."),
  copies: copies(),
  width: widthProfile,
  slots: z
    .array(slot, { error: (issue) => wrongType(issue.input, "a list of slots, each in { }") })
    .default([])
    .describe("Slots along the middle of the arm."),
  warp,
  motorPad: quantity(
    KINDS.length,
    POSITIVE,
    "Diameter of the disc under the motor.",
  ).exactOptional(),
  padFill: fraction("Share of that disc that is material. Default: 0.85.").default(0.85),
  elements: count(
    "Beam elements along the arm. Default: chosen by the program.",
    1,
    200,
  ).exactOptional(),
  joint: joint.describe("How the root is held."),
  note: text("A remark.").default(""),
}).superRefine((arm, context) => {
  const fail = (path: (string | number)[], message: string) =>
    context.addIssue(finding(message, path));
  if (arm.root[0] === arm.tip[0] && arm.root[1] === arm.tip[1]) {
    fail(["tip"], "The tip is at the same place as the root: the arm has no length.");
  }
  arm.slots.forEach((slot, i) => {
    const least = Math.min(widthAt(arm.width, slot.from), widthAt(arm.width, slot.to));
    if (slot.width >= least) {
      fail(
        ["slots", i, "width"],
        `This slot is as wide as the arm, which is ${millimetres(least)} there.`,
      );
    }
  });
});

/** Width of the arm at s, linear between the stations. */
function widthAt(profile: readonly Station[], s: number): number {
  const after = Math.max(
    1,
    profile.findIndex((station) => station.s >= s),
  );
  const [a, b] = [profile[after - 1], profile[after]];
  return a.width + ((s - a.s) / (b.s - a.s)) * (b.width - a.width);
}

function millimetres(length: number): string {
  return `${Number((length * 1000).toPrecision(4))} mm wide`;
}

export const arms = named(arm, "arms", "Straight arms from the plates to the motors, by name.");
