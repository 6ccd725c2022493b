/** What low-passes and notches cost in delay. */

import { biquadResponse } from "./biquad-response.ts";
import type { BurdenSetup, LowPass } from "./burden-types.ts";
import { type FrequencyResponse, inSeries, phaseDelay } from "./frequency-response.ts";
import { lowPassSections } from "./low-pass.ts";
import { notchesAt } from "./motor-notches.ts";

/** Delays of filters in series add up. */
export interface Delay {
  /** of a sine at the control bandwidth, s */
  readonly atControl: number;
  /** of slow motions, s */
  readonly slow: number;
}

/** Share of the flight in which the notches may delay more than is told. */
const RARE = 0.01;

export function lowPassDelay(setup: BurdenSetup, lowPass: LowPass): Delay {
  const sections = lowPassSections(lowPass, setup.fs);
  return delay(setup, (f) => inSeries(sections.map((section) => biquadResponse(section, f))));
}

/** Of all motors' notches of one multiple, in hover. */
export function notchDelay(setup: BurdenSetup, order: number): Delay {
  return delay(setup, (f) => notchesAt(setup, order, setup.hover, f));
}

/** Of all motors' notches of one multiple at the control bandwidth, at each speed, s (size s). */
export function notchDelayBySpeed(setup: BurdenSetup, order: number): Float64Array {
  const f = setup.controlBandwidth;
  return setup.speeds.map((speed) => phaseDelay(notchesAt(setup, order, speed, f), f));
}

/**
 * The value that is not exceeded in 99 % of the flight: the smallest of `values` with no more than 1 %
 * of the weights on greater ones.
 *
 * @param values one or more (size s)
 * @param weights summing to 1 (size s)
 */
export function rarelyExceeded(values: Float64Array, weights: Float64Array): number {
  const falling = [...values.keys()].sort((a, b) => values[b] - values[a]);
  let above = 0;
  for (const i of falling) {
    above += weights[i];
    if (above > RARE) return values[i];
  }
  return values[falling[falling.length - 1]];
}

function delay(
  { controlBandwidth }: BurdenSetup,
  response: (f: number) => FrequencyResponse,
): Delay {
  return {
    atControl: phaseDelay(response(controlBandwidth), controlBandwidth),
    slow: response(0).groupDelay,
  };
}
