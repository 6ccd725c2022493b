/** A motion at instants close enough together for quadrature. */

import { IDENTITY, type Rotation } from "../element/rotation.ts";
import { inputError } from "../errors.ts";
import {
  checkProfile,
  durationOf,
  type MotionProfile,
  type Rates,
  ratesAfter,
} from "./motion-profile.ts";
import { turnBody } from "./turning.ts";

export interface Instant extends Rates {
  /** from the start of the motion, s */
  readonly time: number;
  /** the body axes in a frame that stands still, the axes at the start of the motion */
  readonly axes: Rotation;
}

/**
 * A segment at an odd number of instants, evenly spaced, both ends included: pairs of equal steps, as
 * Simpson's rule has them. Neighbouring segments share an instant, each with its own alpha.
 */
export interface SampledSegment {
  readonly instants: readonly Instant[];
  /** time from an instant to the next, s */
  readonly step: number;
}

/** Pairs of steps in a segment, at least. */
const PAIRS = 16;
/** The body turns no more than this in a pair of steps, rad. */
const PAIR_ANGLE = 0.1;
/** Pairs of steps in a motion, at most: some 1600 turns where these decide. */
const MOST_PAIRS = 1e5;

/**
 * @param longest a pair of steps lasts no longer than this, s
 * @param fineness how many times more instants than usual, 1 or more: to see the error fall
 * @throws InputError for a profile that `checkProfile` refuses, or one too long for so short steps
 */
export function sampleMotion(
  profile: MotionProfile,
  longest = Number.POSITIVE_INFINITY,
  fineness = 1,
): readonly SampledSegment[] {
  checkProfile(profile);
  let [time, axes] = [0, IDENTITY];
  let omega: Rates["omega"] = [0, 0, 0];
  let left = MOST_PAIRS;
  return profile.segments.map(({ alpha, duration }) => {
    const last = ratesAfter(omega, alpha, duration);
    const fastest = Math.max(Math.hypot(...omega), Math.hypot(...last));
    const shortest = Math.min(PAIR_ANGLE / fastest, longest);
    const pairs = Math.max(PAIRS, Math.ceil(duration / shortest));
    left -= pairs;
    if (!(left >= 0)) throw tooLong(profile);
    const steps = Math.ceil((2 * pairs * fineness) / 2) * 2;
    const step = duration / steps;
    const first = omega;
    const instants: Instant[] = [{ time, omega, alpha, axes }];
    for (let i = 1; i <= steps; i++) {
      axes = turnBody(axes, omega, alpha, step);
      omega = ratesAfter(first, alpha, i * step);
      instants.push({ time: time + i * step, omega, alpha, axes });
    }
    time += duration;
    return { instants, step };
  });
}

function tooLong(profile: MotionProfile) {
  return inputError(
    "segments",
    `the motion "${profile.name}" of ${durationOf(profile)} s would take more than ${MOST_PAIRS} steps to follow; make it shorter or slower, or take a longer time constant.`,
  );
}
