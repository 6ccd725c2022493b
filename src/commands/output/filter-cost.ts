/** What each place costs in filter delay, without and with notches. */

import type { Burden } from "../../filter/burden-types.ts";
import type { Ranking } from "../../ranking/types.ts";
import type { Ink } from "../terminal/ink.ts";
import { digits, quantity, shortest, tenths, toDegrees } from "../terminal/numbers.ts";
import { renderTable } from "../terminal/table.ts";
import { HARD_SPACE, wrap } from "../terminal/wrap.ts";
import { PLACE_COLUMNS, placeCells, type Shown } from "./shown-places.ts";

const RIGHT = { align: "right" } as const;
const NONE = "none";

/** @param bladePass multiples of the motors' speed: the number of blades */
export function filterCostText(
  shown: Shown,
  { controlBandwidth, residual }: Ranking,
  bladePass: number,
  ink: Ink,
): string {
  const columns = [
    ...PLACE_COLUMNS,
    { title: "Notches" },
    { title: "Low-pass" },
    { title: "Delay", unit: "ms", ...RIGHT },
    { title: "Lag", unit: "deg", ...RIGHT },
    { title: "Left", unit: "deg/s", ...RIGHT },
  ];
  const rows = shown.places.flatMap((ranked) => {
    const { without, with: best } = ranked.filter;
    return [
      [...placeCells(ranked, shown), ...burdenCells(without)],
      ...(best.notches.length > 0 ? [["", "", ...burdenCells(best)]] : []),
    ];
  });
  const bandwidth = `${shortest(controlBandwidth)}${HARD_SPACE}Hz`;
  return (
    wrap(
      `Wanted: at most ${shortest(residual)}${HARD_SPACE}deg/s rms behind the filters, for a rate loop of ${bandwidth}; delay and lag are told at ${bandwidth}, in hover.`,
    ) +
    renderTable(columns, rows, { headingInk: ink.quiet }) +
    wrap(
      `Each place first with a low-pass alone (order and cut-off), then with notches where they help. Notches: multiples of the motors' speed that are followed, a notch for each motor; 1 is once per turn, ${bladePass} the blade pass. Left: rms behind the filters.`,
    )
  );
}

function burdenCells({ attainable, notches, lowPass, delay, lag, residual }: Burden): string[] {
  const followed = notches.length === 0 ? NONE : notches.join(", ");
  if (!attainable) return [followed, "not reached", "n/a", "n/a", digits(residual)];
  const filter = lowPass === undefined ? NONE : lowPassText(lowPass);
  return [followed, filter, digits(1e3 * delay), tenths(toDegrees(lag)), digits(residual)];
}

function lowPassText({ order, cutOff }: NonNullable<Burden["lowPass"]>): string {
  return `order ${order}, ${quantity(cutOff, "Hz")}`;
}
