/** Orders that shake at the same frequency. */

import type { OrderForce } from "./types.ts";

/** A multiple of the rotor's speed with the indices of the orders that have it. */
export interface Multiple {
  readonly multiple: number;
  readonly orders: readonly number[];
}

/**
 * The distinct multiples of the rotor's speed, ascending. Orders of one multiple (unbalance and blade
 * difference at 1, thrust and torque at blade pass) shake at the same frequency, but how their phases
 * lie to each other is not known: on the average over all phases their powers add, so that is how to
 * sum them.
 */
export function multiplesOf(orders: readonly OrderForce[]): Multiple[] {
  const groups = new Map<number, number[]>();
  orders.forEach(({ order }, i) => {
    const group = groups.get(order);
    if (group) group.push(i);
    else groups.set(order, [i]);
  });
  return [...groups]
    .map(([multiple, indices]) => ({ multiple, orders: indices }))
    .sort((a, b) => a.multiple - b.multiple);
}
