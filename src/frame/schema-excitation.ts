import { z } from "zod";
import { KINDS } from "./quantity-kinds.ts";
import {
  fraction,
  lengthRule,
  NOT_NEGATIVE,
  nameOf,
  notAChoice,
  oneOf,
  POSITIVE,
  plainNumber,
  quantity,
  text,
  wrongType,
} from "./schema-fields.ts";
import { section } from "./schema-shapes.ts";

/** What the motors shake with, and how the frame is flown. */

const grade = (meaning: string, least: typeof POSITIVE | typeof NOT_NEGATIVE) =>
  quantity(KINDS.balanceGrade, least, meaning)
    // grades are written in mm/s everywhere: the one quantity that does not come out in SI
    .transform((metresPerSecond) => Number((metresPerSecond * 1000).toPrecision(12)));

const ripple = (what: string, preset: number) =>
  fraction(
    `${what}, as a share of the mean. Default: ${preset}, common practice, no source.`,
  ).default(preset);

const order = section("an order", {
  order: plainNumber("Multiple of the motor's speed, for example 2.", "2", {
    above: 0,
    most: 1000,
  }),
  of: oneOf(
    ["thrust", "side force", "torque", "rotating moment"],
    "What ripples: thrust and torque along and about the shaft; a side force or a moment in the propeller's plane that turns with it.",
  ),
  fraction: fraction(
    "Size, as a share of the steady thrust; of the steady torque for torque; of the thrust at 0.7 of the radius for a rotating moment.",
  ),
});

const whichMotor = nameOf(
  "a motor",
  'The motor it happens to, such as "front left motor". Default: each in turn, the worst counts.',
).exactOptional();

const badPropeller = section("the bad propeller", {
  motor: whichMotor,
  grade: grade(
    "Its balance grade G of ISO 21940-11 at full speed. Default: 40, a nicked blade; common practice, no source.",
    POSITIVE,
  ).prefault(40),
});

const lostTip = section("the lost tip", {
  motor: whichMotor,
  massShare: fraction(
    "Mass lost at 0.9 of the radius, as a share of one blade's mass, at most 0.25. Default: 0.02, common practice, no source.",
    { above: 0, most: 0.25 },
  ).default(0.02),
});

export const excitation = section("the excitation", {
  balanceGrade: grade(
    "Balance grade G of ISO 21940-11 at full speed, for motor and propeller as bought. Default: 16.",
    NOT_NEGATIVE,
  ).prefault(16),
  unbalance: quantity(
    KINDS.unbalance,
    NOT_NEGATIVE,
    "Unbalance of one rotor, in place of the grade.",
  ).exactOptional(),
  bladeDifference: ripple(
    "Thrust that the blades do not share evenly, once per turn at 0.7 of the radius",
    0.02,
  ),
  thrustRipple: ripple("Thrust ripple at blade pass", 0.03),
  torqueRipple: ripple("Torque ripple at blade pass", 0.03),
  thrustRippleDouble: ripple("Thrust ripple at twice blade pass", 0.01),
  torqueRippleDouble: ripple("Torque ripple at twice blade pass", 0.01),
  orders: z
    .array(order, { error: (issue) => wrongType(issue.input, "a list of orders, each in { }") })
    .default([])
    .describe("Further orders of the motor's speed."),
  motorSpread: fraction(
    "Standard deviation of the motors' speeds from each other in steady flight, as a share of the speed, at most 0.2. Default: 0.03, common practice, no source.",
    { least: 0, most: 0.2 },
  ).default(0.03),
  badPropeller: badPropeller
    .prefault({})
    .describe("A propeller that is nicked or badly balanced, looked at beside the normal state."),
  lostTip: lostTip
    .prefault({})
    .describe("A propeller that lost a bit of one blade's tip, looked at beside the normal state."),
})
  .prefault({})
  .describe("What shakes the frame, per motor.");

const MIXES = ["mostly hover", "cruise", "hard flying"] as const;

const mixPart = section("a part of the flight mix", {
  speed: quantity(KINDS.speed, POSITIVE, "Motor speed, the middle of this part."),
  weight: plainNumber("Weight, on any scale up to a million.", "1", { above: 0, most: 1e6 }),
  spread: fraction(
    "Standard deviation of the speed in this part, as a share of it, at most 0.5. Default: 0.03, common practice, no source.",
    { least: 0, most: 0.5 },
  ).default(0.03),
  name: text("Name of this part. Default: its number.", 40)
    .min(1, lengthRule("A name cannot be empty: leave it out."))
    .exactOptional(),
});

const list = z.array(mixPart).min(1, lengthRule("Write at least one speed with its weight."));

/** The shares and speeds are those of `excitation/mix.ts`; a test compares them. */
const MIX_HELP = [
  "How the frame is flown: in words, or a list of speeds with weights (in any order; parts of the same speed add up).",
  "mostly hover: 70 % around hover speed, 25 % around 1.25 times hover, 5 % full throttle.",
  "cruise: 25 % around hover, 65 % around 1.25 times hover, 10 % full throttle.",
  "hard flying: 30 % around hover, 40 % around 1.6 times hover, 30 % full throttle.",
  "All common practice, no source. Default: mostly hover.",
].join(" ");

export const flightMix = z
  .union([z.enum(MIXES), list], {
    error: (issue) => (Array.isArray(issue.input) ? undefined : notAChoice(issue.input, MIXES)),
  })
  .default("mostly hover")
  .describe(MIX_HELP);
