/** Whether one of several may be called the best, by rules. */

import type { Chance } from "./chance.ts";
import type { Chances, Rival } from "./chances.ts";

/** A claim needs this chance, and its limit of 95 % above the second; common practice, no source. */
export const CLAIM = 0.9;
const CLAIM_LIMIT = 0.8;
/** "Probably" needs two in three, and a majority for certain. */
const PROBABLE = 2 / 3;
const PROBABLE_LIMIT = 0.5;
/** Those that share an open lead are together the best this often. */
const GROUP = 0.9;

export type Lead =
  /** the best in at least 90 % of samples, lower limit above 80 % */
  | { readonly kind: "clear"; readonly first: Rival; readonly others: readonly Rival[] }
  /** the best in two thirds of the samples that have a best, lower limit above half of them */
  | { readonly kind: "probable"; readonly first: Rival; readonly others: readonly Rival[] }
  /** no winner: the fewest that are together the best in 90 % of the samples that have a best */
  | { readonly kind: "open"; readonly group: readonly Rival[] }
  /** one leads, but by too few samples for any claim */
  | { readonly kind: "few" }
  /** nothing to choose from */
  | { readonly kind: "only"; readonly first: Rival }
  /** ruled out in all samples, or nothing there */
  | { readonly kind: "none" };

export function leadOf({ rivals, none }: Chances): Lead {
  const [first, ...others] = rivals;
  const open = 1 - none.share;
  if (first === undefined || open === 0) return { kind: "none" };
  if (others.length === 0) return { kind: "only", first };
  if (isSure(first.best)) return { kind: "clear", first, others };
  if (first.best.share >= PROBABLE * open) {
    const known = first.best.lower > PROBABLE_LIMIT * open;
    return known ? { kind: "probable", first, others } : { kind: "few" };
  }
  let together = 0;
  const last = rivals.findIndex((r) => {
    together += r.best.share;
    return together >= GROUP * open;
  });
  // Rounding of shared leads can leave the sum short; an open lead is never one rival's.
  const size = Math.max(last < 0 ? rivals.length : last + 1, 2);
  return { kind: "open", group: rivals.slice(0, size) };
}

/** High enough, and known well enough, to be claimed. */
export const isSure = (c: Chance) => c.share >= CLAIM && c.lower > CLAIM_LIMIT;
