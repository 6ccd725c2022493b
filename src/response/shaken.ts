/**
 * The bare frame as every motor speed shakes it, packed so that hundreds of places can be read.
 *
 * Orders that are the same multiple of the motors' speed share their frequencies, and with them what a
 * stack at a place does to the frame.
 */

import { multiplesOf } from "../excitation/multiples.ts";
import { type Panels, packPanels } from "../linalg/panels.ts";
import type { Harmonics } from "./harmonic.ts";

/** One order of one rotor. */
export interface LoadCase {
  /** in Harmonics.orders and Harmonics.rotors */
  readonly order: number;
  readonly rotor: number;
}

/** Everything at one multiple of the motors' speed. */
export interface MultipleMotion {
  readonly multiple: number;
  /** of the force at every speed of the grid, rad/s (size S) */
  readonly omega: Float64Array;
  readonly loads: readonly LoadCase[];
  /** 1/(lambda (1 + i eta) - omega^2): terms x 2 S, real parts then imaginary parts */
  readonly receptance: Panels;
  /** modal amplitudes: terms x 2 S loads, column s loads + load, real parts then imaginary parts */
  readonly amplitude: Panels;
}

/** Terms are the elastic modes, then the rigid motions. */
export function packHarmonics(h: Harmonics): MultipleMotion[] {
  const { grid } = h.excitation;
  const S = grid.length;
  const terms = h.shapes.length;
  return multiplesOf(h.orders).map(({ multiple, orders }) => {
    const omega = grid.map((speed) => multiple * speed);
    const responses = h.responses.filter((r) => orders.includes(r.order));
    const L = responses.length;
    return {
      multiple,
      omega,
      loads: responses.map(({ order, rotor }) => ({ order, rotor })),
      receptance: packPanels(terms, 2 * S, (t, c) => {
        const [re, im] = h.dynamic(t, omega[c % S] ** 2);
        return (c < S ? re : -im) / (re * re + im * im);
      }),
      amplitude: packPanels(terms, 2 * S * L, (t, c) => {
        const k = c % (S * L);
        const from = responses[k % L];
        return (c < S * L ? from.re : from.im)[Math.floor(k / L) * terms + t];
      }),
    };
  });
}
