/** The order of the places, with ties. */

import { type BareFrame, shiftedFrame } from "../response/bare-frame.ts";
import { shiftedPlace } from "../response/place.ts";
import { readPlace } from "../response/reading.ts";
import { type Assessed, type Sensed, sense } from "./assess.ts";
import type { Instruments } from "./instruments.ts";
import type { Flag } from "./types.ts";
import { type Figures, score, scoreParts, USE_WEIGHTS } from "./use.ts";

/**
 * Natural frequencies may be this much off: modulus +-10 %, thickness +-3 % and joints together move
 * arm frequencies by about 7 % (common practice, no source).
 */
export const FREQUENCY_BAND = 0.07;
/** Closer than this, for some error of the frequencies within the band, is a tie, dB. */
export const TIE_BAND = 1;
/** Shifts at which ties are tried, as shares of the band. */
const SHIFTS = [-1, -0.5, 0, 0.5, 1];

export interface Order {
  /** indices, best first; places with a hard flag last */
  readonly order: readonly number[];
  /** those that share the first place; empty where the first stands alone */
  readonly tied: ReadonlySet<number>;
  /** least figures of all places that are not to be avoided */
  readonly reference: Figures;
  /** what the chips pass on under every shift, place by place (SHIFTS x places) */
  readonly shifted: readonly (readonly Levels[])[];
}

/** deg/s rms and g rms */
export type Levels = Pick<Sensed, "gyro" | "accel">;

export const figuresOf = (a: Pick<Assessed, "sensed" | "tilt">, allowedTilt: number): Figures => ({
  gyro: a.sensed.gyro,
  accelerometer: a.sensed.accel,
  tilt: a.tilt / allowedTilt,
});

/** What every place reads with all natural frequencies shifted together. */
function shiftedLevels(
  bare: BareFrame,
  instruments: Instruments,
  places: readonly Assessed[],
): Levels[][] {
  return SHIFTS.map((share) => {
    if (share === 0) return places.map((p) => p.sensed);
    const factor = 1 + share * FREQUENCY_BAND;
    const frame = shiftedFrame(bare, factor);
    return places.map((p) =>
      sense(frame, instruments, readPlace(frame, shiftedPlace(p.place, factor))),
    );
  });
}

export function orderOf(
  bare: BareFrame,
  instruments: Instruments,
  places: readonly Assessed[],
  flags: readonly (readonly Flag[])[],
): Order {
  const weights = USE_WEIGHTS[instruments.use];
  const figures = places.map((p) => figuresOf(p, instruments.control.attitudeError));
  const hard = (i: number) => +flags[i].some((f) => f.hard);
  const reference = leastOf(
    figures.filter((_, i) => !hard(i)),
    figures,
  );
  const shifted = shiftedLevels(bare, instruments, places);
  const costs = shifted.map((levels) =>
    figures.map((f, i) =>
      score(
        scoreParts({ ...f, gyro: levels[i].gyro, accelerometer: levels[i].accel }, reference),
        weights,
      ),
    ),
  );
  const plain = costs[SHIFTS.indexOf(0)];
  const byScore = places.map((_, i) => i).sort((a, b) => hard(a) - hard(b) || plain[a] - plain[b]);
  const best = byScore[0];
  const ties = (i: number) =>
    hard(i) === hard(best) && costs.some((cost) => cost[i] - cost[best] < TIE_BAND);
  const count = (i: number) => flags[i].length;
  // What the file names has its reasons: cables, room, weight.
  const found = (i: number) => +!places[i].candidate.named;
  const group = byScore
    .filter(ties)
    .sort((a, b) => found(a) - found(b) || count(a) - count(b) || plain[a] - plain[b]);
  return {
    order: [...group, ...byScore.filter((i) => !ties(i))],
    tied: new Set(group.length > 1 ? group : []),
    reference,
    shifted,
  };
}

/** The least of each figure; of all where every place is to be avoided. */
function leastOf(open: readonly Figures[], all: readonly Figures[]): Figures {
  const from = open.length > 0 ? open : all;
  return {
    gyro: Math.min(...from.map((f) => f.gyro)),
    accelerometer: Math.min(...from.map((f) => f.accelerometer)),
    tilt: 0,
  };
}
