/** Chains of filters on a place's signal: what they leave, and which is better. */

import { addLine } from "./burden-entries.ts";
import type { BurdenTable, LowPassChoice, NotchSet } from "./burden-table.ts";

/** A set of notches on a place's signal. */
export interface Notched {
  readonly set: NotchSet;
  /** what they leave of lines and noise, at the nodes, (deg/s)^2 (size n) */
  readonly spectrum: Float64Array;
}

/** A chain of filters on a place's signal. */
export interface Chain extends Notched {
  readonly lowPass: LowPassChoice | undefined;
  /** mean square left, (deg/s)^2 */
  readonly power: number;
  /** at the control bandwidth, s */
  readonly delay: number;
  readonly meets: boolean;
}

/** Delays, or residuals, that differ by less than this share are the same. */
const SAME = 1e-12;

/** @param powers of each line, at each speed, (deg/s)^2 */
export function notched(
  table: BurdenTable,
  set: NotchSet,
  powers: readonly Float64Array[],
): Notched {
  const spectrum = set.noise.slice();
  powers.forEach((power, l) => {
    addLine(spectrum, set.shares, table.setup.rotors, l, power);
  });
  return { set, spectrum };
}

export function chain(
  { setup }: BurdenTable,
  { set, spectrum }: Notched,
  lowPass: LowPassChoice | undefined,
): Chain {
  const power = behind(spectrum, lowPass);
  const delay = set.delay.atControl + (lowPass?.delay.atControl ?? 0);
  return { set, spectrum, lowPass, power, delay, meets: power <= setup.target ** 2 };
}

/** Mean square of a spectrum on the nodes behind a low-pass, (deg/s)^2. */
export function behind(spectrum: Float64Array, lowPass: LowPassChoice | undefined): number {
  let sum = 0;
  if (lowPass === undefined) for (const power of spectrum) sum += power;
  else for (let n = 0; n < spectrum.length; n++) sum += spectrum[n] * lowPass.gains[n];
  return sum;
}

/**
 * Of two chains the one that meets the target, with less delay; where neither does, the one that leaves
 * less. Of equals the first.
 */
export function better(a: Chain, b: Chain): Chain {
  if (a.meets !== b.meets) return a.meets ? a : b;
  const [ours, theirs] = a.meets ? [a.delay, b.delay] : [a.power, b.power];
  return theirs < ours * (1 - SAME) ? b : a;
}
