/** Every motor's share of every line at every speed: its frequency, and its way to the nodes. */

import type { BurdenSetup, Line } from "./burden-types.ts";
import { foldedFrequency } from "./fold.ts";
import { positionOf } from "./frequency-nodes.ts";
import { motorOffsets } from "./motor-notches.ts";

/**
 * Frequencies of the entries, [line][speed][motor], Hz (size e).
 *
 * A folded line may run up or down with the speed. The motors' offsets are the same in both
 * directions, so it does not matter which.
 */
export function entryFrequencies(setup: BurdenSetup, lines: readonly Line[]): Float64Array {
  const { speeds, rotors, fs } = setup;
  const offsets = motorOffsets(setup);
  return Float64Array.from({ length: lines.length * speeds.length * rotors }, (_, e) => {
    const [row, motor] = [Math.floor(e / rotors), e % rotors];
    const [line, speed] = [lines[Math.floor(row / speeds.length)], row % speeds.length];
    const shift = line.order * speeds[speed] * offsets[motor];
    return foldedFrequency(Math.abs(line.frequency[speed] + shift), fs);
  });
}

/** How a line's power at a speed comes to the nodes: one entry for each motor. */
export interface Shares {
  /** index of the node below (size e) */
  readonly below: Int32Array;
  /** per (deg/s)^2 of the line at the speed: to the node below and to the one above (size e) */
  readonly toBelow: Float64Array;
  readonly toAbove: Float64Array;
}

/**
 * Shares of the flight, of the motors and of the nodes, times what notches leave.
 *
 * @param frequencies of the entries, Hz (size e)
 * @param gains of the notches at the entries (size e)
 */
export function sharesOf(
  { weights, rotors }: BurdenSetup,
  frequencies: Float64Array,
  nodes: Float64Array,
  gains: Float64Array,
): Shares {
  const below = new Int32Array(frequencies.length);
  const toBelow = new Float64Array(frequencies.length);
  const toAbove = new Float64Array(frequencies.length);
  frequencies.forEach((f, e) => {
    const position = positionOf(f, nodes);
    const share = (weights[Math.floor(e / rotors) % weights.length] / rotors) * gains[e];
    below[e] = position.below;
    toBelow[e] = share * (1 - position.above);
    toAbove[e] = share * position.above;
  });
  return { below, toBelow, toAbove };
}

/**
 * Adds a line's power to a spectrum on the nodes (size n).
 *
 * @param line its index among the lines
 * @param power at each speed, (deg/s)^2 (size s)
 */
export function addLine(
  spectrum: Float64Array,
  { below, toBelow, toAbove }: Shares,
  rotors: number,
  line: number,
  power: Float64Array,
): void {
  let e = line * power.length * rotors;
  for (const square of power) {
    for (let motor = 0; motor < rotors; motor++, e++) {
      const node = below[e];
      spectrum[node] += square * toBelow[e];
      spectrum[node + 1] += square * toAbove[e];
    }
  }
}
