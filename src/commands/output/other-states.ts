/** What the first place reads while one propeller is worse than the others. */

import type { RankedCandidate } from "../../ranking/types.ts";
import type { Ink } from "../terminal/ink.ts";
import { digits, shortest } from "../terminal/numbers.ts";
import { printable } from "../terminal/printable.ts";
import { renderTable } from "../terminal/table.ts";
import { bullets, wrap } from "../terminal/wrap.ts";

const RIGHT = { align: "right" } as const;

/** Empty where no other state is known. */
export function otherStatesText({ candidate, sensed, cases }: RankedCandidate, ink: Ink): string {
  if (cases.length === 0) return "";
  const columns = [
    { title: "State", least: 16 },
    { title: "Gyro", unit: "deg/s", ...RIGHT },
    { title: "Times", unit: "normal", ...RIGHT },
    { title: "Worst with it at the", least: 12 },
  ];
  const rows = [
    ["normal", digits(sensed.gyro), "", ""],
    ...cases.map(({ name, motor, gyro }) => [
      name,
      digits(gyro),
      timesText(gyro / sensed.gyro),
      motor,
    ]),
  ];
  return (
    wrap(`At "${printable(candidate.name)}", over the flight mix:`) +
    renderTable(columns, rows, { headingInk: ink.quiet }) +
    bullets(cases.map(({ name, text }) => printable(`${name}: ${text}`)))
  );
}

/** Two digits are what such a guess deserves. */
function timesText(times: number): string {
  return times < 9.95 ? times.toFixed(1) : shortest(Number(times.toPrecision(2)));
}
