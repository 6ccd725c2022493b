/** How the bare frame moves a seat, apart from its elastic modes. */

import type { Harmonics } from "./harmonic.ts";
import { ofUnitAmplitude } from "./load.ts";
import { type Place, sixBy } from "./place.ts";
import type { Port } from "./port.ts";
import type { MultipleMotion } from "./shaken.ts";

/**
 * What the rigid motions give is the same at every speed (`still`); what the modes left out give grows
 * with the square of the rotor's speed (`rising`, per rad^2/s^2). In the stack's own coordinates, 6 x 2
 * half each.
 */
export function motionWithoutElastic(
  h: Harmonics,
  { half, loads, rigid }: MultipleMotion,
  port: Port,
  { rest }: Place,
) {
  const still = new Float64Array(12 * half);
  const rising = new Float64Array(12 * half);
  const count = rigid.length / (2 * half);
  for (let i = 0; i < 6; i++) {
    for (let r = 0; r < count; r++) {
      const a = port.rigid[i * count + r];
      for (let c = 0; c < 2 * half; c++) still[2 * half * i + c] += a * rigid[2 * half * r + c];
    }
  }
  loads.forEach(({ order, rotor }, l) => {
    const { kind, coefficient } = h.orders[order];
    const unit = ofUnitAmplitude(kind, h.rotors[rotor].spin, (name) => rest[rotor][name]);
    const [re, im] = [sixBy(port.W, unit.re, 1), sixBy(port.W, unit.im, 1)];
    for (let i = 0; i < 6; i++) {
      rising[2 * half * i + l] = coefficient * re[i];
      rising[2 * half * i + half + l] = coefficient * im[i];
    }
  });
  return { still, rising };
}
