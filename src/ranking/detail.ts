/** What is worth telling of a place beyond its figures: loops, lever arm, chips at their limits. */

import { type LeverArm, leverArms } from "../attitude/lever-arm.ts";
import type { ShakenFrame } from "../response/bare-frame.ts";
import { coupledModes } from "../response/coupled-modes.ts";
import { clipping, LEAST_WEIGHT, type SpeedMix, steadyForce } from "../sensing/clipping.ts";
import { falseTilt, rectifiedOffset } from "../sensing/rectification.ts";
import type { Assessed } from "./assess.ts";
import { type LoopCoupling, loopCouplings } from "./control-band.ts";
import type { Instruments } from "./instruments.ts";
import { FAST } from "./score.ts";
import type { RankedCandidate, Rectified } from "./types.ts";

export type Detail = Pick<RankedCandidate, "leverArm" | "couplings" | "rectified" | "clipping">;

export function detailsOf(
  bare: ShakenFrame,
  instruments: Instruments,
  places: readonly Assessed[],
): Detail[] {
  const { control } = instruments;
  const arms: readonly LeverArm[] = leverArms(
    places.map((p) => p.lever),
    {
      yawRate: control.yawRate,
      filter: { timeConstant: control.attitudeTime, estimate: "vector" },
      error: control.attitudeError,
    },
  );
  return places.map((p, i) => ({
    leverArm: arms[i],
    couplings: couplingsOf(bare, instruments, p),
    rectified: rectifiedAt(bare, instruments, p),
    clipping: clippingAt(bare, instruments, p),
  }));
}

export function couplingsOf(
  { h, modes }: ShakenFrame,
  { bandwidth, control, torquePerThrust }: Instruments,
  { place }: Pick<Assessed, "place">,
): LoopCoupling[] {
  const settings = { bandwidth, below: control.couplingBelow, torquePerThrust };
  return loopCouplings(h, coupledModes(modes, place), modes.rigid.length, place, settings);
}

function rectifiedAt(
  { h }: ShakenFrame,
  { sensors }: Instruments,
  { reading }: Assessed,
): Rectified {
  const { grid, weights, speeds } = h.excitation;
  const power = weights.map((_, s) =>
    reading.accelAxisPower.reduce((sum, axis) => sum + axis[s], 0),
  );
  const largest = (coefficient: number, upTo: number) =>
    rectifiedOffset(coefficient, power).reduce(
      (most, v, s) => (weights[s] > LEAST_WEIGHT && grid[s] <= upTo ? Math.max(most, v) : most),
      0,
    );
  const levelling = FAST * speeds.hover;
  const accelerometer = largest(sensors.accelerometer.rectification, levelling);
  return {
    gyro: largest(sensors.gyro.rectification, speeds.full),
    accelerometer,
    tilt: falseTilt(accelerometer),
  };
}

export function clippingAt(
  { h }: ShakenFrame,
  { sensors }: Instruments,
  { reading }: Pick<Assessed, "reading">,
): Detail["clipping"] {
  const { grid, weights, speeds } = h.excitation;
  const gyro = clipping(reading.gyroAxisPower, h.excitation, sensors.gyro.range);
  const steady = steadyForce(grid, speeds.hover);
  const along = (mix: SpeedMix) =>
    clipping(reading.accelAxisPower, mix, sensors.accelerometer.range, steady);
  const accelerometer = along(h.excitation);
  const slow = weights.map((w, s) => (grid[s] <= FAST * speeds.hover ? w : 0));
  const levelling = along({ grid, weights: slow });
  return {
    ...(gyro && { gyro }),
    ...(accelerometer && { accelerometer }),
    ...(levelling && { levelling }),
  };
}
