/** The ranking for other programs: what `rank --json` prints. */

import type { Analysis } from "../../analyse.ts";
import type { Excitation } from "../../excitation/types.ts";
import type {
  Cause,
  Crossing,
  ModalMotion,
  Overhang,
  RankedCandidate,
  Ranking,
} from "../../ranking/types.ts";
import { toRpm } from "../terminal/numbers.ts";
import { documentText, type FrameIdentity, frameFields } from "./document.ts";
import { massFields, partFields } from "./mass.ts";
import { modesFields } from "./modes-json.ts";
import { excitationFields } from "./speeds.ts";

/** `report` is the file the report was written to; absent when none was written. */
export function rankingJson(
  analysis: Pick<Analysis, "modes" | "mass" | "warnings">,
  ranking: Ranking,
  excitation: Excitation,
  frame: FrameIdentity,
  report: string | undefined,
): string {
  return documentText("ranking", {
    ...frameFields(frame),
    report: report ?? null,
    verdict: ranking.verdict,
    places: ranking.candidates.map(placeFields),
    tieBandDb: ranking.tieBand,
    frequencyBandShare: ranking.frequencyBand,
    notes: ranking.notes,
    overhangs: ranking.overhangs.map(overhangFields),
    crossings: ranking.crossings.map(crossingFields),
    ...excitationFields(excitation),
    speedGridRpm: excitation.grid.map(toRpm),
    speedGridWeights: excitation.weights,
    mass: { ...massFields(analysis.mass), parts: partFields(analysis.mass.parts) },
    ...modesFields(analysis.modes),
    warnings: analysis.warnings,
  });
}

function placeFields(ranked: RankedCandidate): Record<string, unknown> {
  const { candidate, gyroAxes, accelAxes } = ranked;
  return {
    place: ranked.place,
    tied: ranked.tied,
    name: candidate.name,
    plate: ranked.plate,
    side: candidate.side > 0 ? "above" : "below",
    chipPositionM: candidate.chip,
    namedInFile: candidate.named,
    stackDrawnHere: candidate.designed,
    gyroDegPerSecRms: ranked.gyro,
    gyroRollPitchYawDegPerSecRms: gyroAxes,
    gyroRangeDegPerSecRms: ranked.gyroRange,
    gyroAtHoverDegPerSecRms: ranked.gyroAtHover,
    aboveOneAndAHalfTimesHover: fastFields(ranked),
    accelGRms: ranked.accel,
    accelXyzGRms: accelAxes,
    gyroLevelDb: ranked.decibel,
    accelLevelDb: ranked.accelDecibel,
    fromCentreOfGravityInPlanM: ranked.fromCg,
    fromCentreOfGravityM: ranked.fromCg3d,
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

/** Levels at the speeds of `speedGridRpm`. */
function spectrumFields(order: string, gyro: Float64Array, accel: Float64Array): unknown {
  return { order, gyroDegPerSecRms: gyro, accelGRms: accel };
}

/** Mode 0 is the whole craft moving as one, which no speed meets. */
function causeFields({ mode, frequency, modeName, order, share, rpm, met }: Cause): unknown {
  const speedRpm = mode === 0 ? null : rpm;
  return { mode, frequencyHz: frequency, modeName, order, gyroPowerShare: share, speedRpm, met };
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

function overhangFields(overhang: Overhang): unknown {
  return {
    plate: overhang.plate,
    direction: overhang.direction,
    lengthM: overhang.length,
    thicknessM: overhang.thickness,
    lastSupportAtM: overhang.supportAt,
    freeEndAtM: overhang.endAt,
    carriedMassKg: overhang.mass,
    mode: overhang.mode ?? null,
    frequencyHz: overhang.frequency ?? null,
    flagged: overhang.flagged,
    text: overhang.text,
  };
}

function crossingFields(crossing: Crossing): unknown {
  return {
    mode: crossing.mode,
    frequencyHz: crossing.frequency,
    modeName: crossing.modeName,
    order: crossing.order,
    speedRpm: crossing.rpm,
    fromHoverShare: crossing.fromHover,
    nearHover: crossing.nearHover,
  };
}
