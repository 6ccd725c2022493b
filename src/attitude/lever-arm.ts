/** All that the distance between an accelerometer and the centre of gravity does to self-level flight. */

import { inputError } from "../errors.ts";
import { GRAVITY } from "../excitation/speeds.ts";
import type { Vec3 } from "../model/types.ts";
import { type AttitudeFilter, FILTER_DEFAULTS, filteredOf, filterRun } from "./attitude-filter.ts";
import type { FalsePeak } from "./false-attitude.ts";
import type { MotionProfile } from "./motion-profile.ts";
import { MOTION_DEFAULTS, usualMotions } from "./motions.ts";
import { type LowSide, opposite, type Side, sideTowards } from "./sides.ts";
import { checkVectors, leverAcceleration } from "./specific-force.ts";
import { upWith } from "./static-false-attitude.ts";
import { type Attitude, attitudeOf, lowSide, tiltOf } from "./tilt.ts";
import { radiusWithin, type SettledTilt, settledYawTilt } from "./yaw-rules.ts";

export interface LeverArmOptions {
  /** of the steady yaw, and of the usual motions, rad/s, of either sign */
  readonly yawRate: number;
  readonly filter: AttitudeFilter;
  /** the static error that is put up with, rad, above 0 and below a quarter turn */
  readonly error: number;
  /** flown behind the filter, one or more; `usualMotions` at the rate of yaw where not given */
  readonly motions?: readonly MotionProfile[];
}

/** 200 deg/s and 1 degree: common practice, no source. */
export const LEVER_ARM_DEFAULTS: LeverArmOptions = {
  yawRate: MOTION_DEFAULTS.yawRate,
  filter: FILTER_DEFAULTS,
  error: Math.PI / 180,
};

/** Nearer than this in the plan, m, a place is at the centre: nobody knows it better. */
const AT_CENTRE = 1e-4;

/** Peaks within this ratio are equal, as far as the sampling tells. */
const ALIKE = 1.001;

export interface LeverArm {
  /** the sensor from the centre of gravity, m */
  readonly lever: Vec3;
  /** its length in the plan, m */
  readonly distance: number;
  /** where that is; "centre" within a tenth of a millimetre */
  readonly side: Side | "centre";
  readonly yawRate: number;
  /** what the accelerometer alone reads in steady yaw: its own side low, either way round */
  readonly reading: StaticReading;
  /** what a loop that took the reading at its word would do */
  readonly selfLevel: Response;
  readonly filter: AttitudeFilter;
  /** what a vector filter of this time constant settles at in the same yaw, held for good */
  readonly settled: SettledTilt;
  readonly motions: readonly MotionEffect[];
  /** the one of which the filter believes most; the first of equals */
  readonly worst: MotionEffect;
  readonly error: number;
  /** distance at which the reading in steady yaw reaches the error, m; Infinity without yaw */
  readonly radius: number;
  /** whether the place is within it */
  readonly within: boolean;
}

export interface StaticReading extends Attitude {
  /** rad, 0 or more */
  readonly tilt: number;
  readonly lowSide: LowSide;
}

export interface Response {
  /** the side that it lifts, "level" for none */
  readonly lifts: LowSide;
  /** where the craft then accelerates, and how hard: g tan(tilt), m/s^2 */
  readonly driftsTo: LowSide;
  readonly drift: number;
}

export interface MotionEffect {
  /** the profile's name */
  readonly motion: string;
  /** what the accelerometer alone reads */
  readonly static: FalsePeak;
  /** what the filter believes, at most and at the end */
  readonly believed: FalsePeak;
  readonly end: Attitude;
}

/**
 * @param r the sensor from the centre of gravity, m
 * @throws InputError for numbers that are not finite or out of range, or a motion that cannot be followed
 */
export function leverArm(r: Vec3, options: Partial<LeverArmOptions> = {}): LeverArm {
  return leverArms([r], options)[0];
}

/** `leverArm` of many places: the motions are sampled once. */
export function leverArms(
  places: readonly Vec3[],
  options: Partial<LeverArmOptions> = {},
): readonly LeverArm[] {
  const { yawRate, filter, error, motions } = { ...LEVER_ARM_DEFAULTS, ...options };
  const radius = radiusWithin(error, yawRate);
  const flown = (motions ?? usualMotions({ yawRate })).map((profile) => ({
    motion: profile.name,
    run: filterRun(profile, filter),
  }));
  if (flown.length === 0) throw inputError("motions", "there are none; give at least one.");
  return places.map((r) => {
    checkVectors({ r });
    const distance = Math.hypot(r[0], r[1]);
    const reading = readingIn(yawRate, r);
    const effects = flown.map(({ motion, run }) => {
      const believed = filteredOf(run, r);
      return { motion, static: believed.static, believed: believed.peak, end: believed.end };
    });
    return {
      lever: r,
      distance,
      side: distance < AT_CENTRE ? "centre" : sideTowards(r[0], r[1]),
      yawRate,
      reading,
      selfLevel: responseTo(reading),
      filter,
      settled: settledYawTilt(yawRate, distance, filter.timeConstant),
      motions: effects,
      worst: effects.reduce((a, b) => (b.believed.tilt > ALIKE * a.believed.tilt ? b : a)),
      error,
      radius,
      within: distance <= radius,
    };
  });
}

function readingIn(yawRate: number, r: Vec3): StaticReading {
  const up = upWith(leverAcceleration([0, 0, yawRate], [0, 0, 0], r));
  return { ...attitudeOf(up), tilt: tiltOf(up), lowSide: lowSide(up) };
}

/** A craft with one side lifted is pushed towards the other by its thrust. */
function responseTo({ tilt, lowSide: low }: StaticReading): Response {
  return {
    lifts: low,
    driftsTo: low === "level" ? "level" : opposite(low),
    drift: GRAVITY * Math.tan(tilt),
  };
}
