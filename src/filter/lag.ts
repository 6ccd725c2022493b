/**
 * Analogue filters: gain, phase and delay in closed form, with u = f/f0.
 *
 *   first-order lag         H = 1/(1 + iu)
 *   second-order low-pass   H = 1/(1 - u^2 + iu/Q)
 *   notch                   H = (1 - u^2)/(1 - u^2 + iu/Q)
 *
 * All from these transfer functions; the two of second order are the prototypes of R. Bristow-Johnson,
 * "Cookbook formulae for audio EQ biquad filter coefficients", W3C Working Group Note, 8 June 2021.
 * Slow signals come late by 1/(2 pi fc), 1/(2 pi f0 Q) and 1/(2 pi f0 Q). A digital filter of the same
 * f0 and Q (`biquad.ts`) tends to these as the square of f/fs.
 */

import { negative, notPositive, throwIfAny } from "../check-number.ts";
import type { FrequencyResponse } from "./frequency-response.ts";

export interface SecondOrder {
  /** cut-off of a low-pass, centre of a notch, Hz */
  readonly f0: number;
  /** quality factor: 1/sqrt(2) is the flattest low-pass; f0/Q is the width of a notch at -3 dB */
  readonly Q: number;
}

/**
 * First-order lag: -3 dB and -45 degrees at the cut-off.
 *
 * @param fc cut-off, Hz
 * @param f Hz, 0 or more
 * @throws InputError for a cut-off that is not above zero, or a negative or not finite frequency
 */
export function firstOrderLag(fc: number, f: number): FrequencyResponse {
  throwIfAny(
    notPositive("fc", "the cut-off frequency", fc, "Hz"),
    negative("f", "the frequency", f, "Hz"),
  );
  const u = f / fc;
  return {
    gain: 1 / Math.hypot(1, u),
    phase: -Math.atan(u),
    groupDelay: 1 / (2 * Math.PI * fc) / (1 + u * u),
  };
}

/**
 * Second-order low-pass: gain Q and -90 degrees at f0; the phase falls from 0 towards -pi.
 *
 * @param f Hz, 0 or more
 * @throws InputError for f0 or Q not above zero, or a negative or not finite frequency
 */
export function secondOrderLowPass(filter: SecondOrder, f: number): FrequencyResponse {
  const { u, real, imaginary } = denominator(filter, f);
  return {
    gain: 1 / Math.hypot(real, imaginary),
    phase: -Math.atan2(imaginary, real),
    groupDelay: groupDelay(filter, u),
  };
}

/**
 * Notch: nothing is left at f0. The phase falls from 0 to -pi/2 at f0, where it jumps by +pi, and
 * falls again to 0; at f0 itself it is the one just below. The group delay is that of the low-pass of
 * the same f0 and Q, for the numerator is real, and has no jump.
 *
 * @param f Hz, 0 or more
 * @throws InputError for f0 or Q not above zero, or a negative or not finite frequency
 */
export function notch(filter: SecondOrder, f: number): FrequencyResponse {
  const { u, real, imaginary } = denominator(filter, f);
  return {
    gain: Math.abs(real) / Math.hypot(real, imaginary),
    phase: -Math.atan(imaginary / real),
    groupDelay: groupDelay(filter, u),
  };
}

/** 1 - u^2 + iu/Q */
function denominator({ f0, Q }: SecondOrder, f: number) {
  throwIfAny(
    notPositive("f0", "the frequency of the filter", f0, "Hz"),
    notPositive("Q", "the quality factor", Q, ""),
    negative("f", "the frequency", f, "Hz"),
  );
  const u = f / f0;
  return { u, real: 1 - u * u, imaginary: u / Q };
}

/** (1/(2 pi f0 Q)) (1 + u^2)/((1 - u^2)^2 + (u/Q)^2) */
function groupDelay({ f0, Q }: SecondOrder, u: number): number {
  const dc = 1 / (2 * Math.PI * f0 * Q);
  return (dc * (1 + u * u)) / ((1 - u * u) ** 2 + (u / Q) ** 2);
}
