/** Shares and levels as the words of how sure an answer is write them. */

import { listed } from "../ranking/words.ts";
import type { Chance } from "./chance.ts";

/** "93 %"; what was not in all samples is not called 100 %. */
export function percentOf(share: number): string {
  if (share > 0.995 && share < 1) return "more than 99 %";
  if (share < 0.005 && share > 0) return "less than 1 %";
  return `${Math.round(100 * share)} %`;
}

/** "in 93 % of frames"; all of a few samples are not all frames. */
export function inFrames({ share }: Chance): string {
  if (share === 1) return "in every frame tried";
  if (share === 0) return "in no frame tried";
  return `in ${percentOf(share)} of frames`;
}

/** "in 93 % of frames built to these spreads" */
export const inBuiltFrames = (c: Chance) =>
  c.share === 0 || c.share === 1
    ? `${inFrames(c)} within these spreads`
    : `${inFrames(c)} built to these spreads`;

/** "in 93 %", where the frames have been spoken of. */
export const inPercent = (c: Chance) =>
  c.share === 0 || c.share === 1 ? inFrames(c) : `in ${percentOf(c.share)}`;

/** "70 to 85 %" */
export const limits = ({ lower, upper }: Chance) =>
  `${Math.round(100 * lower)} to ${Math.round(100 * upper)} %`;

/** dB or Hz without the unit: two digits, three from 100 on. */
export function figure(value: number): string {
  const size = Math.abs(value);
  if (size === 0) return "0";
  if (size < 0.095) return String(Number(value.toPrecision(1)));
  return size < 9.95 ? value.toFixed(1) : String(Number(value.toPrecision(size < 99.5 ? 2 : 3)));
}

export const quotedList = (names: readonly string[]) => listed(names.map((n) => `"${n}"`));
