/** The ranking for other programs: what `rank --json` prints. */

import type { Analysis } from "../../analyse.ts";
import type { Excitation } from "../../excitation/types.ts";
import type {
  Crossing,
  MapPlace,
  MountRow,
  Overhang,
  RankedCandidate,
  Ranking,
} from "../../ranking/types.ts";
import type { FoldedBand } from "../../sensing/folding.ts";
import type { HowSure } from "../../study/how-sure.ts";
import { toDegrees, toRpm } from "../terminal/numbers.ts";
import { filterFields } from "./burden-json.ts";
import { documentText, type FrameIdentity, frameFields } from "./document.ts";
import { massFields, partFields } from "./mass.ts";
import { modesFields } from "./modes-json.ts";
import { mountModeFields, placeFields } from "./place-json.ts";
import { howSureFields } from "./rank-sure-json.ts";
import { isToAvoid } from "./shown-places.ts";
import { excitationFields } from "./speeds.ts";

/** Files written beside the document; what was not written is absent. */
export interface WrittenFiles {
  readonly report?: string;
  readonly map?: string;
}

export function rankingJson(
  analysis: Pick<Analysis, "modes" | "mass" | "warnings">,
  ranking: Ranking,
  excitation: Excitation,
  frame: FrameIdentity,
  written: WrittenFiles,
  sure?: HowSure,
): string {
  const { candidates, weights, map } = ranking;
  const quietest = quietestOf(candidates);
  return documentText("ranking", {
    ...frameFields(frame),
    report: written.report ?? null,
    mapFile: written.map ?? null,
    verdict: ranking.verdict,
    use: ranking.use,
    scoreWeights: {
      gyro: weights.gyro,
      accelerometer: weights.accelerometer,
      falseTilt: weights.tilt,
    },
    controlBandwidthHz: ranking.controlBandwidth,
    wantedResidualDegPerSecRms: ranking.residual,
    places: candidates.map((ranked) => placeFields(ranked, excitation, quietest)),
    mounts: ranking.mounts.map((mount) => mountFields(mount, excitation)),
    map: { pitchM: map.pitch, places: map.places.map(mapPlaceFields) },
    foldings: {
      gyro: ranking.foldings.gyro.map(foldingFields),
      accelerometer: ranking.foldings.accelerometer.map(foldingFields),
    },
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
    sure: sure ? howSureFields(sure) : null,
  });
}

/** True motion of the quietest place that is not to be avoided; of all where every place is. */
function quietestOf(candidates: readonly RankedCandidate[]): number {
  const open = candidates.filter((ranked) => !isToAvoid(ranked));
  return Math.min(...(open.length > 0 ? open : candidates).map(({ gyro }) => gyro));
}

function mountFields(
  { name, modes, gyro, accel, filter, flags }: MountRow,
  e: Excitation,
): unknown {
  return {
    name,
    motionsOnIsolators: mountModeFields(modes),
    sensedGyroDegPerSecRms: gyro,
    sensedAccelGRms: accel,
    filter: filterFields(filter, e),
    flags: flags.map(({ kind, hard, text }) => ({ kind, avoid: hard, text })),
  };
}

/** A line of the motors that sampling shows at another frequency. */
function foldingFields({ order, speeds, lines, shown }: FoldedBand): unknown {
  return { multiple: order, speedsRpm: speeds.map(toRpm), linesHz: lines, shownAtHz: shown };
}

function mapPlaceFields(place: MapPlace): unknown {
  return {
    plate: place.plate,
    side: place.side > 0 ? "above" : "below",
    xM: place.x,
    yM: place.y,
    sensedGyroDegPerSecRms: place.gyro,
    sensedAccelGRms: place.accel,
    delayLowPassAloneS: place.delayWithout,
    delayWithNotchesS: place.delayWith,
    residualReached: place.attainable,
    falseTiltDeg: toDegrees(place.tilt),
    scoreDb: place.score,
    avoid: place.avoid,
    inTheWay: place.inTheWay ?? null,
    patternShare: place.patternShare ?? 1,
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
    multiple: crossing.multiple,
    speedRpm: crossing.rpm,
    fromHoverShare: crossing.fromHover,
    nearHover: crossing.nearHover,
  };
}
