import { z } from "zod";
import { KINDS } from "./quantity-kinds.ts";
import {
  ANY,
  count,
  finding,
  fraction,
  lengthRule,
  NOT_NEGATIVE,
  namesOf,
  notAChoice,
  oneOf,
  POSITIVE,
  plainNumber,
  quantity,
  wrongType,
} from "./schema-fields.ts";
import { section, twoLengths } from "./schema-shapes.ts";

/** Motors, propellers, and what they shake with. */

const mass = (meaning: string) => quantity(KINDS.mass, POSITIVE, meaning);
const massOrNone = (meaning: string) => quantity(KINDS.mass, NOT_NEGATIVE, meaning);
const height = (meaning: string) => quantity(KINDS.length, ANY, meaning);
const speed = (meaning: string) => quantity(KINDS.speed, POSITIVE, meaning);

const motor = section("a motor", {
  mass: mass("Mass of one motor without screws."),
  cgHeight: height("Height of its centre of gravity above the middle of the arm."),
  screwMass: massOrNone("Mass of the screws of one motor. Default: 0.").default(0),
  bellMass: massOrNone("Mass of the turning part. Default: estimated.").exactOptional(),
  size: twoLengths(
    "two lengths [diameter, height]",
    "Diameter and height of the motor.",
  ).exactOptional(),
  kv: quantity(KINDS.kv, POSITIVE, "Speed per volt without load."),
});

const propeller = section("a propeller", {
  mass: mass("Mass of one propeller."),
  nutMass: massOrNone("Mass of its nut. Default: 0.").default(0),
  diameter: quantity(KINDS.length, POSITIVE, "Diameter."),
  pitch: quantity(KINDS.length, POSITIVE, "Pitch.").exactOptional(),
  blades: count("Number of blades.", 1, 12),
  planeHeight: height("Height of the propeller's plane above the middle of the arm."),
  thrustCoefficient: plainNumber("CT in thrust = CT rho n^2 D^4, n in rev/s.", "0.15", {
    above: 0,
    most: 1,
  }),
});

const speeds = section("the speeds", {
  idle: speed("Lowest speed in flight.").exactOptional(),
  hover: speed("Speed in hover. Default: from mass and thrust.").exactOptional(),
  full: speed(
    "Speed at full throttle. Default: from kv, cells and loadedSpeedFraction.",
  ).exactOptional(),
}).superRefine(({ idle, hover, full }, context) => {
  const order = [
    ["idle", idle],
    ["hover", hover],
    ["full", full],
  ] as const;
  const given = order.filter(([, value]) => value !== undefined) as [string, number][];
  given.forEach(([key, value], i) => {
    if (i === 0 || value > given[i - 1][1]) return;
    const message = `The ${key} speed must be higher than the ${given[i - 1][0]} speed.`;
    context.addIssue(finding(message, [key]));
  });
});

export const side = () =>
  oneOf(["above", "below"], "Which side of its part it is on. Default: above.").default("above");

export const propulsion = section("the propulsion", {
  arms: namesOf("an arm", "The arms that carry motors. Default: every arm.").exactOptional(),
  side: side(),
  frontLeftTurns: oneOf(
    ["clockwise", "anticlockwise"],
    "How the front left propeller turns, seen from above; its neighbours turn the other way. Default: anticlockwise.",
  ).default("anticlockwise"),
  motor: motor.describe("One motor."),
  propeller: propeller.describe("One propeller."),
  cells: count("Cells of the battery in series.", 1, 28),
  cellVoltage: quantity(
    KINDS.voltage,
    POSITIVE,
    "Voltage of one cell under load. Default: 3.7 V.",
  ).prefault("3.7 V"),
  loadedSpeedFraction: fraction(
    "Full-throttle speed with the propeller as a share of kv times voltage. Default: 0.75.",
    { above: 0, most: 1 },
  ).default(0.75),
  speeds: speeds.prefault({}).describe("Speeds where they are known better than the estimate."),
}).describe("Motors and propellers, the same on every arm.");

const order = section("an order", {
  order: plainNumber("Multiple of the motor's speed, for example 2.", "2", POSITIVE),
  of: oneOf(["thrust", "side force", "torque"], "What ripples."),
  fraction: fraction("Size, as a share of the steady thrust (or torque)."),
});

export const excitation = section("the excitation", {
  balanceGrade: quantity(
    KINDS.balanceGrade,
    NOT_NEGATIVE,
    "Balance grade G of ISO 21940-11 at full speed, for motor and propeller as bought. Default: 16.",
  )
    // grades are written in mm/s everywhere: the one quantity that does not come out in SI
    .transform((metresPerSecond) => Number((metresPerSecond * 1000).toPrecision(12)))
    .prefault(16),
  unbalance: quantity(
    KINDS.unbalance,
    NOT_NEGATIVE,
    "Unbalance of one rotor, in place of the grade.",
  ).exactOptional(),
  thrustRipple: fraction(
    "Thrust ripple at blade pass. Default: 0.03, common practice, no source.",
  ).default(0.03),
  torqueRipple: fraction(
    "Torque ripple at blade pass. Default: 0.03, common practice, no source.",
  ).default(0.03),
  orders: z
    .array(order, { error: (issue) => wrongType(issue.input, "a list of orders, each in { }") })
    .default([])
    .describe("Further orders of the motor's speed."),
})
  .prefault({})
  .describe("What shakes the frame, per motor.");

const MIXES = ["mostly hover", "cruise", "hard flying"] as const;

const mixPart = section("a part of the flight mix", {
  speed: speed("Motor speed."),
  weight: plainNumber("Weight, on any scale.", "1", POSITIVE),
});

export const flightMix = z
  .union(
    [
      z.enum(MIXES),
      z.array(mixPart).min(1, lengthRule("Write at least one speed with its weight.")),
    ],
    {
      error: (issue) => (Array.isArray(issue.input) ? undefined : notAChoice(issue.input, MIXES)),
    },
  )
  .default("mostly hover")
  .describe(
    "How the frame is flown: in words, or a list of speeds with weights. Default: mostly hover.",
  );
