/** The sensor's noise on the nodes, without and with notches. */

import { negative, throwIfAny } from "../check-number.ts";
import type { BurdenSetup } from "./burden-types.ts";
import { bandsOf } from "./frequency-nodes.ts";
import { notchBank, squaredSine } from "./motor-notches.ts";
import { inSeriesGains, type NotchGains, notchGains } from "./notch-gains.ts";

/**
 * Mean square of the three axes together that each node stands for, (deg/s)^2 (size n).
 *
 * @throws InputError where the sensor's own filter has no gain from 0 up
 */
export function noiseOnNodes(setup: BurdenSetup, nodes: Float64Array): Float64Array {
  const density = 3 * setup.noiseDensity ** 2;
  return bandsOf(nodes).map((band, i) => density * band * gainOfSensor(setup, nodes[i]));
}

function gainOfSensor({ noiseGain }: BurdenSetup, f: number): number {
  const gain = noiseGain === undefined ? 1 : noiseGain(f);
  throwIfAny(negative("noiseGain", `the share of the noise's power at ${f} Hz`, gain, ""));
  return gain;
}

/** One multiple's notches at every node and speed, [speed][node]. */
export function notchGainsOnNodes(
  setup: BurdenSetup,
  order: number,
  nodes: Float64Array,
): NotchGains {
  const s = nodes.map((f) => squaredSine(f, setup.fs));
  const everySpeed = new Float64Array(setup.speeds.length * nodes.length);
  for (let n = 0; n < everySpeed.length; n += nodes.length) everySpeed.set(s, n);
  const speedOf = (n: number) => Math.floor(n / nodes.length);
  return notchGains(setup, notchBank(setup, order), everySpeed, speedOf);
}

/** The noise behind the notches of some multiples, mean over the flight (size n). */
export function notchedNoise(
  { weights }: BurdenSetup,
  noise: Float64Array,
  multiples: readonly NotchGains[],
): Float64Array {
  if (multiples.length === 0) return noise;
  const count = noise.length;
  const gains = inSeriesGains(multiples, weights.length * count);
  const left = new Float64Array(count);
  for (let n = 0; n < gains.length; n++) {
    left[n % count] += weights[Math.floor(n / count)] * gains[n] * noise[n % count];
  }
  return left;
}
