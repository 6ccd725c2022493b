/**
 * What a linear filter does to a steady sine: how much is left of it, and how late it comes.
 *
 * H = gain e^(i phase) for a sine e^(i omega t). Phases are principal values of each single filter, in
 * [-pi, pi); a lag is negative.
 */

import { negative, throwIfAny } from "../check-number.ts";

/** A filter at one frequency. */
export interface FrequencyResponse {
  /** |H|: 1 passes unchanged, 0 removes */
  readonly gain: number;
  /** arg H, rad */
  readonly phase: number;
  /** -d phase/d omega, s: how late the envelope of a narrow band comes */
  readonly groupDelay: number;
}

/**
 * Filters one after the other at one frequency: gains multiply, phases and delays add. An empty list
 * changes nothing.
 *
 * The sum of the phases is not wrapped back to [-pi, pi), so that a chain of low-passes runs on below
 * -pi and its lag at the control bandwidth can be read off. It is continuous in frequency but for a
 * jump of +pi at the centre of each notch.
 */
export function inSeries(filters: readonly FrequencyResponse[]): FrequencyResponse {
  let [gain, phase, groupDelay] = [1, 0, 0];
  for (const filter of filters) {
    gain *= filter.gain;
    phase += filter.phase;
    groupDelay += filter.groupDelay;
  }
  return { gain, phase, groupDelay };
}

/** H as real and imaginary part. */
export function complexGain({ gain, phase }: FrequencyResponse): readonly [number, number] {
  return [gain * Math.cos(phase), gain * Math.sin(phase)];
}

/**
 * How late the sine itself comes, s: -phase/omega. At f = 0 its limit, the group delay, which holds
 * for filters that pass a constant unchanged in sign, as all of this program do.
 *
 * @param response the filter at f
 * @param f Hz, 0 or more
 * @throws InputError for a frequency that is negative or not finite
 */
export function phaseDelay({ phase, groupDelay }: FrequencyResponse, f: number): number {
  throwIfAny(negative("f", "the frequency", f, "Hz"));
  return f === 0 ? groupDelay : -phase / (2 * Math.PI * f);
}
