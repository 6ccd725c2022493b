/**
 * What an accelerometer away from the centre of gravity seems to see while the craft turns, taken at
 * its word at every instant.
 *
 * In flight the specific force at the centre of gravity is thrust over mass: along the craft's own z
 * axis, 1 g in hover, whatever the attitude (drag left out). There the sensor always reads "level". The
 * false part is what its place adds: the attitude of
 *
 *   f = (0, 0, g) + alpha x r + omega x (omega x r)
 *
 * The height of the sensor counts in roll and pitch only.
 */

import { GRAVITY } from "../excitation/speeds.ts";
import type { Vec3 } from "../model/types.ts";
import { type FalseAttitude, falseAttitude } from "./false-attitude.ts";
import type { MotionProfile } from "./motion-profile.ts";
import { type SampledSegment, sampleMotion } from "./sampled-motion.ts";
import { checkVectors, leverAcceleration } from "./specific-force.ts";

/**
 * False roll and pitch over the motion, and their peaks.
 *
 * The peaks are those of the instants taken, both sides of every change of alpha included: exact where
 * they fall there, as in the yaws of `motions.ts`; else a little short, by a few per cent where the
 * sensor comes near free fall and its vertical swings round within a step.
 *
 * @param r the sensor from the centre of gravity, m
 * @throws InputError for a component that is not finite, or a profile that cannot be followed
 */
export function staticFalseAttitude(profile: MotionProfile, r: Vec3): FalseAttitude {
  checkVectors({ r });
  return staticOf(sampleMotion(profile), r);
}

/** `staticFalseAttitude` of a motion already sampled; unchecked. */
export function staticOf(motion: readonly SampledSegment[], r: Vec3): FalseAttitude {
  const instants = motion.flatMap((segment) => segment.instants);
  return falseAttitude(
    instants.map(({ time }) => time),
    instants.map(({ omega, alpha }) => upWith(leverAcceleration(omega, alpha, r))),
  );
}

/** The apparent vertical with what the place adds, in g. */
export function upWith([x, y, z]: Vec3): Vec3 {
  return [x / GRAVITY, y / GRAVITY, 1 + z / GRAVITY];
}
