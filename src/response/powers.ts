/** From the chip's motion under every load to mean squares. */

import type { Harmonics } from "./harmonic.ts";
import type { MultipleMotion } from "./shaken.ts";

/**
 * Powers at one speed from three rows of the chip's motion; a line of amplitude a has mean square a^2/2.
 *
 * @param byAxis axis and speed
 * @param byLoad loads x speeds
 */
export function addSquares(
  byAxis: readonly Float64Array[],
  byLoad: Float64Array,
  at: number,
  chip: Float64Array,
  first: number,
  half: number,
  gain: number,
): void {
  const S = byAxis[0].length;
  const scale = (gain * gain) / 2;
  for (let axis = 0, row = first; axis < 3; axis++, row += 2 * half) {
    let sum = 0;
    for (let l = 0; l < half; l++) {
      const re = chip[row + l];
      const im = chip[row + half + l];
      const power = scale * (re * re + im * im);
      byLoad[l * S + at] += power;
      sum += power;
    }
    byAxis[axis][at] += sum;
  }
}

/** What the loads make the chip read, by order and speed, and by order and rotor over the mix. */
export function shareOut(
  power: readonly Float64Array[],
  shares: Float64Array,
  { excitation: { weights }, rotors }: Harmonics,
  { loads }: MultipleMotion,
  byLoad: Float64Array,
): void {
  const S = weights.length;
  loads.forEach(({ order, rotor }, l) => {
    let mean = 0;
    for (let at = 0; at < S; at++) {
      const p = byLoad[l * S + at];
      power[order][at] += p;
      mean += weights[at] * p;
    }
    shares[order * rotors.length + rotor] += mean;
  });
}
