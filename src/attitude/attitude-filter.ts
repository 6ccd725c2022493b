/**
 * What a filter aided by the gyro makes of false readings of the accelerometer.
 *
 * The gyro carries the estimate through every true motion; the accelerometer draws it, with the time
 * constant tau, towards what it reads. Two kinds of estimate:
 *
 * "vector": the vertical as a vector in the craft (`vector-filter.ts`), turned by the gyro about all
 * axes. While the craft yaws, the false reading turns with it and the estimate, which stays where the
 * gyro knows it to be, averages it out. For small tilts, in a frame that stands still,
 * d' = (a/g - d)/tau for the lean d that the place adds, a = alpha x r + omega x (omega x r). As a is the
 * rate of change of v = omega x r, the velocity of the sensor about the centre of gravity, d is v/(g tau)
 * less its own lag: about |rate| distance/(g tau) in a yaw, with the side low that the sensor moves away
 * from, and nothing after a motion that is over well within tau.
 *
 * "angles": roll and pitch as two numbers, each with the gyro's rate about its own axis, blind to yaw.
 * Each error follows e' = (m - e)/tau with m its static false angle. In a turn of length T it reaches
 * up to 1 - exp(-T/tau) of the static error. In a yaw no vector filter believes more than this share of
 * the largest static tilt.
 *
 * Left out: bias estimates, drag, and that the craft obeys. A craft that holds its estimate level moves
 * with its own error; then d = v/(g tau) for the vector, and the errors of angles grow as the integral
 * of m/tau.
 */

import { notFinite, throwIfAny } from "../check-number.ts";
import { inputError } from "../errors.ts";
import type { Vec3 } from "../model/types.ts";
import { type FalseAttitude, type FalsePeak, falseAttitude, lastOf } from "./false-attitude.ts";
import { follow, pairWeights } from "./first-order.ts";
import type { MotionProfile } from "./motion-profile.ts";
import { type SampledSegment, sampleMotion } from "./sampled-motion.ts";
import { checkVectors, leverAcceleration } from "./specific-force.ts";
import { staticOf, upWith } from "./static-false-attitude.ts";
import { type Attitude, attitudeOf, gravityInBody } from "./tilt.ts";
import { uprighted } from "./turning.ts";
import { vectorEstimates } from "./vector-filter.ts";

export interface AttitudeFilter {
  /** tau, s: how slowly the accelerometer is believed; 0.01 or more */
  readonly timeConstant: number;
  /** what the filter keeps, see above */
  readonly estimate: "vector" | "angles";
}

/** Time constants from 0.5 to 4 s are in use; common practice, no source. */
export const FILTER_DEFAULTS: AttitudeFilter = { timeConstant: 1, estimate: "vector" };

/** Quicker filters, s, would take each vibration for a change of attitude. */
const QUICKEST = 0.01;

/** Pairs of steps in a time constant, at least. */
const PAIRS_PER_TAU = 8;

export interface FilteredFalseAttitude extends FalseAttitude {
  /** at the end of the motion; from there it dies away with tau */
  readonly end: Attitude;
  /** what the sensor alone seemed to see */
  readonly static: FalsePeak;
}

/** A motion sampled for a filter, and what that believes with the sensor at the centre of gravity. */
export interface FilterRun {
  readonly filter: AttitudeFilter;
  readonly motion: readonly SampledSegment[];
  /** by `vectorEstimates`; empty for angles, whose errors do not depend on it */
  readonly atCentre: readonly Vec3[];
}

/**
 * False roll and pitch behind the filter over the motion, against the same filter with the sensor at
 * the centre of gravity.
 *
 * Angles: exact for what is constant, linear or quadratic over a pair of steps, as static angles are in
 * the held parts of a yaw. Else, and for the vector, of fourth order. At the end of the yaw motions
 * within 1e-6 of the static peak (200 to 1000 deg/s), of the snaps likewise unless the sensor comes near
 * free fall, where its angles jump. The peak is the largest of some 60 values a turn, at most a
 * thousandth short.
 *
 * @param r the sensor from the centre of gravity, m
 * @throws InputError for a component that is not finite, a time constant below 0.01 s, an unknown kind
 *   of estimate, or a profile that cannot be followed
 */
export function filteredFalseAttitude(
  profile: MotionProfile,
  r: Vec3,
  filter: AttitudeFilter = FILTER_DEFAULTS,
): FilteredFalseAttitude {
  checkVectors({ r });
  return filteredOf(filterRun(profile, filter), r);
}

/**
 * What the runs of many places have in common. Throws as `filteredFalseAttitude`.
 *
 * @param fineness as for `sampleMotion`
 */
export function filterRun(profile: MotionProfile, filter: AttitudeFilter, fineness = 1): FilterRun {
  checkFilter(filter);
  const { timeConstant, estimate } = filter;
  const motion = sampleMotion(profile, timeConstant / PAIRS_PER_TAU, fineness);
  const atCentre = estimate === "vector" ? vectorEstimates(motion, [0, 0, 0], timeConstant) : [];
  return { filter, motion, atCentre };
}

/** `filteredFalseAttitude` of a run made ready; unchecked. */
export function filteredOf(run: FilterRun, r: Vec3): FilteredFalseAttitude {
  const { motion, filter } = run;
  const time = motion.flatMap(({ instants }) =>
    instants.filter((_, i) => i % 2 === 0).map((instant) => instant.time),
  );
  const believed = falseAttitude(
    time,
    filter.estimate === "vector" ? byVector(run, r) : byAngles(run, r),
  );
  return { ...believed, end: lastOf(believed), static: staticOf(motion, r).peak };
}

/** The estimate with the sensor at r, turned as that with the sensor at the centre is from upright. */
function byVector({ motion, filter, atCentre }: FilterRun, r: Vec3): Vec3[] {
  return vectorEstimates(motion, r, filter.timeConstant).map((u, i) => uprighted(u, atCentre[i]));
}

/** The vertical that the errors of two angles mean. */
function byAngles({ motion, filter }: FilterRun, r: Vec3): Vec3[] {
  let start: Attitude = { roll: 0, pitch: 0 };
  return motion.flatMap(({ instants, step }) => {
    const weights = pairWeights((2 * step) / filter.timeConstant);
    const m = instants.map(({ omega, alpha }) =>
      attitudeOf(upWith(leverAcceleration(omega, alpha, r))),
    );
    const roll = follow(
      weights,
      m.map((a) => a.roll),
      start.roll,
    );
    const pitch = follow(
      weights,
      m.map((a) => a.pitch),
      start.pitch,
    );
    const ends = Array.from(roll, (value, i) => ({ roll: value, pitch: pitch[i] }));
    start = ends[ends.length - 1];
    return ends.map((e) => gravityInBody(e).map((v) => -v) as unknown as Vec3);
  });
}

function checkFilter({ timeConstant, estimate }: AttitudeFilter): void {
  throwIfAny(notFinite("timeConstant", "the time constant", timeConstant, "s"));
  if (timeConstant < QUICKEST) {
    throw inputError(
      "timeConstant",
      `the time constant must be ${QUICKEST} s or more, but is ${timeConstant} s; quicker filters take each vibration for a change of attitude.`,
    );
  }
  if (estimate !== "vector" && estimate !== "angles") {
    throw inputError(
      "estimate",
      `the kind of estimate must be "vector" or "angles", but is "${estimate}".`,
    );
  }
}
