/** What the variants' noise costs in filter delay at their best spots, as drawn. */

import type { NamedOutcome } from "./compare-types.ts";
import { delayOf } from "./figures.ts";

/** Less is not worth a word, s. */
const MATTERS = 0.2e-3;

/** Least filter delay at the best spot, s; undefined where there is none or none is enough. */
export function bestDelay({ outcome: { best, spots } }: NamedOutcome): number | undefined {
  const delay = best === undefined ? undefined : spots[best].delay;
  return delay !== undefined && Number.isFinite(delay) ? delay : undefined;
}

/** One sentence, or none where the delays hardly differ: noise that lies lower costs more of it. */
export function delayWords(variants: readonly NamedOutcome[]): string[] {
  const known = variants.flatMap((v) => {
    const delay = bestDelay(v);
    return delay === undefined ? [] : [{ name: v.name, delay }];
  });
  if (known.length < 2) return [];
  const least = known.reduce((a, b) => (b.delay < a.delay ? b : a));
  const most = known.reduce((a, b) => (b.delay > a.delay ? b : a));
  if (most.delay - least.delay < MATTERS) return [];
  return [
    `The filter costs least with "${least.name}" (${delayOf(least.delay)} of delay as drawn) and most with "${most.name}" (${delayOf(most.delay)}): how low the noise lies counts as well as how loud it is.`,
  ];
}
