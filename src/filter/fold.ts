/** Where sampling puts a frequency: at the distance to the nearest multiple of the sampling rate. */

import { negative, notPositive, throwIfAny } from "../check-number.ts";

/**
 * min over k of |f - k fs|, Hz, 0 to fs/2: cos(2 pi f n/fs) has the same samples for f and for |f - k fs|
 * (sampling theorem).
 *
 * @param f Hz, 0 or more
 * @param fs sampling rate, Hz
 * @throws InputError for a negative or not finite frequency, or a sampling rate not above zero
 */
export function foldedFrequency(f: number, fs: number): number {
  throwIfAny(
    negative("f", "the frequency", f, "Hz"),
    notPositive("fs", "the sampling rate", fs, "Hz"),
  );
  const rest = f % fs; // exact, where fs * round(f/fs) would round
  return Math.min(rest, fs - rest);
}
