/** Made-up samples: how many of a number each rival is best in, and how far behind it lies else. */

import { type Chances, chancesOf } from "../../src/study/chances.ts";

export interface MadeRival {
  readonly name: string;
  /** samples it leads */
  readonly best: number;
  /** dB above the best elsewhere; 5 where not given */
  readonly behind?: number;
  /** the first so many samples rule it out */
  readonly out?: number;
}

/** Samples are dealt out from the last; those left over have no best when `none` says so. */
export function madeChances(samples: number, rivals: readonly MadeRival[]): Chances {
  const led = rivals.flatMap((r, j) => new Array<number>(r.best).fill(j));
  const leader = (i: number) => led[samples - 1 - i];
  return chancesOf(
    rivals.map((r) => r.name),
    Array.from({ length: samples }, (_, i) =>
      rivals.map((r, j) => {
        if (leader(i) === undefined || i < (r.out ?? 0)) return undefined;
        return leader(i) === j ? 0 : (r.behind ?? 5);
      }),
    ),
  );
}
