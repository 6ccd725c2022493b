/** Filter burdens as fields of a JSON document. */

import { multiplesOf } from "../../excitation/multiples.ts";
import type { Excitation } from "../../excitation/types.ts";
import type { Burden, FilterBurden } from "../../filter/burden-types.ts";
import { toDegrees } from "../terminal/numbers.ts";

export function filterFields(
  { raw, without, with: best }: FilterBurden,
  { orders }: Pick<Excitation, "orders">,
): Record<string, unknown> {
  const multiples = multiplesOf(orders).map(({ multiple }) => multiple);
  return {
    unfilteredDegPerSecRms: raw,
    lowPassAlone: burdenFields(without, multiples),
    withNotches: burdenFields(best, multiples),
  };
}

/** Where the residual is not reached, the chain that leaves least: its delay buys nothing. */
function burdenFields(burden: Burden, multiples: readonly number[]): unknown {
  const { lowPass } = burden;
  return {
    residualReached: burden.attainable,
    lowPass: lowPass === undefined ? null : { order: lowPass.order, cutOffHz: lowPass.cutOff },
    notchedMultiples: burden.notches,
    delayS: burden.delay,
    lagDeg: toDegrees(burden.lag),
    groupDelayS: burden.groupDelay,
    delayIn99PercentOfFlightS: burden.delayMostOfFlight,
    leftDegPerSecRms: burden.residual,
    leftOfMultiples: burden.residualOfLines.map((left, i) => ({
      multiple: multiples[i] ?? null,
      leftDegPerSecRms: left,
    })),
    leftOfChipNoiseDegPerSecRms: burden.residualOfNoise,
    mostLeftOf: burden.mostFrom,
  };
}
