/** Variants beside a reference. */

import type { Outcome } from "../variants/types.ts";
import { modeChanges } from "./compare-modes.ts";
import { bestChange, changeOf, spotChanges } from "./compare-spots.ts";
import type { Comparison, Difference, NamedOutcome } from "./compare-types.ts";
import { movedWords } from "./figures.ts";

/** Lowest modes that are told where no number is given. */
const TOLD = 20;

/**
 * @param outcomes two or more; the first is what the others are compared with
 * @param count lowest modes of each that are told; 20 where not given
 */
export function compareOutcomes(outcomes: readonly NamedOutcome[], count = TOLD): Comparison {
  if (outcomes.length < 2) throw new Error("a comparison needs two outcomes and more");
  const [reference, ...variants] = outcomes;
  return {
    reference: reference.name,
    differences: variants.map((v) => difference(reference.outcome, v, count)),
  };
}

function difference(from: Outcome, { name, outcome: to }: NamedOutcome, count: number): Difference {
  const change = [0, 1, 2].map((i) => to.cg[i] - from.cg[i]) as [number, number, number];
  return {
    name,
    mass: changeOf(from.mass, to.mass),
    cg: { from: from.cg, to: to.cg, change, words: movedWords(change) },
    hover: changeOf(from.hover, to.hover),
    ...modeChanges(from, to, count),
    best: bestChange(from, to),
    spots: spotChanges(from, to),
  };
}
