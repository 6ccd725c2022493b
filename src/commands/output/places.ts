/** The table of places: what each reads and what it costs. */

import type { RankedCandidate, Ranking } from "../../ranking/types.ts";
import { weightsText } from "../../ranking/use.ts";
import type { Ink } from "../terminal/ink.ts";
import { count, digits, shortest, signedTenths, tenths, toDegrees } from "../terminal/numbers.ts";
import { renderTable } from "../terminal/table.ts";
import { HARD_SPACE, wrap } from "../terminal/wrap.ts";
import { isToAvoid, PLACE_COLUMNS, placeCells, type Shown } from "./shown-places.ts";

const RIGHT = { align: "right" } as const;
const NOT_REACHED = "n/a";

/** The false tilt is left out where only rates are flown: it has no effect there. */
export function placesTable(shown: Shown, ranking: Ranking, ink: Ink): string {
  const { places, left } = shown;
  const levels = ranking.use !== "rate";
  const columns = [
    ...PLACE_COLUMNS,
    { title: "Plate", least: 6 },
    { title: "Gyro", unit: "deg/s", ...RIGHT },
    { title: "Level", unit: "dB", ...RIGHT },
    { title: "Delay", unit: "ms", ...RIGHT },
    ...(levels ? [{ title: "Tilt", unit: "deg", ...RIGHT }] : []),
    { title: "Score", unit: "dB", ...RIGHT },
    { title: "Flags", least: 5 },
  ];
  const rows = places.map((ranked) => [
    ...placeCells(ranked, shown),
    ranked.plate,
    digits(ranked.sensed.gyro),
    signedTenths(ranked.decibel),
    ranked.filter.without.attainable ? signedTenths(1e3 * ranked.delayOver.without) : NOT_REACHED,
    ...(levels ? [tenths(toDegrees(ranked.leverArm.reading.tilt))] : []),
    signedTenths(ranked.score),
    flagMark(ranked),
  ]);
  const table = renderTable(columns, rows, {
    headingInk: ink.quiet,
    ink: (r, text) => {
      if (isToAvoid(places[r])) return ink.alarm(text);
      return places[r].place === 1 ? ink.best(text) : text;
    },
    under: (r) => underRow(places[r]),
  });
  return (
    table +
    (left > 0 ? wrap(`and ${count(left, "more place")}; the report has them all`, "  ") : "") +
    wrap(legend(places, ranking))
  );
}

function underRow({ candidate: { side, designed, isolators }, found }: RankedCandidate): string {
  const remarks = [
    ...(side < 0 ? ["on the underside of the plate"] : []),
    ...(designed ? ["the file has the stack here"] : []),
    ...(isolators ? [`on ${isolators.name}`] : []),
    ...(found ? ["found by the search"] : []),
  ];
  return remarks.length === 0 ? "" : wrap(remarks.join("; "), "         ");
}

function flagMark(ranked: RankedCandidate): string {
  if (ranked.flags.length === 0) return "";
  return isToAvoid(ranked) ? "avoid" : "mind";
}

function legend(places: readonly RankedCandidate[], { use, residual }: Ranking): string {
  const wanted = `${shortest(residual)}${HARD_SPACE}deg/s`;
  const yaw = shortest(toDegrees(places[0]?.leverArm.yawRate ?? 0));
  return [
    "Gyro: rms as the chip passes it on, all axes together, over the flight mix.",
    "Level: Gyro against the quietest of the list that is not to be avoided.",
    `Delay: what the low-pass that leaves ${wanted} costs more than at the best of those places.`,
    places.every(({ filter }) => filter.without.attainable)
      ? ""
      : `${NOT_REACHED}: no low-pass leaves so little, see "Filter cost".`,
    use === "rate"
      ? ""
      : `Tilt: false tilt that the accelerometer reads at ${yaw}${HARD_SPACE}deg/s of steady yaw.`,
    `Score: ${weightsText(use)}, in dB against the best of the list${use === "rate" ? "" : ", tilt against what is put up with"}; less is better.`,
  ]
    .filter((text) => text !== "")
    .join(" ");
}
