/** Modes in the interference diagram. Runs in the page: functions stand alone. */

import type { CampbellData } from "../campbell.ts";
import type { Trace } from "../figure.ts";

/** Points along the lines of modes, invisible, so that a line can be pointed at anywhere. */
export function modePoints({ modes, rpm }: CampbellData): Trace {
  const count = 36;
  const along = Array.from(
    { length: count },
    (_, k) => rpm[0] * (rpm[1] / rpm[0]) ** (k / (count - 1)),
  );
  return {
    type: "scatter",
    mode: "markers",
    x: modes.flatMap(() => along),
    y: modes.flatMap((m) => along.map(() => m.frequency)),
    text: modes.flatMap((m) => along.map(() => m.words)),
    customdata: modes.flatMap((m) => along.map(() => m.number)),
    marker: { size: 8, opacity: 0 },
    hovertemplate: "%{text}<extra></extra>",
  };
}

/** Corners of the bands of some modes, null between two. */
export function modeBands(
  { modes, rpm, band }: CampbellData,
  numbers: readonly number[],
): { x: (number | null)[]; y: (number | null)[] } {
  const chosen = modes.filter((m) => numbers.includes(m.number));
  const ends = (m: { readonly frequency: number }) => [
    (1 - band) * m.frequency,
    (1 + band) * m.frequency,
  ];
  return {
    x: chosen.flatMap(() => [rpm[0], rpm[1], rpm[1], rpm[0], rpm[0], null]),
    y: chosen.flatMap((m) => {
      const [low, high] = ends(m);
      return [low, low, high, high, low, null];
    }),
  };
}
