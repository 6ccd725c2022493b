/** How a craft turns over a while: from rest, in segments of constant angular acceleration. */

import { notFinite, notPositive, throwIfAny } from "../check-number.ts";
import type { Finding } from "../errors.ts";
import type { Vec3 } from "../model/types.ts";

export interface MotionSegment {
  /** rate of change of the body rates, along the body axes, rad/s^2 */
  readonly alpha: Vec3;
  /** s, above 0 */
  readonly duration: number;
}

/** Rotation from rest; along x forward, y left, z up. */
export interface MotionProfile {
  /** what is flown, as in "reads 2 degrees in <name>": "a yaw turn of 2.4 s" */
  readonly name: string;
  /** one or more, one after the other */
  readonly segments: readonly MotionSegment[];
}

/** Rotation at an instant, along the body axes. */
export interface Rates {
  /** rad/s, right-handed: +x right side down, +y nose down, +z nose to the left */
  readonly omega: Vec3;
  /** its rate of change, rad/s^2 */
  readonly alpha: Vec3;
}

/** All segments together, s. */
export function durationOf({ segments }: MotionProfile): number {
  return segments.reduce((sum, { duration }) => sum + duration, 0);
}

/**
 * Rates at the time t: omega is the integral of alpha from rest. Where two segments meet, alpha is
 * that of the later; at the end, of the last. Before the start and after the end alpha is zero and
 * omega stays as it was.
 *
 * @param t from the start, s
 * @throws InputError for a profile that `checkProfile` refuses, or a time that is not finite
 */
export function ratesAt(profile: MotionProfile, t: number): Rates {
  checkProfile(profile);
  throwIfAny(notFinite("t", "the time", t, "s"));
  if (t < 0) return { omega: [0, 0, 0], alpha: [0, 0, 0] };
  const { segments } = profile;
  let omega: Vec3 = [0, 0, 0];
  let start = 0;
  for (const [i, { alpha, duration }] of segments.entries()) {
    const since = t - start;
    if (since < duration || (i === segments.length - 1 && since <= duration)) {
      return { omega: ratesAfter(omega, alpha, since), alpha };
    }
    omega = ratesAfter(omega, alpha, duration);
    start += duration;
  }
  return { omega, alpha: [0, 0, 0] };
}

/** omega + alpha t: rates after a time t of constant acceleration, rad/s; unchecked. */
export function ratesAfter(omega: Vec3, alpha: Vec3, t: number): Vec3 {
  return [omega[0] + alpha[0] * t, omega[1] + alpha[1] * t, omega[2] + alpha[2] * t];
}

/** Throws InputError for a profile without segments, or one that is not finite or lasts no time. */
export function checkProfile({ segments }: MotionProfile): void {
  throwIfAny(segments.length > 0 ? [] : NO_SEGMENTS, ...segments.map(segmentFindings));
}

const NO_SEGMENTS: readonly Finding[] = [
  { path: "segments", message: "the motion has no segments; give at least one." },
];

function segmentFindings({ alpha, duration }: MotionSegment, i: number): Finding[] {
  const path = `segments.${i}`;
  return [
    ...alpha.flatMap((value, k) =>
      notFinite(`${path}.alpha.${"xyz"[k]}`, "the angular acceleration", value, "rad/s^2"),
    ),
    ...notPositive(`${path}.duration`, "the duration", duration, "s"),
  ];
}
