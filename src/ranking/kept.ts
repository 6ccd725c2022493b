/** Which places stand in the table: those the file names, and the best found where it beats them. */

import type { Assessed } from "./assess.ts";
import { apart, isNear, type Searched } from "./search.ts";

/** Found places in the table where the file names some, and where it names none. */
const BESIDE_NAMED = 1;
const ALONE = 10;
/** The quietest of them at least, whatever the number of plates. */
const LEAST = 3;
/** Found places closer than this to another count as one, m. */
const NEAR = 0.012;

/**
 * @param cost what is to be least; infinite for places to avoid
 * @param ruledOut whether a place would have a hard flag; asked of few places, since it takes longer
 */
export function keptPlaces(
  named: readonly Assessed[],
  { map, best }: Searched,
  cost: (place: Assessed) => number,
  ruledOut: (place: Assessed) => boolean,
): Assessed[] {
  const good = named.filter((n) => !ruledOut(n));
  const isNew = (p: Assessed) => !good.some((n) => isNear(n.candidate, p.candidate, NEAR));
  const elsewhere = best.filter((p) => Number.isFinite(cost(p)) && isNew(p) && !ruledOut(p));
  if (named.length > 1 || (named.length === 1 && !named[0].candidate.designed)) {
    const better = elsewhere.filter((p) => good.every((n) => cost(p) < cost(n)));
    return [...named, ...better.slice(0, BESIDE_NAMED)];
  }
  const byCost = [...map].sort((a, b) => cost(a) - cost(b));
  const isNamed = (p: Assessed) => named.some((n) => isNear(n.candidate, p.candidate, NEAR));
  const sorted = apart([...best, ...byCost], NEAR).filter((p) => !isNamed(p));
  const perPlate = sorted.filter(
    (p, i) => sorted.findIndex((q) => q.candidate.plate === p.candidate.plate) === i,
  );
  const room = Math.max(LEAST, ALONE - perPlate.length - 1);
  const kept = [...named, ...new Set([...sorted.slice(0, room), ...perPlate])];
  const isKept = (p: Assessed) => kept.some((k) => isNear(k.candidate, p.candidate, NEAR));
  const noisiest = byCost.findLast((p) => !isKept(p));
  return noisiest ? [...kept, noisiest] : kept;
}
