/** A history of attitudes that are not there, and how far they go. */

import type { Vec3 } from "../model/types.ts";
import type { LowSide } from "./sides.ts";
import { type Attitude, attitudeOf, lowSide, tiltOf } from "./tilt.ts";

/** The attitude that the place of the sensor adds, over time; all zero at the centre of gravity. */
export interface FalseAttitude {
  /** s from the start of the motion; twice where it changes at once */
  readonly time: Float64Array;
  /** right side down positive, rad (size of time) */
  readonly roll: Float64Array;
  /** nose up positive, rad (size of time) */
  readonly pitch: Float64Array;
  readonly peak: FalsePeak;
}

export interface FalsePeak {
  /** each the one of largest size, with its sign, rad; not always at the same time */
  readonly roll: number;
  readonly pitch: number;
  /** largest angle between the apparent vertical and the craft's z axis, rad, 0 or more */
  readonly tilt: number;
  /** when that is first, s from the start */
  readonly time: number;
  /** the side that looks low then */
  readonly lowSide: LowSide;
}

/** A later peak must be higher than the first by more than rounding. */
const HIGHER = 1 + 1e-9;

/**
 * @param up what is taken for the vertical, along the body axes, of any size (size of time)
 */
export function falseAttitude(time: readonly number[], up: readonly Vec3[]): FalseAttitude {
  const attitudes = up.map(attitudeOf);
  const roll = Float64Array.from(attitudes, (a) => a.roll);
  const pitch = Float64Array.from(attitudes, (a) => a.pitch);
  const tilt = up.map(tiltOf);
  const highest = highestOf(tilt);
  return {
    time: Float64Array.from(time),
    roll,
    pitch,
    peak: {
      roll: roll[highestOf(roll)],
      pitch: pitch[highestOf(pitch)],
      tilt: tilt[highest],
      time: time[highest],
      lowSide: tilt[highest] === 0 ? "level" : lowSide(up[highest]),
    },
  };
}

/** Attitude at the end. */
export function lastOf({ roll, pitch }: FalseAttitude): Attitude {
  return { roll: roll[roll.length - 1], pitch: pitch[pitch.length - 1] };
}

/** Where the size is largest, the first of equals. */
function highestOf(values: ArrayLike<number>): number {
  let best = 0;
  for (let i = 1; i < values.length; i++) {
    if (Math.abs(values[i]) > HIGHER * Math.abs(values[best])) best = i;
  }
  return best;
}
