/** What the accelerometer makes of each place in self-level flight. */

import { leverArmWords, RATE_FLIGHT } from "../../attitude/lever-arm-words.ts";
import { radiusWords } from "../../attitude/yaw-rules.ts";
import type { RankedCandidate, Ranking } from "../../ranking/types.ts";
import type { Ink } from "../terminal/ink.ts";
import { digits, millimetres, shortest, tenths, toDegrees } from "../terminal/numbers.ts";
import { printable } from "../terminal/printable.ts";
import { renderTable } from "../terminal/table.ts";
import { HARD_SPACE, wrap } from "../terminal/wrap.ts";
import { PLACE_COLUMNS, placeCells, type Shown } from "./shown-places.ts";

const RIGHT = { align: "right" } as const;
/** Ends the words of every lever arm; here it is said once for all. */
const SAID_ONCE = /; in rate flight it has no effect\.$/;

export function selfLevelText(shown: Shown, { use, candidates }: Ranking, ink: Ink): string {
  const noEffect = wrap(
    RATE_FLIGHT.replace(/\bit has\b/, "the distance from the centre of gravity has"),
  );
  const [first] = candidates;
  if (use === "rate" || first === undefined) return noEffect;
  const { yawRate, error, filter } = first.leverArm;
  const told = candidates.filter((ranked) => ranked === first || ranked.candidate.designed);
  const yaw = `${shortest(toDegrees(yawRate))}${HARD_SPACE}deg/s`;
  return [
    table(shown, ink),
    wrap(
      `C.g.: from the chip to the centre of gravity, in the plan. Tilt: what the accelerometer reads in steady yaw of ${yaw}. Filter: the most that an attitude filter of ${shortest(filter.timeConstant)}${HARD_SPACE}s believes in the motions tried. Acc.: rms as the chip passes it on, over the flight mix. Offset: tilt that vibration makes of the chip's zero, and Peak: largest reading, of the chip's range, both at the worst speed up to 1.5 times hover.`,
    ),
    wrap(`${capital(radiusWords(error, yawRate))}.`),
    ...told.map((ranked) => wrap(armWords(ranked), "  - ", "    ")),
    noEffect,
  ].join("");
}

function table(shown: Shown, ink: Ink): string {
  const columns = [
    ...PLACE_COLUMNS,
    { title: "C.g.", unit: "mm", ...RIGHT },
    { title: "Tilt", unit: "deg", ...RIGHT },
    { title: "Filter", unit: "deg", ...RIGHT },
    { title: "Acc.", unit: "g", ...RIGHT },
    { title: "Offset", unit: "deg", ...RIGHT },
    { title: "Peak", unit: "%", ...RIGHT },
  ];
  const rows = shown.places.map((ranked) => {
    const { leverArm, sensed, rectified, clipping } = ranked;
    return [
      ...placeCells(ranked, shown),
      millimetres(leverArm.distance),
      tenths(toDegrees(leverArm.reading.tilt)),
      tenths(toDegrees(leverArm.worst.believed.tilt)),
      digits(sensed.accel),
      tenths(toDegrees(rectified.tilt)),
      clipping.levelling === undefined ? "" : (100 * clipping.levelling.share).toFixed(0),
    ];
  });
  return renderTable(columns, rows, { headingInk: ink.quiet });
}

function armWords({ candidate, leverArm }: RankedCandidate): string {
  const [reading, filter] = leverArmWords(leverArm);
  const name = printable(candidate.name);
  return `${name}: ${reading[0].toLowerCase()}${reading.slice(1)} ${filter.replace(SAID_ONCE, ".")}`;
}

function capital(text: string): string {
  return text[0].toUpperCase() + text.slice(1);
}
