/** Every chain the burden may choose from, reckoned filter by filter from the coefficients. */

import { type Biquad, notchBiquad } from "../../src/filter/biquad.ts";
import type { BurdenSetup, Line, LowPass } from "../../src/filter/burden-types.ts";
import { cutOffGrid, HIGHEST_SHARE, lowPassSections } from "../../src/filter/low-pass.ts";

export interface BruteChain {
  readonly lowPass: LowPass | undefined;
  readonly notches: readonly number[];
  readonly delay: number;
  /** mean square left */
  readonly power: number;
}

/** Frequencies at which noise is summed up, evenly from 0 to fs/2. */
const NOISE = 120;

interface Sine {
  readonly f: number;
  readonly power: number;
  /** mean motor speed while it sounds */
  readonly speed: number;
}

/** All sets of multiples with all low-passes; every multiple counts as one that can be followed. */
export function bruteChains(
  setup: BurdenSetup,
  lines: readonly Line[],
  powers: readonly Float64Array[],
): readonly BruteChain[] {
  const { fs, controlBandwidth, hover } = setup;
  const sines = [...lineSines(setup, lines, powers), ...noiseSines(setup)];
  const angles = sines.map(({ f }) => angleOf(f, fs));
  const control = angleOf(controlBandwidth, fs);
  const lowPasses = [
    { lowPass: undefined, sections: [] },
    ...([1, 2, 4] as const).flatMap((order) =>
      [...cutOffGrid(controlBandwidth, fs)].map((cutOff) => {
        const lowPass: LowPass = { order, cutOff };
        return { lowPass, sections: lowPassSections(lowPass, fs) };
      }),
    ),
  ].map((choice) => ({
    ...choice,
    gains: angles.map((angle) => gain2(choice.sections, angle)),
    phase: phaseOf(choice.sections, control),
  }));
  return subsets([...new Set(lines.map(({ order }) => order))]).flatMap((notches) => {
    const left = sines.map(({ power, speed }, i) => {
      const [high, low] = [1, -1].map((sign) => {
        const miss = sign * setup.notch.trackingError;
        return gain2(motorNotches(setup, notches, speed, miss), angles[i]);
      });
      return (power * (high + low)) / 2;
    });
    const phase = phaseOf(motorNotches(setup, notches, hover, 0), control);
    return lowPasses.map((choice) => ({
      lowPass: choice.lowPass,
      notches,
      delay: -(phase + choice.phase) / (2 * Math.PI * controlBandwidth),
      power: left.reduce((sum, power, i) => sum + power * choice.gains[i], 0),
    }));
  });
}

/** The motors' notches at a mean speed, all off by the share `miss`. */
export function motorNotches(
  setup: BurdenSetup,
  orders: readonly number[],
  speed: number,
  miss: number,
): readonly Biquad[] {
  const { fs, controlBandwidth, notch } = setup;
  return orders.flatMap((order) =>
    motorSpeeds(setup, speed)
      .map((of) => order * of * (1 + miss))
      .filter((f0) => f0 > controlBandwidth && f0 <= HIGHEST_SHARE * fs)
      .map((f0) => notchBiquad({ f0, Q: notch.quality, fs })),
  );
}

/** Evenly spaced, of the mean and standard deviation asked for. */
export function motorSpeeds({ rotors, motorSpread }: BurdenSetup, mean: number): number[] {
  const even = Array.from({ length: rotors }, (_, r) => r - (rotors - 1) / 2);
  const deviation = Math.sqrt(even.reduce((sum, x) => sum + x * x, 0) / rotors);
  return even.map((x) => mean * (1 + (rotors > 1 ? (motorSpread * x) / deviation : 0)));
}

function lineSines(
  setup: BurdenSetup,
  lines: readonly Line[],
  powers: readonly Float64Array[],
): Sine[] {
  const { speeds, weights, rotors, fs } = setup;
  return lines.flatMap(({ order }, l) =>
    [...speeds].flatMap((speed, i) =>
      motorSpeeds(setup, speed).map((of) => {
        const f = order * of;
        const seen = f > fs / 2 ? fs - f : f;
        return { f: seen, power: (weights[i] * powers[l][i]) / rotors, speed };
      }),
    ),
  );
}

function noiseSines({ speeds, weights, fs, noiseDensity }: BurdenSetup): Sine[] {
  const power = (3 * noiseDensity ** 2 * fs) / 2 / NOISE;
  return [...speeds].flatMap((speed, i) =>
    Array.from({ length: NOISE }, (_, k) => {
      return { f: ((k + 0.5) / NOISE) * (fs / 2), power: power * weights[i], speed };
    }),
  );
}

function subsets(orders: readonly number[]): readonly (readonly number[])[] {
  return Array.from({ length: 2 ** orders.length }, (_, bits) =>
    orders.filter((_order, i) => (bits >> i) & 1),
  );
}

/** cos and sin of w and 2w, w = 2 pi f/fs. */
type Angle = readonly [number, number, number, number];

function angleOf(f: number, fs: number): Angle {
  const w = 2 * Math.PI * (f / fs);
  return [Math.cos(w), Math.sin(w), Math.cos(2 * w), Math.sin(2 * w)];
}

function gain2(filters: readonly Biquad[], at: Angle): number {
  let product = 1;
  for (const { b, a } of filters) {
    const [B, A] = [sum(b, at), sum(a, at)];
    product *= (B[0] ** 2 + B[1] ** 2) / (A[0] ** 2 + A[1] ** 2);
  }
  return product;
}

/** Of all in series: each lags by less than half a turn. */
function phaseOf(filters: readonly Biquad[], at: Angle): number {
  return filters.reduce((total, { b, a }) => {
    const [B, A] = [sum(b, at), sum(a, at)];
    return total + Math.atan2(B[1] * A[0] - B[0] * A[1], B[0] * A[0] + B[1] * A[1]);
  }, 0);
}

/** sum c_k e^(-jkw), real and imaginary */
function sum(c: Biquad["b"], [cos1, sin1, cos2, sin2]: Angle): readonly [number, number] {
  return [c[0] + c[1] * cos1 + c[2] * cos2, -c[1] * sin1 - c[2] * sin2];
}
