/** The best spot of the whole frame, by a coarse map and a closer look around its best places. */

import type { FrameFile } from "../frame/types.ts";
import type { Candidate, Model } from "../model/types.ts";
import type { Assessed } from "./assess.ts";
import { findPlaces, placeAt } from "./candidates.ts";
import { type OtherPlace, otherPlaces } from "./other-places.ts";

/** Places of the coarse map, at most. */
const MAP_PLACES = 150;
/** Places of the map on the rest of the plates, at most: so many with the others, and never fewer than this. */
const WITH_OTHERS = 70;
const LEAST_OTHERS = 50;
/** Starting places of the closer look. */
const STARTS = 3;
/** The closer look ends at steps below this, m: nobody drills more exactly to a place. */
const FINEST = 2e-3;
/** Starting places closer than this many steps of the map are one. */
const APART = 2.5;

export interface MapOptions {
  /** distance between places, m; chosen by the program where not given */
  readonly pitch?: number;
}

/** Most places of a map whose pitch is asked for: what a minute allows. */
const MOST_ASKED = 4000;

export interface Searched {
  readonly pitch: number;
  /** where the stack can sit */
  readonly map: readonly Assessed[];
  /** the rest of the plates, not read yet */
  readonly others: readonly OtherPlace[];
  /** best first, apart from each other; includes places between those of the map */
  readonly best: readonly Assessed[];
}

/**
 * @param assess reads places
 * @param cost what is to be least; infinite for places to avoid
 */
export function search(
  file: FrameFile,
  model: Model,
  assess: (places: readonly Candidate[]) => Assessed[],
  cost: (place: Assessed) => number,
  options: MapOptions = {},
): Searched {
  const most = options.pitch === undefined ? MAP_PLACES : MOST_ASKED;
  const { pitch, places } = findPlaces(file, model, most, options.pitch);
  const room = Math.max(
    LEAST_OTHERS,
    (options.pitch === undefined ? WITH_OTHERS : most) - places.length,
  );
  const rest = otherPlaces(file, model, places, room, pitch);
  const [free, others] = [rest.filter(isFree), rest.filter((p) => !isFree(p))];
  const map = assess([...places, ...free.map((p) => p.candidate)]);
  const starts = apart(
    [...map].sort((a, b) => cost(a) - cost(b)),
    APART * pitch,
  ).slice(0, STARTS);
  const best = starts.map((start) => refine(file, model, start, pitch, assess, cost));
  return {
    pitch,
    map,
    others,
    best: apart(
      best.sort((a, b) => cost(a) - cost(b)),
      pitch,
    ),
  };
}

/** Places in their order, without those closer than a distance to an earlier one on the same plate and side. */
export function apart(places: readonly Assessed[], distance: number): Assessed[] {
  const kept: Assessed[] = [];
  for (const p of places)
    if (!kept.some((k) => isNear(k.candidate, p.candidate, distance))) kept.push(p);
  return kept;
}

export function isNear(a: Candidate, b: Candidate, distance: number): boolean {
  return a.plate === b.plate && a.side === b.side && Math.hypot(a.x - b.x, a.y - b.y) < distance;
}

/** Steps to the best of eight neighbours while that is better; halves the step where none is. */
function refine(
  file: FrameFile,
  model: Model,
  start: Assessed,
  pitch: number,
  assess: (places: readonly Candidate[]) => Assessed[],
  cost: (place: Assessed) => number,
): Assessed {
  let here = start;
  for (let step = pitch / 2; step >= FINEST; ) {
    const { plate, x, y, side } = here.candidate;
    const around = [-1, 0, 1]
      .flatMap((i) => [-1, 0, 1].map((j) => [x + i * step, y + j * step] as const))
      .filter(([u, v]) => u !== x || v !== y)
      .flatMap(([u, v]) => {
        const place = placeAt(file, model, model.plates[plate], u, v);
        return place && place.side === side ? [place] : [];
      });
    const next = assess(around).reduce((a, b) => (cost(b) < cost(a) ? b : a), here);
    if (next === here) step /= 2;
    else here = next;
  }
  return here;
}

const isFree = ({ inTheWay, patternShare }: OtherPlace) =>
  inTheWay === undefined && patternShare === undefined;
