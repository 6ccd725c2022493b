/** What a chain of filters is and costs, in words. */

import type { Burden } from "../filter/burden-types.ts";
import { perTurn } from "./campbell-words.ts";
import { degreesPerSecond, hertz, milliseconds, signed } from "./numbers.ts";

const ORDINALS = { 1: "1st", 2: "2nd", 4: "4th" } as const;

/** "2nd order at 90 Hz" */
export function lowPassWords({ lowPass }: Burden): string {
  return lowPass ? `${ORDINALS[lowPass.order]} order at ${hertz(lowPass.cutOff)}` : "none";
}

/** "once per turn, 3 per turn" */
export function followedWords({ notches }: Burden): string {
  return notches.length > 0 ? notches.map(perTurn).join(", ") : "none";
}

/** Nothing has to be filtered. */
export function isFree({ attainable, lowPass, notches }: Burden): boolean {
  return attainable && lowPass === undefined && notches.length === 0;
}

/** "2.54 ms", or why there is no such delay. */
export function delayWords(burden: Burden): string {
  if (!burden.attainable) return "out of reach";
  return isFree(burden) ? "none needed" : milliseconds(burden.delay);
}

/** Against the least of all places: "the least", "+0.16 ms"; nothing where there is no delay to compare. */
export function overWords({ attainable }: Burden, over: number): string {
  if (!attainable) return "";
  const ms = signed(1e3 * over, 2);
  return Number(ms) === 0 ? "the least" : `${ms}\u00a0ms`;
}

/** "low-pass of 2nd order at 90 Hz: 2.54 ms, leaves 0.966 deg/s rms" */
export function chainWords(burden: Burden): string {
  const parts = [
    ...(burden.lowPass ? [`low-pass of ${lowPassWords(burden)}`] : []),
    ...(burden.notches.length > 0 ? [`notches at ${followedWords(burden)}`] : []),
  ];
  const chain = parts.length > 0 ? parts.join(" and ") : "no filter";
  const left = `leaves ${degreesPerSecond(burden.residual)} rms`;
  if (!burden.attainable) return `out of reach: even ${chain} ${left}`;
  return `${chain}: ${milliseconds(burden.delay)}, ${left}`;
}
