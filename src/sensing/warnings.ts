/** What does not go together in the sensors' figures, though nothing forbids it. */

import type { SensorsDef } from "../frame/types-sensors.ts";
import type { Sampling } from "./sampled-lines.ts";

/**
 * Sentences for people; empty when all is well. A low-pass above half the sampling rate is allowed, as
 * chips allow it: it then does little against folding.
 *
 * @param control bandwidth of the rate loop, Hz; absent where nothing flies
 */
export function samplingWarnings({ gyro, accelerometer }: SensorsDef, control?: number): string[] {
  return [
    ...aboveHalf("gyro", gyro),
    ...aboveHalf("accelerometer", accelerometer),
    ...(control !== undefined && gyro.bandwidth <= control
      ? [
          `the gyro's own low-pass (${gyro.bandwidth} Hz) does not lie above the bandwidth of the rate loop (${control} Hz): such a loop could not fly; check both`,
        ]
      : []),
  ];
}

function aboveHalf(name: string, { bandwidth, sampling }: Sampling): string[] {
  if (bandwidth <= sampling / 2) return [];
  return [
    `the ${name}'s own low-pass (${bandwidth} Hz) lies above half its sampling rate (${sampling / 2} Hz): lines between the two fold back with less than 3 dB taken off`,
  ];
}
