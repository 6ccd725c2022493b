/** Which places the tables print, and how they name them. */

import type { RankedCandidate } from "../../ranking/types.ts";
import type { Column } from "../terminal/table.ts";

/** All places are printed up to this many, otherwise the best few and those the file names. */
const ALL_UP_TO = 16;
const BEST = 10;

export interface Shown {
  readonly places: readonly RankedCandidate[];
  /** places that are not printed */
  readonly left: number;
  /** places that more than one candidate has */
  readonly shared: ReadonlySet<number>;
}

export function shownPlaces(candidates: readonly RankedCandidate[]): Shown {
  const places =
    candidates.length <= ALL_UP_TO
      ? candidates
      : candidates.filter(({ candidate: { named, designed } }, i) => i < BEST || named || designed);
  const shared = new Set(
    candidates.map(({ place }) => place).filter((p, i, all) => all[i - 1] === p),
  );
  return { places, left: candidates.length - places.length, shared };
}

/** The columns with which every table of places begins. */
export const PLACE_COLUMNS: readonly Column[] = [{ title: "Place" }, { title: "Name", least: 12 }];

/** "1=" where others have the same place, and the name. */
export function placeCells({ place, candidate }: RankedCandidate, { shared }: Shown): string[] {
  return [`${place}${shared.has(place) ? "=" : ""}`, candidate.name];
}

export function isToAvoid({ flags }: RankedCandidate): boolean {
  return flags.some(({ hard }) => hard);
}
