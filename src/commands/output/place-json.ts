/** A ranked place as fields of a JSON document. */

import type { Excitation } from "../../excitation/types.ts";
import type { CaseReading, Cause, ModalMotion, RankedCandidate } from "../../ranking/types.ts";
import { MOUNT_MOTIONS, type MountMode } from "../../response/mount-frequencies.ts";
import type { Clipping } from "../../sensing/clipping.ts";
import { toDegrees, toRpm } from "../terminal/numbers.ts";
import { filterFields } from "./burden-json.ts";
import { leverArmFields } from "./lever-arm-json.ts";

/**
 * "gyro..." is the true motion of the place, "sensedGyro..." what the chip passes on, and so for the
 * accelerometer.
 *
 * @param quietest true motion of the quietest place that is not to be avoided, deg/s rms
 */
export function placeFields(
  ranked: RankedCandidate,
  excitation: Excitation,
  quietest: number,
): Record<string, unknown> {
  const { candidate, sensed, scoreParts, delayOver, rectified, clipping } = ranked;
  return {
    place: ranked.place,
    tied: ranked.tied,
    name: candidate.name,
    plate: ranked.plate,
    side: candidate.side > 0 ? "above" : "below",
    chipPositionM: candidate.chip,
    namedInFile: candidate.named,
    stackDrawnHere: candidate.designed,
    foundBySearch: ranked.found,
    scoreDb: ranked.score,
    scorePartsDb: {
      gyro: scoreParts.gyro,
      accelerometer: scoreParts.accelerometer,
      falseTilt: scoreParts.tilt,
    },
    sensedGyroDegPerSecRms: sensed.gyro,
    sensedGyroAtHoverDegPerSecRms: sensed.gyroAtHover,
    sensedGyroLevelDb: ranked.decibel,
    sensedGyroRangeDegPerSecRms: ranked.gyroRange,
    sensedAccelGRms: sensed.accel,
    gyroDegPerSecRms: ranked.gyro,
    gyroRollPitchYawDegPerSecRms: ranked.gyroAxes,
    gyroAtHoverDegPerSecRms: ranked.gyroAtHover,
    gyroLevelDb: 20 * Math.log10(ranked.gyro / quietest),
    aboveOneAndAHalfTimesHover: fastFields(ranked),
    accelGRms: ranked.accel,
    accelXyzGRms: ranked.accelAxes,
    accelLevelDb: ranked.accelDecibel,
    filter: filterFields(ranked.filter, excitation),
    delayOverBest: { lowPassAloneS: delayOver.without, withNotchesS: delayOver.with },
    fromCentreOfGravityInPlanM: ranked.fromCg,
    fromCentreOfGravityM: ranked.fromCg3d,
    leverArm: leverArmFields(ranked.leverArm),
    loopCouplings: ranked.couplings.map(({ axis, frequency, mode, gain }) => ({
      axis,
      frequencyHz: frequency,
      modeWithStackHere: mode,
      loopGain: gain,
    })),
    vibrationOffsets: {
      gyroDegPerSec: rectified.gyro,
      accelerometerG: rectified.accelerometer,
      tiltDeg: toDegrees(rectified.tilt),
    },
    clipping: {
      gyro: clippingFields(clipping.gyro, "DegPerSec"),
      accelerometer: clippingFields(clipping.accelerometer, "G"),
      accelerometerInSelfLevelFlight: clippingFields(clipping.levelling, "G"),
    },
    otherStates: ranked.cases.map((one) => caseFields(one, sensed.gyro)),
    motionsOnIsolators: mountModeFields(ranked.mountModes),
    flags: ranked.flags.map(({ kind, hard, text }) => ({ kind, avoid: hard, text })),
    causes: ranked.causes.map(causeFields),
    modeMotion: ranked.motion.map(motionFields),
    spectra: [
      ...ranked.spectra.map(({ order, gyro, accel }) => spectrumFields(order, gyro, accel)),
      spectrumFields("all together", ranked.gyroTotal, ranked.accelTotal),
    ],
  };
}

/** What those speeds take of the flight, and what they make of the noise. */
function fastFields({ fast }: RankedCandidate): unknown {
  return { flightShare: fast.flight, gyroNoisePowerShare: fast.power };
}

/** null where no speed counts. */
function clippingFields(found: Clipping | undefined, unit: "DegPerSec" | "G"): unknown {
  if (found === undefined) return null;
  return {
    axis: ["x", "y", "z"][found.axis],
    speedRpm: toRpm(found.speed),
    [`peak${unit}`]: found.peak,
    [`range${unit}`]: found.range,
    shareOfRange: found.share,
    clipped: found.clipped,
  };
}

function caseFields({ name, text, motor, gyro }: CaseReading, normal: number): unknown {
  return { name, text, motor, sensedGyroDegPerSecRms: gyro, timesNormal: gyro / normal };
}

/** null where the stack is screwed down. */
export function mountModeFields(modes: readonly MountMode[] | undefined): unknown {
  if (modes === undefined) return null;
  return modes.map(({ motion, frequency, shares }) => ({
    motion,
    frequencyHz: frequency,
    kineticEnergyShares: Object.fromEntries(MOUNT_MOTIONS.map((name, i) => [name, shares[i]])),
  }));
}

/** Levels at the speeds of `speedGridRpm`. */
function spectrumFields(order: string, gyro: Float64Array, accel: Float64Array): unknown {
  return { order, gyroDegPerSecRms: gyro, accelGRms: accel };
}

/** Mode 0 is the whole craft moving as one, which no speed meets. */
function causeFields(cause: Cause): unknown {
  return {
    modeWithStackHere: cause.mode,
    frequencyHz: cause.frequency,
    modeName: cause.modeName,
    order: cause.order,
    gyroPowerShare: cause.share,
    speedRpm: cause.mode === 0 ? null : cause.rpm,
    met: cause.met,
    parts: cause.parts.map(({ name, share }) => ({ name, strainEnergyShare: share })),
    remedy: cause.remedy,
  };
}

function motionFields(motion: ModalMotion): unknown {
  return {
    mode: motion.mode,
    frequencyHz: motion.frequency,
    rotationRadPerRootKgM: motion.rotation,
    displacementMPerRootKgM: motion.displacement,
    rotationShare: motion.rotationShare,
    displacementShare: motion.displacementShare,
    calmestRotationShare: motion.calmestShare,
  };
}
