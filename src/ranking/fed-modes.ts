/** Forces that feed the same mode at the same speed, told as one. */

import type { Cause } from "./types.ts";

export interface Fed {
  /** the strongest of them, for the mode and the speed */
  readonly cause: Cause;
  /** of the noise power, all forces together */
  readonly share: number;
  readonly forces: readonly Cause[];
}

/** Causes of the same mode and speed as one, largest first. */
export function fedModes(causes: readonly Cause[]): Fed[] {
  const alike = (a: Cause, b: Cause) => a.mode === b.mode && a.rpm === b.rpm;
  return causes
    .filter((c, i) => causes.findIndex((d) => alike(c, d)) === i)
    .map((cause) => {
      const forces = causes.filter((c) => alike(c, cause));
      return { cause, forces, share: forces.reduce((sum, f) => sum + f.share, 0) };
    })
    .sort((a, b) => b.share - a.share);
}
