/**
 * The bare frame as every motor speed shakes it, packed so that hundreds of places can be read.
 *
 * Orders that are the same multiple of the motors' speed share their frequencies, and with them what a
 * stack at a place does to the frame.
 */

import { multiplesOf } from "../excitation/multiples.ts";
import { type Panels, setColumn, wholePanels, zeroPanels } from "../linalg/panels.ts";
import type { Harmonics, ModalResponse, Receptance } from "./harmonic.ts";

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
      receptance: packReceptance(h, multiple),
      amplitude: packAmplitudes(h, responses, half),
      rigid: rigidAmplitudes(h, responses, half),
    };
  });
}

function packReceptance({ elastic, shapes, receptances }: Harmonics, multiple: number): Panels {
  const { re, im } = receptances.get(multiple) as Receptance;
  const speeds = re.length / shapes.length;
  const out = zeroPanels(elastic, 2 * speeds);
  for (let s = 0; s < speeds; s++) {
    setColumn(out, 2 * s, re, s * shapes.length);
    setColumn(out, 2 * s + 1, im, s * shapes.length);
  }
  return out;
}

function packAmplitudes(h: Harmonics, responses: readonly ModalResponse[], half: number): Panels {
  const terms = h.shapes.length;
  const speeds = h.excitation.grid.length;
  const out = zeroPanels(h.elastic, 2 * half * speeds);
  responses.forEach(({ re, im }, l) => {
    for (let s = 0; s < speeds; s++) {
      setColumn(out, 2 * half * s + l, re, s * terms);
      setColumn(out, 2 * half * s + half + l, im, s * terms);
    }
  });
  return out;
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
