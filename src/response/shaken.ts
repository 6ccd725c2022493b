/**
 * The bare frame as every motor speed shakes it, packed so that hundreds of places can be read.
 *
 * Orders that are the same multiple of the motors' speed share their frequencies, and with them what a
 * stack at a place does to the frame.
 */

import { multiplesOf } from "../excitation/multiples.ts";
import { type Panels, packPanels, wholePanels } from "../linalg/panels.ts";
import type { Harmonics, ModalResponse } from "./harmonic.ts";

/** One order of one rotor. */
export interface LoadCase {
  /** in Harmonics.orders and Harmonics.rotors */
  readonly order: number;
  readonly rotor: number;
}

/**
 * Everything at one multiple of the motors' speed. What belongs to the loads stands in blocks of
 * 2 `half` columns, the real parts of all loads and then the imaginary ones, each brought to a whole
 * number of panels.
 */
export interface MultipleMotion {
  readonly multiple: number;
  /** of the force at every speed of the grid, rad/s (size S) */
  readonly omega: Float64Array;
  readonly loads: readonly LoadCase[];
  /** columns for the real parts of the loads, and for the imaginary ones */
  readonly half: number;
  /** 1/(lambda (1 + i eta) - omega^2): elastic modes x 2 S, real and imaginary part of each speed */
  readonly receptance: Panels;
  /** amplitudes of the elastic modes: modes x 2 half S, a block for each speed */
  readonly amplitude: Panels;
  /**
   * amplitudes of the rigid motions: forces that grow as omega^2 move a free mass by the same at every
   * speed (motions x 2 half, row-major)
   */
  readonly rigid: Float64Array;
}

export function packHarmonics(h: Harmonics): MultipleMotion[] {
  return multiplesOf(h.orders).map(({ multiple, orders }) => {
    const omega = h.excitation.grid.map((speed) => multiple * speed);
    const responses = h.responses.filter((r) => orders.includes(r.order));
    const half = wholePanels(responses.length);
    return {
      multiple,
      omega,
      loads: responses.map(({ order, rotor }) => ({ order, rotor })),
      half,
      receptance: packReceptance(h, omega),
      amplitude: packAmplitudes(h, responses, half),
      rigid: rigidAmplitudes(h, responses, half),
    };
  });
}

function packReceptance(h: Harmonics, omega: Float64Array): Panels {
  return packPanels(h.elastic, 2 * omega.length, (t, c) => {
    const [re, im] = h.dynamic(t, omega[c >> 1] ** 2);
    return (c % 2 === 0 ? re : -im) / (re * re + im * im);
  });
}

function packAmplitudes(h: Harmonics, responses: readonly ModalResponse[], half: number): Panels {
  const terms = h.shapes.length;
  return packPanels(h.elastic, 2 * half * h.excitation.grid.length, (t, c) => {
    const l = c % half;
    if (l >= responses.length) return 0;
    const { re, im } = responses[l];
    const s = Math.floor(c / (2 * half));
    return (c % (2 * half) < half ? re : im)[s * terms + t];
  });
}

function rigidAmplitudes(
  h: Harmonics,
  responses: readonly ModalResponse[],
  half: number,
): Float64Array {
  const count = h.shapes.length - h.elastic;
  const out = new Float64Array(count * 2 * half);
  responses.forEach(({ re, im }, l) => {
    for (let r = 0; r < count; r++) {
      out[2 * half * r + l] = re[h.elastic + r];
      out[2 * half * r + half + l] = im[h.elastic + r];
    }
  });
  return out;
}
