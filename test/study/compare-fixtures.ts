/** Two variants of an invented frame for the tests of comparisons. */

import type { MeetingPoint, Outcome, Spot } from "../../src/variants/types.ts";
import { madeOutcome, turned } from "./made-outcomes.ts";

export function spot(name: string, more: Partial<Spot> = {}): Spot {
  return {
    name,
    plate: "middle",
    gyro: 3,
    accel: 0.5,
    delay: 3e-3,
    delayWithNotches: 2e-3,
    tilt: 0.01,
    score: 0,
    ...more,
  };
}

export function meeting(mode: number, fromHover: number, multiple = 3): MeetingPoint {
  const order = multiple === 3 ? "blade pass" : "unbalance";
  return { mode, order, multiple, speed: 1500 * (1 + fromHover), fromHover };
}

const shapes = turned(5, []);
export const NAMES = ["battery sways", "arms flap", "arms twist", "arms swing", "top bends"];

export const reference: Outcome = madeOutcome([80, 100, 150, 200, 300], shapes, {
  mass: 0.5,
  cg: [0.001, 0, 0.01],
  modeNames: NAMES,
  spots: [
    spot("centre"),
    spot("nose", { gyro: 6, score: 6, delay: Number.POSITIVE_INFINITY }),
    spot("tail", { gyro: 9, score: 9, ruledOut: "cantilevered" }),
  ],
  best: 0,
  meetings: [meeting(2, 0.03), meeting(4, 0.3)],
});

/** The same with some figures changed. */
export const variant = (more: Partial<Outcome>): Outcome => ({ ...reference, ...more });

/** Frequencies times factors, shapes in another order: mode k looks like the reference's order[k]. */
export function reshaped(
  frequencies: readonly number[],
  order: readonly number[],
): Partial<Outcome> {
  const made = madeOutcome(
    frequencies,
    order.map((k) => shapes[k]),
  );
  return {
    frequencies: made.frequencies,
    shapes: made.shapes,
    modeNames: order.map((k) => NAMES[k]),
  };
}
