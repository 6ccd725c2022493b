/** Setups and lines for the filter burden; all numbers invented. */

import type { BurdenSetup, Line } from "../../src/filter/burden-types.ts";

/** One motor, one speed, no noise, notches without error: closed forms apply. */
export const PLAIN: BurdenSetup = {
  fs: 32000,
  speeds: Float64Array.of(200),
  weights: Float64Array.of(1),
  hover: 200,
  controlBandwidth: 30,
  target: 1,
  noiseDensity: 0,
  rotors: 1,
  motorSpread: 0,
  notch: { quality: 3, trackingError: 0 },
};

/** The line of a multiple at the setup's speeds, folded back once where it lies above fs/2. */
export function lineOf({ speeds, fs }: BurdenSetup, order: number, name = `order ${order}`): Line {
  const above = (speed: number) => order * speed > fs / 2;
  return {
    name,
    order,
    frequency: speeds.map((speed) => (above(speed) ? fs - order * speed : order * speed)),
    folded: Uint8Array.from(speeds, (speed) => (above(speed) ? 1 : 0)),
  };
}
