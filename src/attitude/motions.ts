/**
 * Motions that multirotors fly, as profiles. The rates and times are of the size that pilots use:
 * common practice, no source.
 */

import { notFinite, notPositive, throwIfAny } from "../check-number.ts";
import type { Vec3 } from "../model/types.ts";
import type { MotionProfile, MotionSegment } from "./motion-profile.ts";
import { perSecond } from "./shown.ts";

const DEGREE = Math.PI / 180;

export interface MotionOptions {
  /** rate of yaw reached, rad/s; positive turns the nose to the left */
  readonly yawRate: number;
  /** from rest to the rate of yaw and back, s */
  readonly yawSpinUp: number;
  /** how long a turn keeps the rate, s */
  readonly turnHold: number;
  /** how long a steady yaw keeps it, s */
  readonly steadyHold: number;
  /** how long a reversal keeps the rate each way, s */
  readonly reversalHold: number;
  /** peak rate of a roll or pitch snap, rad/s */
  readonly snapRate: number;
  /** from rest to the peak rate, and from there to rest again, s each */
  readonly snapHalf: number;
}

/** 200 deg/s of yaw; snaps of 500 deg/s at their peak, which tip the craft by 50 degrees in 0.2 s. */
export const MOTION_DEFAULTS: MotionOptions = {
  yawRate: 200 * DEGREE,
  yawSpinUp: 0.2,
  turnHold: 2,
  steadyHold: 10,
  reversalHold: 0.5,
  snapRate: 500 * DEGREE,
  snapHalf: 0.1,
};

/**
 * Steady yaw, yaw turn, yaw reversal, roll snap, pitch snap, in this order.
 *
 * @throws InputError for a rate that is not finite or a time that is not above zero
 */
export function usualMotions(options: Partial<MotionOptions> = {}): readonly MotionProfile[] {
  return [steadyYaw, yawTurn, yawReversal, rollSnap, pitchSnap].map((make) => make(options));
}

/** Spun up, then held: no stop. Throws as `usualMotions`. */
export function steadyYaw(options: Partial<MotionOptions> = {}): MotionProfile {
  const { yawRate, yawSpinUp, steadyHold } = checked(options);
  return {
    name: `steady yaw ${yawWay(yawRate)} at ${perSecond(yawRate)} for ${seconds(yawSpinUp + steadyHold)}`,
    segments: [about(2, yawRate / yawSpinUp, yawSpinUp), still(steadyHold)],
  };
}

/** Spun up, held, stopped. Throws as `usualMotions`. */
export function yawTurn(options: Partial<MotionOptions> = {}): MotionProfile {
  const { yawRate, yawSpinUp, turnHold } = checked(options);
  const spin = yawRate / yawSpinUp;
  return {
    name: `a yaw turn ${yawWay(yawRate)} of ${seconds(2 * yawSpinUp + turnHold)} at ${perSecond(yawRate)}`,
    segments: [about(2, spin, yawSpinUp), still(turnHold), about(2, -spin, yawSpinUp)],
  };
}

/** One way, then quickly the other way, then stopped: heading ends as it began. Throws as `usualMotions`. */
export function yawReversal(options: Partial<MotionOptions> = {}): MotionProfile {
  const { yawRate, yawSpinUp, reversalHold } = checked(options);
  const spin = yawRate / yawSpinUp;
  return {
    name: `a yaw reversal, first ${yawWay(yawRate)}, at ${perSecond(yawRate)}`,
    segments: [
      about(2, spin, yawSpinUp),
      still(reversalHold),
      about(2, -spin, 2 * yawSpinUp),
      still(reversalHold),
      about(2, spin, yawSpinUp),
    ],
  };
}

/** Fast bank, right side down for a positive rate: a pulse of acceleration each way, ends at rest. Throws as `usualMotions`. */
export function rollSnap(options: Partial<MotionOptions> = {}): MotionProfile {
  const all = checked(options);
  return snap(`roll snap ${all.snapRate < 0 ? "to the left" : "to the right"}`, 0, all);
}

/** The same about y: nose down for a positive rate, as into forward flight. Throws as `usualMotions`. */
export function pitchSnap(options: Partial<MotionOptions> = {}): MotionProfile {
  const all = checked(options);
  return snap(`pitch snap ${all.snapRate < 0 ? "nose up" : "nose down"}`, 1, all);
}

function snap(name: string, axis: 0 | 1, { snapRate, snapHalf }: MotionOptions): MotionProfile {
  const push = snapRate / snapHalf;
  return {
    name: `a ${name} with a peak of ${perSecond(snapRate)}`,
    segments: [about(axis, push, snapHalf), about(axis, -push, snapHalf)],
  };
}

function about(axis: 0 | 1 | 2, value: number, duration: number): MotionSegment {
  const alpha: Vec3 = [0, 1, 2].map((k) => (k === axis ? value : 0)) as unknown as Vec3;
  return { alpha, duration };
}

const still = (duration: number): MotionSegment => ({ alpha: [0, 0, 0], duration });

const yawWay = (value: number) => (value < 0 ? "to the right" : "to the left");
const seconds = (value: number) => `${Number(value.toFixed(2))} s`;

function checked(options: Partial<MotionOptions>): MotionOptions {
  const all = { ...MOTION_DEFAULTS, ...options };
  throwIfAny(
    notFinite("yawRate", "the rate of yaw", all.yawRate, "rad/s"),
    notFinite("snapRate", "the peak rate of the snap", all.snapRate, "rad/s"),
    ...(["yawSpinUp", "turnHold", "steadyHold", "reversalHold", "snapHalf"] as const).map((key) =>
      notPositive(key, "the time", all[key], "s"),
    ),
  );
  return all;
}
