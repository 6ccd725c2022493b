/**
 * The least delay that brings what a place leaves in the signal below the target.
 *
 * For given notches and a given order of low-pass, a higher cut-off delays less and lets more pass, at
 * every frequency (`low-pass.ts`). So the best cut-off is the highest that meets the target, and
 * bisection finds it.
 */

import { checkPowers } from "./burden-check.ts";
import { addLine } from "./burden-entries.ts";
import type { BurdenTable, LowPassChoice } from "./burden-table.ts";
import type { Burden, FilterBurden } from "./burden-types.ts";
import { behind, better, type Chain, chain, type Notched, notched } from "./chain.ts";
import { MOST_FOLLOWED } from "./notch-sets.ts";

/**
 * The burden of one place, without and with notches.
 *
 * Of all chains that meet the target the one with the least delay at the control bandwidth is taken;
 * of equals the one with the fewest notches, then the lowest multiples, then the lowest order of the
 * low-pass. Where none does, the one that leaves least. Up to three multiples are followed, of those
 * that have the most power here and can be followed in hover. A signal that meets the target as it is
 * needs no filter.
 *
 * @param powers of each line of the table, at each speed: mean square over the three axes and all
 *   motors together, behind the sensor's own filter, (deg/s)^2; the motors have equal parts of it
 * @throws InputError for powers of the wrong size, negative or not finite
 */
export function filterBurden(table: BurdenTable, powers: readonly Float64Array[]): FilterBurden {
  checkPowers(table.setup, table.lines, powers);
  const [none, ...sets] = table.sets;
  const raw = chain(table, notched(table, none, powers), undefined);
  const without = leastDelay(table, raw, raw);
  const strongest = strongestMultiples(table, powers);
  let best = without;
  for (const set of sets) {
    if (!set.orders.every((order) => strongest.includes(order))) continue;
    if (best.meets && set.delay.atControl >= best.delay) continue;
    best = leastDelay(table, notched(table, set, powers), best);
  }
  const told = burdenOf(table, powers, without);
  return {
    raw: Math.sqrt(raw.power),
    without: told,
    with: best === without ? told : burdenOf(table, powers, best),
  };
}

/** The three multiples with the most power, of those that can be followed; of equals the lower. */
function strongestMultiples(
  { setup, lines, followed }: BurdenTable,
  powers: readonly Float64Array[],
): readonly number[] {
  const strength = new Map(followed.map((order) => [order, 0]));
  lines.forEach(({ order }, l) => {
    let mean = strength.get(order);
    if (mean === undefined) return;
    for (let i = 0; i < setup.weights.length; i++) mean += setup.weights[i] * powers[l][i];
    strength.set(order, mean);
  });
  const falling = [...strength].sort(([, a], [, b]) => b - a);
  return falling.slice(0, MOST_FOLLOWED).map(([order]) => order);
}

/** The best chain with these notches, or `best` where none is better. */
function leastDelay(table: BurdenTable, signal: Notched, best: Chain): Chain {
  let least = better(best, chain(table, signal, undefined));
  for (const choices of table.lowPasses) {
    least = better(least, highestCutOff(table, signal, choices, least));
  }
  return least;
}

/** The chain with the highest cut-off that meets the target; `best` where it cannot be better. */
function highestCutOff(
  table: BurdenTable,
  signal: Notched,
  choices: readonly LowPassChoice[],
  best: Chain,
): Chain {
  const at = (i: number) => chain(table, signal, choices[i]);
  const ofNotches = signal.set.delay.atControl;
  const faster = (i: number) => ofNotches + choices[i].delay.atControl < best.delay;
  const first = best.meets ? lowest(0, choices.length, faster) : 0;
  if (first === choices.length) return best;
  const slowest = at(first);
  if (!slowest.meets) return best.meets ? best : slowest;
  const failing = lowest(first + 1, choices.length, (i) => !at(i).meets);
  return failing === first + 1 ? slowest : at(failing - 1);
}

/** The least i from `from` on that has what all later ones have, too; `to` where none before it has. */
function lowest(from: number, to: number, has: (i: number) => boolean): number {
  let [low, high] = [from, to];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (has(middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}

function burdenOf(table: BurdenTable, powers: readonly Float64Array[], best: Chain): Burden {
  const { set, lowPass, delay, power, meets } = best;
  const { rotors, controlBandwidth } = table.setup;
  const lines = powers.map((ofLine, l) => {
    const alone = new Float64Array(set.noise.length);
    addLine(alone, set.shares, rotors, l, ofLine);
    return behind(alone, lowPass);
  });
  const noise = behind(set.noise, lowPass);
  const most = Math.max(noise, ...lines);
  return {
    attainable: meets,
    lowPass: lowPass && { order: lowPass.order, cutOff: lowPass.cutOff },
    notches: set.orders,
    delay,
    lag: 2 * Math.PI * controlBandwidth * delay,
    groupDelay: set.delay.slow + (lowPass?.delay.slow ?? 0),
    delayMostOfFlight: set.delayMostOfFlight + (lowPass?.delay.atControl ?? 0),
    residual: Math.sqrt(power),
    residualOfLines: lines.map(Math.sqrt),
    residualOfNoise: Math.sqrt(noise),
    mostFrom: noise === most ? "noise" : table.lines[lines.indexOf(most)].name,
  };
}
