/** The map of the plates as data. */

import type { Model } from "../model/types.ts";
import type { Assessed } from "./assess.ts";
import type { Hindrance } from "./other-places.ts";
import type { Searched } from "./search.ts";
import type { MapPlace, QuietMap } from "./types.ts";

/** What is told of a place beside its readings. */
export interface MapJudgement {
  readonly score: (place: Assessed) => number;
  readonly avoid: (place: Assessed) => boolean;
}

/**
 * @param others readings of `searched.others`, in their order; a place without plate under it has none
 */
export function quietMap(
  model: Model,
  { pitch, map, others }: Pick<Searched, "pitch" | "map" | "others">,
  read: readonly Assessed[],
  judged: MapJudgement,
): QuietMap {
  const hindrances = new Map(others.map((o) => [o.candidate, o]));
  return {
    pitch,
    places: [
      ...map.map((p) => mapPlace(model, p, judged)),
      ...read.map((p) => mapPlace(model, p, judged, hindrances.get(p.candidate))),
    ],
  };
}

function mapPlace(
  model: Model,
  p: Assessed,
  { score, avoid }: MapJudgement,
  hindrance: Hindrance = {},
): MapPlace {
  const { inTheWay, patternShare } = hindrance;
  return {
    plate: model.plates[p.candidate.plate].name,
    side: p.candidate.side,
    x: p.candidate.x,
    y: p.candidate.y,
    gyro: p.sensed.gyro,
    accel: p.sensed.accel,
    delayWithout: p.filter.without.delay,
    delayWith: p.filter.with.delay,
    attainable: p.filter.without.attainable,
    tilt: p.tilt,
    score: score(p),
    avoid: avoid(p),
    ...(inTheWay !== undefined && { inTheWay }),
    ...(patternShare !== undefined && { patternShare }),
  };
}
