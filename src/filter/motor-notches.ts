/**
 * Notches that follow the motors: each motor has one for every multiple followed, at its own speed.
 *
 * Motors that share the lift differ by some percent in speed. They are set apart evenly, so that the
 * same file always gives the same answer, as far as makes their standard deviation the one given.
 *
 * Every notch misses its motor a little. What makes it miss is mostly that the speed is known late, so
 * that all notches are low while the motors speed up and high while they slow down. Hence all miss in
 * the same direction, and what is left is the mean of the two cases.
 *
 *   |H|^2 = (s0 - s)^2/((s0 - s)^2 + s(1 - s) s0(1 - s0)/Q^2),  s = sin^2(pi f/fs)
 *
 * is the gain of `notchBiquad`: its numerator is cos w - cos w0 = 2 (s0 - s), its denominator has
 * alpha sin w beside it. It never exceeds 1.
 */

import { notchBiquad } from "./biquad.ts";
import { biquadResponse } from "./biquad-response.ts";
import type { BurdenSetup } from "./burden-types.ts";
import { type FrequencyResponse, inSeries } from "./frequency-response.ts";
import { HIGHEST_SHARE } from "./low-pass.ts";

/** The notches of one multiple at all speeds, missing their motors upwards and downwards. */
export interface NotchBank {
  /** s0 of every notch, [speed][motor]; 0 where it is switched off (size speeds x rotors) */
  readonly high: Float64Array;
  readonly low: Float64Array;
}

/** Each motor's speed less the mean, as a share of the mean: evenly spaced, sum 0 (size rotors). */
export function motorOffsets({ rotors, motorSpread }: BurdenSetup): Float64Array {
  // the standard deviation of -(n - 1), -(n - 3), ..., n - 1 is sqrt((n^2 - 1)/3)
  const unit = rotors > 1 ? motorSpread / Math.sqrt((rotors * rotors - 1) / 3) : 0;
  return Float64Array.from({ length: rotors }, (_, r) => unit * (2 * r - (rotors - 1)));
}

/** s = sin^2(pi f/fs): 0 at a constant, 1 at fs/2. */
export function squaredSine(f: number, fs: number): number {
  return Math.sin(Math.PI * (f / fs)) ** 2;
}

/**
 * Whether a notch may work at f0: above the control bandwidth, for it would take from the loop what
 * the loop needs, and no higher than any low-pass is set. Else it is switched off.
 */
export function mayNotch({ controlBandwidth, fs }: BurdenSetup, f0: number): boolean {
  return f0 > controlBandwidth && f0 <= HIGHEST_SHARE * fs;
}

/** Whether all notches of a multiple work in hover, where the delay is told. */
export function followedInHover(setup: BurdenSetup, order: number): boolean {
  const widest = motorOffsets(setup)[setup.rotors - 1];
  const { trackingError } = setup.notch;
  const f0 = order * setup.hover;
  return (
    mayNotch(setup, f0 * (1 - widest) * (1 - trackingError)) &&
    mayNotch(setup, f0 * (1 + widest) * (1 + trackingError))
  );
}

export function notchBank(setup: BurdenSetup, order: number): NotchBank {
  const offsets = motorOffsets(setup);
  const centres = (miss: number) => {
    const s0 = new Float64Array(setup.speeds.length * setup.rotors);
    for (let i = 0, n = 0; i < setup.speeds.length; i++) {
      for (const offset of offsets) {
        const f0 = order * setup.speeds[i] * (1 + offset) * (1 + miss);
        s0[n++] = mayNotch(setup, f0) ? squaredSine(f0, setup.fs) : 0;
      }
    }
    return s0;
  };
  return { high: centres(setup.notch.trackingError), low: centres(-setup.notch.trackingError) };
}

/**
 * |H|^2 of all motors' notches of one multiple in series, at one speed.
 *
 * @param centres `high` or `low` of a bank
 * @param s sin^2(pi f/fs) of the frequency asked for
 */
export function bankPower(
  centres: Float64Array,
  { rotors, notch }: BurdenSetup,
  speed: number,
  s: number,
): number {
  let power = 1;
  for (let n = speed * rotors; n < (speed + 1) * rotors; n++) {
    const s0 = centres[n];
    if (s0 === 0) continue;
    const d2 = (s0 - s) * (s0 - s);
    power *= d2 / (d2 + (s * (1 - s) * s0 * (1 - s0)) / (notch.quality * notch.quality));
  }
  return power;
}

/** The notches of one multiple, on their motors at a mean speed in rev/s, at the frequency f in Hz. */
export function notchesAt(
  setup: BurdenSetup,
  order: number,
  speed: number,
  f: number,
): FrequencyResponse {
  const centres = [...motorOffsets(setup)].map((offset) => order * speed * (1 + offset));
  return inSeries(
    centres
      .filter((f0) => mayNotch(setup, f0))
      .map((f0) => biquadResponse(notchBiquad({ f0, Q: setup.notch.quality, fs: setup.fs }), f)),
  );
}
