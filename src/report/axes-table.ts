/** The figures behind the ranking's: in hover, axis by axis, and the true motion of the board. */

import type { Ranking } from "../ranking/types.ts";
import { type Html, html } from "./html.ts";
import { inColumn } from "./numbers.ts";
import { type Labelled, labelled, placeName } from "./place-names.ts";
import { type Column, table } from "./section.ts";

const TURNS = ["roll", "pitch", "yaw"] as const;
const MOVES = ["x", "y", "z"] as const;

export function axesTable({ candidates }: Pick<Ranking, "candidates">): Html {
  const figure = (
    head: string,
    unit: string,
    of: (place: Labelled["place"]) => number,
  ): Column<Labelled> => ({
    head: html`${head}<br><small>${unit}</small>`,
    label: `${head}, ${unit}`,
    number: true,
    cell: ({ place }) => inColumn(of(place)),
  });
  return table(
    "Axis by axis, rms over the flight mix; hover alone in the first column; true: before the chips’ own low-pass",
    [
      { head: "place", names: true, cell: placeName },
      figure("gyro in hover", "deg/s", (c) => c.sensed.gyroAtHover),
      figure("true turning", "deg/s", (c) => c.gyro),
      ...TURNS.map((axis, k) => figure(axis, "deg/s", (c) => c.gyroAxes[k])),
      figure("true acceleration", "g", (c) => c.accel),
      ...MOVES.map((axis, k) => figure(axis, "g", (c) => c.accelAxes[k])),
    ],
    labelled(candidates),
    { className: "axes", cards: true },
  );
}
