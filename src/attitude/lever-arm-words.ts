/** What `lever-arm.ts` found, in sentences. */

import { GRAVITY } from "../excitation/speeds.ts";
import type { FalsePeak } from "./false-attitude.ts";
import type { LeverArm, MotionEffect } from "./lever-arm.ts";
import { degrees, millimetres, perSecond, twoDigits } from "./shown.ts";
import { SIDE_WORDS } from "./sides.ts";

/** Why a place never matters without self-level. */
export const RATE_FLIGHT =
  "In rate flight it has no effect: the accelerometer is not used, and the gyro of a rigid craft reads the same rate wherever it sits.";

/** Tilts that the words call none, rad. */
const LITTLE = (0.05 * Math.PI) / 180;

/** Two sentences: what the accelerometer reads in steady yaw, and what an attitude filter makes of it. */
export function leverArmWords(arm: LeverArm): readonly [string, string] {
  const place = placeWords(arm);
  const begun = `${place[0].toUpperCase()}${place.slice(1)}`;
  return [`${begun}: ${readingWords(arm)}.`, filterWords(arm)];
}

/** "31 mm ahead of the centre of gravity", "at the centre of gravity in the plan" */
export function placeWords({ side, distance }: Pick<LeverArm, "side" | "distance">): string {
  return side === "centre"
    ? "at the centre of gravity in the plan"
    : `${millimetres(distance)} ${SIDE_WORDS[side].place} the centre of gravity`;
}

function readingWords({ yawRate, reading, selfLevel }: LeverArm): string {
  if (yawRate === 0) return "without yaw the accelerometer reads no false tilt";
  const yaw = `at ${perSecond(yawRate)} of steady yaw`;
  const { lowSide, tilt } = reading;
  const { lifts, driftsTo, drift } = selfLevel;
  if (tilt < LITTLE || lowSide === "level" || lifts === "level" || driftsTo === "level") {
    return `${yaw} the accelerometer reads ${degrees(tilt)} of false tilt`;
  }
  return (
    `${yaw}, either way round, the accelerometer reads ${leaning(reading)}; ` +
    `self-level flight that took it at its word would lift ${SIDE_WORDS[lifts].part} ` +
    `and drift ${SIDE_WORDS[driftsTo].way} with ${twoDigits(drift / GRAVITY)} g`
  );
}

function filterWords({ filter, worst }: LeverArm): string {
  const kind = filter.estimate === "vector" ? "" : " that keeps roll and pitch as two angles";
  const { tilt } = worst.believed;
  const most =
    tilt < LITTLE ? degrees(tilt) : `at most ${leaning(worst.believed)}, in ${worst.motion}`;
  return (
    `Of the motions tried, an attitude filter of ${twoDigits(filter.timeConstant)} s${kind} ` +
    `believes ${most}; in rate flight it has no effect.`
  );
}

/**
 * One motion, as a clause: "in a roll snap to the right with a peak of 500 deg/s the accelerometer reads
 * up to 12 degrees left side down; the filter believes at most 0.97 degrees left side down".
 */
export function motionWords({ motion, static: reading, believed }: MotionEffect): string {
  if (reading.lowSide === "level" || reading.tilt < LITTLE) {
    return `in ${motion} the accelerometer reads no false tilt`;
  }
  const most = believed.tilt < LITTLE ? degrees(believed.tilt) : `at most ${leaning(believed)}`;
  return `in ${motion} the accelerometer reads up to ${leaning(reading)}; the filter believes ${most}`;
}

/** "0.97 degrees left side down" */
function leaning({ tilt, lowSide }: Pick<FalsePeak, "tilt" | "lowSide">): string {
  return lowSide === "level" ? degrees(tilt) : `${degrees(tilt)} ${SIDE_WORDS[lowSide].low}`;
}
