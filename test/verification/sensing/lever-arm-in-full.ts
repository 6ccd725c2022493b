/** Single flights seen from several sides: everything at once, one yaw step by step, other axes. */

import {
  accelerationAt,
  type RigidMotion,
  specificForce,
} from "../../../src/attitude/specific-force.ts";
import { type Attitude, gravityInBody, steadyYawTilt } from "../../../src/attitude/tilt.ts";
import type { Vec3 } from "../../../src/model/types.ts";
import { type Case, type Check, within } from "../case.ts";
import {
  aft,
  DEGREE,
  LEVEL,
  MODEL,
  rate,
  readingChecks,
  readingOf,
  SOURCE,
  turned,
  turnedMotion,
  ZERO,
} from "./readings.ts";
import { digits, inDegrees, WHY_DIGITS } from "./response-checks.ts";

/** Along x forward, y right, z down; SI. */
const MOTION: RigidMotion = {
  acceleration: [0.5, -0.2, 0.1],
  omega: [3, -2, 6.98],
  alpha: [20, -15, 40],
};
const PLACE: Vec3 = [-0.03, 0.012, -0.008];
const TILTED: Attitude = { roll: 5 * DEGREE, pitch: -3 * DEGREE };

export const EVERYTHING: Case = {
  name: "A sensor off all axes of a tilted craft that turns and accelerates",
  source: `${SOURCE}; the acceleration by hand.`,
  model:
    `${MODEL} r = (-30, 12, -8) mm, omega = (3, -2, 6.98) rad/s, alpha = (20, -15, 40) rad/s^2, ` +
    "a = (0.5, -0.2, 0.1) m/s^2, true roll 5 deg, pitch -3 deg.",
  why: "One unit of the last digit given; the accelerations are exact decimals.",
  checks: [
    ...["1.482092", "-1.6409648", "-0.80172"].map((reference, i) => ({
      quantity: `acceleration ${"xyz"[i]}`,
      unit: "m/s^2",
      reference,
      tolerance: within(5e-15),
    })),
    ...readingChecks("", [
      "0.968851595",
      "-2.494499320",
      "-10.557664205",
      "13.29369472",
      "5.10346729",
    ]),
  ],
  solve: () => [
    ...turned(accelerationAt(turnedMotion(MOTION), turned(PLACE))),
    ...readingOf(MOTION, PLACE, TILTED),
  ],
};

export const STEP_BY_STEP: Case = {
  name: "30 mm aft in a yaw of 400 deg/s, step by step",
  source: "Closed form: tan(tilt) = rate^2 distance/g, g = 9.80665 m/s^2; 30-digit arithmetic.",
  model: "Centripetal acceleration per metre, at the sensor, in g, and the false tilt, nose up.",
  why: WHY_DIGITS,
  checks: [
    digits("rate squared", "1/s^2", "48.738787"),
    digits("forward acceleration", "m/s^2", "1.46216361"),
    digits("the same", "g", "0.1491"),
    digits("size of the specific force", "m/s^2", "9.915054546"),
    digits("false tilt", "deg", "8.48028232"),
    digits("false tilt, yaw to the other side", "deg", "8.48028232"),
    digits("false tilt at 10 mm", "deg", "2.84524375"),
    digits("false tilt at 5 mm and 200 deg/s", "deg", "0.35594353"),
    digits("false tilt at 800 deg/s", "deg", "30.81171414"),
  ],
  solve: () => {
    const yaw: RigidMotion = { acceleration: ZERO, omega: rate(0, 0, 400), alpha: ZERO };
    const forward = accelerationAt(yaw, aft(30))[0];
    const tilt = (degrees: number, mm: number) =>
      inDegrees(steadyYawTilt(degrees * DEGREE, mm * 1e-3));
    return [
      accelerationAt(yaw, aft(1000))[0],
      forward,
      forward / 9.80665,
      Math.hypot(...specificForce(yaw, aft(30), gravityInBody(LEVEL))),
      tilt(400, 30),
      tilt(-400, 30),
      tilt(400, 10),
      tilt(200, 5),
      tilt(800, 30),
    ];
  },
};

export const CONVENTIONS: Case = {
  name: "One reading along other axes and of the other sign",
  source: `${SOURCE}; axes turned by hand.`,
  model:
    "The sensor off all axes, as above: along the program's x forward, y left, z up; and from a sensor " +
    "along x forward, y right, z down that reports gravity less acceleration.",
  why: WHY_DIGITS,
  checks: [
    ...axes("y left, z up", ["0.968851595", "2.494499320", "10.557664205"]),
    ...axes("gravity less acceleration, y right, z down", [
      "-0.968851595",
      "2.494499320",
      "10.557664205",
    ]),
    digits("at rest and level, y left, z up: z", "m/s^2", "9.806650000"),
  ],
  solve: () => {
    const f = specificForce(turnedMotion(MOTION), turned(PLACE), gravityInBody(TILTED));
    const still: RigidMotion = { acceleration: ZERO, omega: ZERO, alpha: ZERO };
    return [
      ...f,
      ...turned(f).map((value) => -value),
      specificForce(still, turned(PLACE), gravityInBody(LEVEL))[2],
    ];
  },
};

function axes(name: string, references: readonly string[]): Check[] {
  return references.map((reference, i) => digits(`${name}: ${"xyz"[i]}`, "m/s^2", reference));
}
