import { KINDS } from "./quantity-kinds.ts";
import {
  ANY,
  count,
  finding,
  fraction,
  NOT_NEGATIVE,
  namesOf,
  oneOf,
  POSITIVE,
  plainNumber,
  quantity,
} from "./schema-fields.ts";
import { section, twoLengths } from "./schema-shapes.ts";

/** Motors, propellers and their speeds; what they shake with is in `schema-excitation.ts`. */

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
