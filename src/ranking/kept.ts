/** Which places stand in the table: those the file names, and the best of those the program finds. */

import type { Assessed } from "./assess.ts";
import { apart, isNear, type Searched } from "./search.ts";

/** Found places in the table where the file names some, and where it names none. */
const BESIDE_NAMED = 1;
const ALONE = 10;
/** The quietest of them at least, whatever the number of plates. */
const LEAST = 3;
/** Found places closer than this to another count as one, m. */
const NEAR = 0.012;

/** @param cost what is to be least; infinite for places to avoid */
export function keptPlaces(
  named: readonly Assessed[],
  { map, best }: Searched,
  cost: (place: Assessed) => number,
): Assessed[] {
  const elsewhere = best.filter(
    (p) => Number.isFinite(cost(p)) && !named.some((n) => isNear(n.candidate, p.candidate, NEAR)),
  );
  if (named.length > 1 || (named.length === 1 && !named[0].candidate.designed)) {
    return [...named, ...elsewhere.slice(0, BESIDE_NAMED)];
  }
  const sorted = apart([...best, ...[...map].sort((a, b) => cost(a) - cost(b))], NEAR).filter(
    (p) => !named.some((n) => isNear(n.candidate, p.candidate, NEAR)),
  );
  const perPlate = sorted.filter(
    (p, i) => sorted.findIndex((q) => q.candidate.plate === p.candidate.plate) === i,
  );
  const room = Math.max(LEAST, ALONE - perPlate.length - 1);
  const noisiest = sorted.slice(-1);
  return [...named, ...new Set([...sorted.slice(0, room), ...perPlate, ...noisiest])];
}
