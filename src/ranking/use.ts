/** How a place is scored for the way the craft is flown. */

import type { ControlDef } from "../frame/types-sensors.ts";

export type Use = ControlDef["use"];

/** What each figure weighs; common practice, no source. */
export interface UseWeights {
  readonly gyro: number;
  readonly accelerometer: number;
  readonly tilt: number;
}

export const USE_WEIGHTS: Readonly<Record<Use, UseWeights>> = {
  rate: { gyro: 1, accelerometer: 0, tilt: 0 },
  "self-level": { gyro: 0.5, accelerometer: 0.2, tilt: 0.3 },
  both: { gyro: 0.7, accelerometer: 0.1, tilt: 0.2 },
};

/** What a place is scored by. */
export interface Figures {
  /** deg/s rms and g rms as the chips pass them on */
  readonly gyro: number;
  readonly accelerometer: number;
  /** false tilt in steady yaw as the accelerometer alone reads it, as a share of what is put up with */
  readonly tilt: number;
}

export interface ScoreParts {
  /** dB, each against the reference before weighing */
  readonly gyro: number;
  readonly accelerometer: number;
  readonly tilt: number;
}

const decibels = (ratio: number) => 20 * Math.log10(ratio);

/**
 * Levels against the quietest place, and 10 lg(1 + (tilt/allowed)^2) for false tilt: nothing at the
 * centre of gravity, 3 dB where it reaches what is put up with, then as a level.
 */
export function scoreParts(figures: Figures, quietest: Figures): ScoreParts {
  return {
    gyro: decibels(figures.gyro / quietest.gyro),
    accelerometer: decibels(figures.accelerometer / quietest.accelerometer),
    tilt: 10 * Math.log10(1 + figures.tilt ** 2),
  };
}

/** The weighted sum, dB; less is better. */
export function score(parts: ScoreParts, weights: UseWeights): number {
  return (
    weights.gyro * parts.gyro +
    weights.accelerometer * parts.accelerometer +
    weights.tilt * parts.tilt
  );
}

/** "gyro noise 70 %, accelerometer 10 %, false tilt 20 %" */
export function weightsText(use: Use): string {
  const { gyro, accelerometer, tilt } = USE_WEIGHTS[use];
  const named = [
    ["gyro noise", gyro],
    ["accelerometer", accelerometer],
    ["false tilt", tilt],
  ] as const;
  return named
    .filter(([, w]) => w > 0)
    .map(([name, w]) => `${name} ${Math.round(100 * w)} %`)
    .join(", ");
}
