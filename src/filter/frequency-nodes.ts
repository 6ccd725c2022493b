/**
 * The frequencies that a signal's power is gathered on.
 *
 * Power between two nodes is shared between them so that its mean frequency stays; a low-pass is then
 * reckoned at the nodes only, once for all places. This replaces its gain by straight pieces from node
 * to node, and what grows with the cut-off still does. Nodes lie evenly on a logarithmic scale of
 * t = tan(pi f/fs), on which all low-passes look alike (`low-pass.ts`). They fall as t^(-2n) at most, so
 * with steps of h what they leave is overstated by up to h^2/8 x 2n(2n + 1): 0.2 % for h = 1.5 % and
 * n = 4. Neighbouring cut-offs, 3 % apart, differ by up to 27 %.
 */

import type { BurdenSetup } from "./burden-types.ts";
import { HIGHEST_SHARE } from "./low-pass.ts";

/** Step of ln t. */
const STEP = 0.015;

/** The lowest node above zero over the control bandwidth: all low-passes pass it within 0.04 %. */
const LOWEST = 0.02;

/** t of the highest node below fs/2 over t of the highest cut-off: all low-passes leave up to 0.04 %. */
const HIGHEST = 50;

/** 0, then evenly in ln tan(pi f/fs), fs/2; Hz (size n). */
export function frequencyNodes({ controlBandwidth, fs }: BurdenSetup): Float64Array {
  const lowest = Math.tan((Math.PI * LOWEST * controlBandwidth) / fs);
  const highest = HIGHEST * Math.tan(Math.PI * HIGHEST_SHARE);
  const span = Math.log(highest / lowest);
  const steps = Math.ceil(span / STEP);
  const between = Array.from({ length: steps + 1 }, (_, i) => {
    return (fs / Math.PI) * Math.atan(lowest * Math.exp((span * i) / steps));
  });
  return Float64Array.of(0, ...between, fs / 2);
}

/** Where a frequency lies among the nodes. */
export interface Position {
  /** index of the node at or below it; never the last one */
  readonly below: number;
  /** share of its power that goes to the node above, 0 to 1 */
  readonly above: number;
}

/** @param f Hz, 0 to the last node; more by rounding counts as the last node */
export function positionOf(f: number, nodes: Float64Array): Position {
  let [below, beyond] = [0, nodes.length - 1];
  while (beyond - below > 1) {
    const middle = (below + beyond) >> 1;
    if (nodes[middle] <= f) below = middle;
    else beyond = middle;
  }
  return { below, above: Math.min((f - nodes[below]) / (nodes[beyond] - nodes[below]), 1) };
}

/** The band of frequencies that each node stands for, Hz; they sum to fs/2 (size n). */
export function bandsOf(nodes: Float64Array): Float64Array {
  const last = nodes.length - 1;
  return nodes.map((_, i) => (nodes[Math.min(i + 1, last)] - nodes[Math.max(i - 1, 0)]) / 2);
}
