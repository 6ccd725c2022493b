/**
 * What the filter burden needs and all places of a frame share: the low-passes and sets of notches to
 * choose from, what each leaves at which frequency, and what it costs in delay.
 */

import { checkBurdenSetup, checkLines } from "./burden-check.ts";
import {
  type Delay,
  lowPassDelay,
  notchDelay,
  notchDelayBySpeed,
  rarelyExceeded,
} from "./burden-delay.ts";
import { entryFrequencies, type Shares, sharesOf } from "./burden-entries.ts";
import { noiseOnNodes, notchedNoise, notchGainsOnNodes } from "./burden-noise.ts";
import type { BurdenSetup, Line, LowPass } from "./burden-types.ts";
import { frequencyNodes } from "./frequency-nodes.ts";
import { cutOffGrid, LOW_PASS_ORDERS, lowPassPower } from "./low-pass.ts";
import { followedInHover, notchBank, squaredSine } from "./motor-notches.ts";
import { inSeriesGains, notchGains } from "./notch-gains.ts";
import { choicesOf, MOST_FOLLOWED } from "./notch-sets.ts";

/** A low-pass that may be chosen. */
export interface LowPassChoice extends LowPass {
  /** |H|^2 at the nodes (size n) */
  readonly gains: Float64Array;
  readonly delay: Delay;
}

/** Multiples that may be followed together. */
export interface NotchSet {
  /** multiples of the motor speed, ascending */
  readonly orders: readonly number[];
  readonly delay: Delay;
  /** at the control bandwidth, not exceeded in 99 % of the flight, s */
  readonly delayMostOfFlight: number;
  /** the sensor's noise behind the notches, at the nodes, (deg/s)^2 (size n) */
  readonly noise: Float64Array;
  /** the way of the lines through the notches to the nodes */
  readonly shares: Shares;
}

export interface BurdenTable {
  readonly setup: BurdenSetup;
  readonly lines: readonly Line[];
  /** by order; cut-offs ascending, so that delays fall and what passes grows */
  readonly lowPasses: readonly (readonly LowPassChoice[])[];
  /** the lines' multiples that notches can follow in hover, ascending */
  readonly followed: readonly number[];
  /** of 0 to 3 of them, fewest first, then lowest first */
  readonly sets: readonly NotchSet[];
}

/**
 * The table for a frame's lines. It grows with the lines, speeds and motors, and with the number of
 * ways to choose up to three of the lines' multiples.
 *
 * @throws InputError naming what is wrong with the setup or a line
 */
export function burdenTable(setup: BurdenSetup, lines: readonly Line[]): BurdenTable {
  checkBurdenSetup(setup);
  checkLines(setup, lines);
  const nodes = frequencyNodes(setup);
  const followed = [...new Set(lines.map(({ order }) => order))]
    .filter((order) => followedInHover(setup, order))
    .sort((a, b) => a - b);
  return {
    setup,
    lines,
    lowPasses: LOW_PASS_ORDERS.map((order) => lowPassChoices(setup, order, nodes)),
    followed,
    sets: notchSets(setup, lines, followed, nodes),
  };
}

function lowPassChoices(
  setup: BurdenSetup,
  order: LowPass["order"],
  nodes: Float64Array,
): LowPassChoice[] {
  const tangent = (f: number) => Math.tan(Math.PI * (f / setup.fs));
  const tangents = nodes.map(tangent);
  return [...cutOffGrid(setup.controlBandwidth, setup.fs)].map((cutOff) => {
    const t0 = tangent(cutOff);
    const gains = tangents.map((t) => lowPassPower(order, (t / t0) ** 2));
    return { order, cutOff, gains, delay: lowPassDelay(setup, { order, cutOff }) };
  });
}

function notchSets(
  setup: BurdenSetup,
  lines: readonly Line[],
  followed: readonly number[],
  nodes: Float64Array,
): NotchSet[] {
  const { speeds, weights, rotors, fs, notch } = setup;
  const noise = noiseOnNodes(setup, nodes);
  const frequencies = entryFrequencies(setup, lines);
  const s = frequencies.map((f) => squaredSine(f, fs));
  const speedOf = (e: number) => Math.floor(e / rotors) % speeds.length;
  const multiples = followed.map((order) => ({
    order,
    delay: notchDelay(setup, order),
    bySpeed: notchDelayBySpeed(setup, order),
    onLines: notchGains(setup, notchBank(setup, order), s, speedOf),
    onNodes: notchGainsOnNodes(setup, order, nodes),
  }));
  return choicesOf(multiples, notch.most ?? MOST_FOLLOWED).map((set) => {
    const sum = (of: (multiple: (typeof set)[number]) => number) =>
      set.reduce((total, multiple) => total + of(multiple), 0);
    const onLines = set.map((multiple) => multiple.onLines);
    return {
      orders: set.map(({ order }) => order),
      delay: { atControl: sum((m) => m.delay.atControl), slow: sum((m) => m.delay.slow) },
      delayMostOfFlight: rarelyExceeded(
        speeds.map((_, i) => sum((m) => m.bySpeed[i])),
        weights,
      ),
      noise: notchedNoise(
        setup,
        noise,
        set.map((multiple) => multiple.onNodes),
      ),
      shares: sharesOf(setup, frequencies, nodes, inSeriesGains(onLines, s.length)),
    };
  });
}
