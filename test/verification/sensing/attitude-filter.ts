/**
 * What an attitude filter makes of an accelerometer away from the centre of gravity, and the rules of
 * thumb. References by attitude_filter.py beside this file.
 */

import {
  type AttitudeFilter,
  filteredFalseAttitude,
} from "../../../src/attitude/attitude-filter.ts";
import type { MotionProfile } from "../../../src/attitude/motion-profile.ts";
import { rollSnap, yawReversal, yawTurn } from "../../../src/attitude/motions.ts";
import { radiusWithin, settledYawTilt, turnShare } from "../../../src/attitude/yaw-rules.ts";
import type { Vec3 } from "../../../src/model/types.ts";
import { type Case, type Family, withinAbsolute } from "../case.ts";
import { aft, DEGREE } from "./readings.ts";
import { digits, inDegrees, WHY_DIGITS } from "./response-checks.ts";

interface Flight {
  readonly name: string;
  readonly motion: MotionProfile;
  /** along x forward, y left, z up, m */
  readonly r: Vec3;
  /** s */
  readonly tau: number;
  /** roll and pitch at the end, deg */
  readonly angles: readonly [string, string];
  readonly vector: readonly [string, string];
}

const at = (degrees: number) => ({ yawRate: degrees * DEGREE });

const FLIGHTS: readonly Flight[] = [
  {
    name: "30 mm aft, yaw turn at 200 deg/s, 1 s",
    motion: yawTurn(at(200)),
    r: aft(30),
    tau: 1,
    angles: ["0.4926181906", "1.6486485479"],
    vector: ["0.0575202606", "0.1388289199"],
  },
  {
    name: "30 mm aft, yaw turn at 400 deg/s, 1 s",
    motion: yawTurn(at(400)),
    r: aft(30),
    tau: 1,
    angles: ["0.9824489118", "6.5492725370"],
    vector: ["0.0358860010", "0.1681480495"],
  },
  {
    name: "63 mm forward, yaw turn at 400 deg/s, 0.5 s",
    motion: yawTurn(at(400)),
    r: aft(-63),
    tau: 0.5,
    angles: ["-4.1157744903", "-13.1793986199"],
    vector: ["-0.3751450213", "-1.0547665233"],
  },
  {
    name: "30 mm aft, yaw reversal at 200 deg/s, 1 s",
    motion: yawReversal(at(200)),
    r: aft(30),
    tau: 1,
    angles: ["-0.1655038762", "1.2340139571"],
    vector: ["-0.0887779828", "0.1022106489"],
  },
  {
    name: "30 mm aft, yaw reversal at 400 deg/s, 1 s",
    motion: yawReversal(at(400)),
    r: aft(30),
    tau: 1,
    angles: ["-0.3300712523", "4.9019434402"],
    vector: ["-0.0155120797", "0.1437487754"],
  },
  {
    name: "63 mm forward, yaw reversal at 400 deg/s, 0.5 s",
    motion: yawReversal(at(400)),
    r: aft(-63),
    tau: 0.5,
    angles: ["2.6204441724", "-11.1812522087"],
    vector: ["0.2733515689", "-1.1357341786"],
  },
  {
    name: "20 mm above and 10 mm right, roll snap of 500 deg/s, 1 s",
    motion: rollSnap(),
    r: [0, -0.01, 0.02],
    tau: 1,
    angles: ["0.2030247400", "0.0000000000"],
    vector: ["0.0469815347", "0.0000000000"],
  },
];

const KINDS = {
  angles: {
    name: "An attitude filter of roll and pitch as two angles, at the end of a motion",
    source: "Integral over the past, adaptive quadrature in 20-digit arithmetic.",
    model: "e' = (m - e)/tau for the static false roll and pitch m.",
  },
  vector: {
    name: "An attitude filter of the vertical as a vector, at the end of a motion",
    source:
      "Taylor series of the filter's equation in a frame that stands still, 20-digit arithmetic.",
    model:
      "w' = (F - (F . w) w)/tau with F the direction of the specific force; sensor off the centre less " +
      "sensor at the centre.",
  },
} as const;

