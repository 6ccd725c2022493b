/** Where sampling puts a frequency: at the distance to the nearest multiple of the sampling rate. */

/**
 * min over k of |f - k fs|, Hz, 0 to fs/2 (the sampling theorem).
 *
 * @param f Hz, of either sign
 * @param fs sampling rate, Hz, above zero
 */
export function foldedFrequency(f: number, fs: number): number {
  return Math.abs(f - fs * Math.round(f / fs));
}
