/** Numbers and names as the verdict and its remarks write them. */

import { SIDE_WORDS, type Side } from "../attitude/sides.ts";
import type { RankedCandidate } from "./types.ts";

/** Names given before the rest are counted. */
const NAMED = 3;

export const isHard = (c: RankedCandidate) => c.flags.some((f) => f.hard);
export const quoted = (c: RankedCandidate) => `"${c.candidate.name}"`;

export const decibel = (v: number) => `${v < 9.95 ? v.toFixed(1) : Math.round(v)} dB`;
export const hertz = (v: number) => `${v < 99.5 ? Number(v.toPrecision(3)) : Math.round(v)} Hz`;
export const perSecond = (v: number) => `${Number(v.toPrecision(v < 99.5 ? 2 : 3))} deg/s`;
export const milliseconds = (s: number) => `${(1e3 * s).toFixed(s < 9.95e-3 ? 1 : 0)} ms`;
export const degrees = (rad: number) => `${Number(((rad * 180) / Math.PI).toPrecision(2))} degrees`;
export const percent = (v: number) => `${Math.round(100 * v)} %`;
export const rpm = (v: number) => `${Number(v.toPrecision(3))} rpm`;

/** "63 mm ahead of" */
export function inPlan(distance: number, side: Side): string {
  return `${Math.round(1e3 * distance)} mm ${SIDE_WORDS[side].place}`;
}

/** "a, b and c", cut after a few. */
export function listed(names: readonly string[], most = NAMED): string {
  const more = names.length - most;
  if (more > 1) return `${names.slice(0, most).join(", ")} and ${more} others`;
  return names.length > 1
    ? `${names.slice(0, -1).join(", ")} and ${names[names.length - 1]}`
    : names.join("");
}