function flown(estimate: AttitudeFilter["estimate"]): Case {
  const { name, source, model } = KINDS[estimate];
  return {
    name,
    source,
    model:
      `${model} Turn: 0.2 s to the rate, 2 s held, 0.2 s to rest. Reversal: 0.2 s, 0.5 s held, 0.4 s to ` +
      "the other rate, 0.5 s held, 0.2 s. Snap: 0.1 s to the rate, 0.1 s to rest. Roll right side down, " +
      "pitch nose up.",
    why: "Steps of fourth order leave up to 7e-7 deg; half as much again.",
    checks: FLIGHTS.flatMap((flight) =>
      flight[estimate].map((reference, i) => ({
        quantity: `${i === 0 ? "roll" : "pitch"}, ${flight.name}`,
        unit: "deg",
        reference,
        tolerance: withinAbsolute(1e-6),
      })),
    ),
    solve: () =>
      FLIGHTS.flatMap(({ motion, r, tau }) => {
        const { roll, pitch } = filteredFalseAttitude(motion, r, {
          timeConstant: tau,
          estimate,
        }).end;
        return [inDegrees(roll), inDegrees(pitch)];
      }),
  };
}

const RULES: Case = {
  name: "Rules of thumb for a sensor off the centre",
  source:
    "Closed forms g tan(error)/rate^2 and 1 - exp(-T/tau), g = 9.80665 m/s^2; 20-digit arithmetic.",
  model:
    "Distance in the plan at which the static tilt of steady yaw reaches an error; share of a constant " +
    "false tilt that a lag takes up in a turn of length T.",
  why: WHY_DIGITS,
  checks: [
    digits("radius for 1 deg at 200 deg/s", "mm", "14.0484178973"),
    digits("radius for 1 deg at 400 deg/s", "mm", "3.51210447432"),
    digits("radius for 2 deg at 200 deg/s", "mm", "28.1053989276"),
    digits("radius for 5 deg at 400 deg/s", "mm", "17.6034479325"),
    digits("share, T 1 s, tau 1 s", "", "0.632120558829"),
    digits("share, T 2.4 s, tau 1 s", "", "0.909282046711"),
    digits("share, T 2 s, tau 4 s", "", "0.393469340287"),
  ],
  solve: () => [
    ...[
      [1, 200],
      [1, 400],
      [2, 200],
      [5, 400],
    ].map(([error, rate]) => radiusWithin(error * DEGREE, rate * DEGREE) * 1e3),
    turnShare(1, 1),
    turnShare(2.4, 1),
    turnShare(2, 4),
  ],
};

/** Rate (deg/s), distance (mm), tau (s); tilt and trailing angle (deg). */
const SETTLED: readonly (readonly [number, number, number, string, string])[] = [
  [200, 30, 1, "0.587800710657", "74.0238394126"],
  [400, 30, 1, "1.19839685696", "81.9346366675"],
  [400, 63, 2, "1.22338157770", "86.0891547098"],
  [800, 300, 1, "4.05009933775", "89.3197558971"],
];

const HELD: Case = {
  name: "What a vector filter settles at in a yaw held for good",
  source:
    "Zero of the filter's equation along the body axes by Newton's method, 20-digit arithmetic.",
  model:
    "-omega x u + (f - (f . u) u)/tau = 0 with f the direction of the specific force; tilt, and the angle " +
    "by which the side that looks low trails behind the sensor's.",
  why: WHY_DIGITS,
  checks: SETTLED.flatMap(([rate, mm, tau, tilt, trailing]) => {
    const where = `${mm} mm, ${rate} deg/s, tau ${tau} s`;
    return [digits(`tilt, ${where}`, "deg", tilt), digits(`trailing, ${where}`, "deg", trailing)];
  }),
  solve: () =>
    SETTLED.flatMap(([rate, mm, tau]) => {
      const { tilt, trailing } = settledYawTilt(rate * DEGREE, mm * 1e-3, tau);
      return [inDegrees(tilt), inDegrees(trailing)];
    }),
};

export const ATTITUDE_FILTER: Family = {
  title: "Attitude filter with its accelerometer off the centre of gravity",
  source: "filter equations in 20 digits",
  cases: [flown("vector"), flown("angles"), HELD, RULES],
};
