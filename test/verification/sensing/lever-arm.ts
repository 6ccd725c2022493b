/**
 * An accelerometer away from the centre of gravity of a craft that turns: what it reads, and the
 * attitude it seems to see.
 */

import type { Vec3 } from "../../../src/model/types.ts";
import type { Case, Family } from "../case.ts";
import { CONVENTIONS, EVERYTHING, STEP_BY_STEP } from "./lever-arm-in-full.ts";
import {
  aft,
  below,
  LEVEL,
  MODEL,
  rate,
  readingChecks,
  readingOf,
  SOURCE,
  ZERO,
} from "./readings.ts";
import { WHY_DIGITS } from "./response-checks.ts";

/** Along x forward, y right, z down; SI. */
interface Flight {
  readonly name: string;
  /** sensor from the centre of gravity */
  readonly r: Vec3;
  readonly omega?: Vec3;
  readonly alpha?: Vec3;
  /** fx fy fz (m/s^2), apparent roll and pitch (deg) */
  readonly reading: readonly string[];
}

const YAWS: readonly Flight[] = [
  {
    name: "30 mm aft, yaw 400 deg/s right",
    r: aft(30),
    omega: rate(0, 0, 400),
    reading: ["1.462163615", "0.000000000", "-9.806650000", "0.00000000", "8.48028232"],
  },
  {
    name: "30 mm aft, yaw 400 deg/s left",
    r: aft(30),
    omega: rate(0, 0, -400),
    reading: ["1.462163615", "0.000000000", "-9.806650000", "0.00000000", "8.48028232"],
  },
  {
    name: "30 mm forward, yaw 400 deg/s",
    r: aft(-30),
    omega: rate(0, 0, 400),
    reading: ["-1.462163615", "0.000000000", "-9.806650000", "0.00000000", "-8.48028232"],
  },
  {
    name: "30 mm right, yaw 400 deg/s",
    r: [0, 0.03, 0],
    omega: rate(0, 0, 400),
    reading: ["0.000000000", "-1.462163615", "-9.806650000", "8.48028232", "0.00000000"],
  },
  {
    name: "30 mm left, yaw 400 deg/s",
    r: [0, -0.03, 0],
    omega: rate(0, 0, 400),
    reading: ["0.000000000", "1.462163615", "-9.806650000", "-8.48028232", "0.00000000"],
  },
  {
    name: "10 mm aft, yaw 400 deg/s",
    r: aft(10),
    omega: rate(0, 0, 400),
    reading: ["0.487387872", "0.000000000", "-9.806650000", "0.00000000", "2.84524375"],
  },
  {
    name: "5 mm aft, yaw 200 deg/s",
    r: aft(5),
    omega: rate(0, 0, 200),
    reading: ["0.060923484", "0.000000000", "-9.806650000", "0.00000000", "0.35594353"],
  },
  {
    name: "30 mm aft, yaw 800 deg/s",
    r: aft(30),
    omega: rate(0, 0, 800),
    reading: ["5.848654460", "0.000000000", "-9.806650000", "0.00000000", "30.81171414"],
  },
];

const ACCELERATIONS: readonly Flight[] = [
  {
    name: "30 mm aft, yaw +100 rad/s^2 (nose right)",
    r: aft(30),
    alpha: [0, 0, 100],
    reading: ["0.000000000", "-3.000000000", "-9.806650000", "17.00965031", "0.00000000"],
  },
  {
    name: "30 mm aft, pitch +100 rad/s^2 (nose up)",
    r: aft(30),
    alpha: [0, 100, 0],
    reading: ["0.000000000", "0.000000000", "-6.806650000", "0.00000000", "0.00000000"],
  },
  {
    name: "20 mm below, roll +50 rad/s^2 (right side down)",
    r: below(20),
    alpha: [50, 0, 0],
    reading: ["0.000000000", "-1.000000000", "-9.806650000", "5.82241827", "0.00000000"],
  },
  {
    name: "20 mm below, pitch +50 rad/s^2 (nose up)",
    r: below(20),
    alpha: [0, 50, 0],
    reading: ["1.000000000", "0.000000000", "-9.806650000", "0.00000000", "5.82241827"],
  },
];

const RATES: readonly Flight[] = [
  {
    name: "20 mm below, roll 600 deg/s",
    r: below(20),
    omega: rate(600, 0, 0),
    reading: ["0.000000000", "0.000000000", "-11.999895422", "0.00000000", "0.00000000"],
  },
  {
    name: "30 mm aft, roll 300 and yaw 400 deg/s",
    r: aft(30),
    omega: rate(300, 0, 400),
    reading: ["1.462163615", "0.000000000", "-10.903272711", "0.00000000", "7.63797786"],
  },
];

function flights(name: string, rows: readonly Flight[]): Case {
  return {
    name,
    source: `${SOURCE}.`,
    model: `${MODEL} Craft level, centre of gravity at rest.`,
    why: WHY_DIGITS,
    checks: rows.flatMap((row) => readingChecks(`, ${row.name}`, row.reading)),
    solve: () =>
      rows.flatMap(({ r, omega = ZERO, alpha = ZERO }) =>
        readingOf({ acceleration: ZERO, omega, alpha }, r, LEVEL),
      ),
  };
}

export const LEVER_ARM: Family = {
  title: "Accelerometer away from the centre of gravity",
  source: "rigid-body kinematics",
  cases: [
    flights("Sensor off the centre of a level craft: steady yaw", YAWS),
    flights("Sensor off the centre of a level craft: angular acceleration", ACCELERATIONS),
    flights("Sensor off the centre of a level craft: steady roll", RATES),
    EVERYTHING,
    STEP_BY_STEP,
    CONVENTIONS,
  ],
};
