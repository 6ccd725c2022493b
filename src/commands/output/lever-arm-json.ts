/** A lever arm as fields of a JSON document. */

import type { FalsePeak } from "../../attitude/false-attitude.ts";
import type { LeverArm, MotionEffect } from "../../attitude/lever-arm.ts";
import { toDegrees } from "../terminal/numbers.ts";

/** Roll is positive with the right side down, pitch with the nose up. */
export function leverArmFields(arm: LeverArm): Record<string, unknown> {
  const { reading, selfLevel, settled } = arm;
  return {
    fromCentreOfGravityXyzM: arm.lever,
    inPlanM: arm.distance,
    side: arm.side,
    yawRateDegPerSec: toDegrees(arm.yawRate),
    falseTiltDeg: toDegrees(reading.tilt),
    falseRollDeg: toDegrees(reading.roll),
    falsePitchDeg: toDegrees(reading.pitch),
    lowSide: reading.lowSide,
    selfLevelLifts: selfLevel.lifts,
    selfLevelDriftsTo: selfLevel.driftsTo,
    selfLevelDriftMPerS2: selfLevel.drift,
    attitudeFilterTimeConstantS: arm.filter.timeConstant,
    settledTiltDeg: toDegrees(settled.tilt),
    worstMotion: arm.worst.motion,
    worstBelievedTiltDeg: toDegrees(arm.worst.believed.tilt),
    motions: arm.motions.map(motionFields),
    allowedTiltDeg: toDegrees(arm.error),
    allowedRadiusM: arm.radius,
    withinRadius: arm.within,
  };
}

function motionFields({ motion, static: read, believed, end }: MotionEffect): unknown {
  return {
    motion,
    read: peakFields(read),
    believed: peakFields(believed),
    endRollDeg: toDegrees(end.roll),
    endPitchDeg: toDegrees(end.pitch),
  };
}

function peakFields({ roll, pitch, tilt, time, lowSide }: FalsePeak): unknown {
  return {
    tiltDeg: toDegrees(tilt),
    rollDeg: toDegrees(roll),
    pitchDeg: toDegrees(pitch),
    timeS: time,
    lowSide,
  };
}
