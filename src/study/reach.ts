/** How far inputs are moved to see what they can really do. */

import type { Input } from "../frame/inputs.ts";
import type { Reach } from "./sensitivity-types.ts";

/** For inputs without a spread. */
const SHARE = 0.05;
const DISTANCE = 1e-3;

export function reachOf({ kind, value, spread }: Pick<Input, "kind" | "value" | "spread">): Reach {
  if (spread && spread.from < spread.to) {
    const { from, to, scale } = spread;
    return { from, to, scale, why: "spread" };
  }
  return kind === "position"
    ? { from: value - DISTANCE, to: value + DISTANCE, scale: "even", why: "1 mm" }
    : { from: value * (1 - SHARE), to: value * (1 + SHARE), scale: "even", why: "5 %" };
}

/**
 * Way from the drawing to another value, in the input's unit, along which effects are taken as straight:
 * in the logarithm where that is what varies.
 */
export function wayTo(value: number, { scale }: Reach, to: number): number {
  return scale === "log" ? value * Math.log(to / value) : to - value;
}
