/** What changes against the reference: modes, spots, crossings near hover. */

import { HOVER_MARGIN } from "../../ranking/crossings.ts";
import { crossingsAcross, type ModeRow, modesAcross, spotsAcross } from "../../study/across.ts";
import type { CrossingChange } from "../../study/compare-types.ts";
import type { ComparisonStudy } from "../../study/results.ts";
import type { Ink } from "../terminal/ink.ts";
import {
  count,
  digits,
  quantity,
  shortest,
  signedPercent,
  signedTenths,
} from "../terminal/numbers.ts";
import { printable } from "../terminal/printable.ts";
import { type Column, renderTable } from "../terminal/table.ts";
import { bullets, HARD_SPACE, wrap } from "../terminal/wrap.ts";
import { delayText } from "./variants-table.ts";

/** Modes told; the report and the JSON document have more. */
const MODES = 6;
/** Variants beside the reference that fit into one table. */
const BESIDE = 3;
const RIGHT = { align: "right" } as const;
const NOTHING = "-";
const NONE_NEAR = `none within ${shortest(100 * HOVER_MARGIN)}${HARD_SPACE}% of hover`;

/** Places of the variants beside the reference, a table's worth at a time. */
function tables({ variants }: ComparisonStudy): number[][] {
  const places = variants.slice(1).map((_, i) => i + 1);
  const groups: number[][] = [];
  for (let i = 0; i < places.length; i += BESIDE) groups.push(places.slice(i, i + BESIDE));
  return groups;
}

export function modeChangesText(study: ComparisonStudy, ink: Ink): string {
  const { variants, comparison } = study;
  const all = modesAcross(study);
  const rows = all.slice(0, MODES);
  const unmatched = comparison.differences.find((d) => d.unmatched !== undefined);
  if (unmatched) return wrap(`Modes are not compared: ${printable(unmatched.unmatched ?? "")}.`);
  const text = tables(study).map((places) => {
    const columns: Column[] = [
      { title: "What moves", least: 12 },
      { title: cutName(variants[0].name), unit: "Hz", ...RIGHT, least: 5 },
      ...places.flatMap((i) => [
        { title: cutName(variants[i].name), unit: "Hz", ...RIGHT },
        { title: "", unit: "%", ...RIGHT },
        { title: "", unit: "like", ...RIGHT },
      ]),
    ];
    const cells = rows.map((row) => [
      row.name,
      frequencyText(row, 0),
      ...places.flatMap((i) => {
        const { share, likeness } = row.cells[i] ?? {};
        return [
          frequencyText(row, i),
          share === undefined ? NOTHING : signedPercent(share).replace(`${HARD_SPACE}%`, ""),
          likeness === undefined ? NOTHING : likeness.toFixed(2),
        ];
      }),
    ]);
    return renderTable(columns, cells, { headingInk: ink.quiet });
  });
  const rest = all.length - rows.length;
  return (
    text.join("") +
    wrap(
      `Modes are matched by how alike their shapes are (like: 1 for the same shape, below 0.5 it is another mode).${rest > 0 ? ` ${count(rest, "more mode")} in the report.` : ""}`,
    )
  );
}

function frequencyText({ cells }: ModeRow, i: number): string {
  const cell = cells[i];
  return cell ? digits(cell.frequency) : NOTHING;
}

export function spotChangesText(study: ComparisonStudy, ink: Ink): string {
  const { variants } = study;
  const rows = spotsAcross(study);
  if (rows.length === 0) return "";
  const delays = rows.some((r) => r.cells.some((c) => c?.spot.delay !== undefined));
  const delayed = (title: string, unit: string) => (delays ? [{ title, unit, ...RIGHT }] : []);
  const text = tables(study).map((places) => {
    const columns: Column[] = [
      { title: "Spot", least: 12 },
      { title: cutName(variants[0].name), unit: "deg/s", ...RIGHT },
      ...delayed("", "ms"),
      ...places.flatMap((i) => [
        { title: cutName(variants[i].name), unit: "dB", ...RIGHT },
        ...delayed("", "ms"),
      ]),
    ];
    const cells = rows.map(({ name, cells: [from, ...others] }) => [
      name,
      from ? digits(from.spot.gyro) : NOTHING,
      ...(delays ? [delayText(from?.spot.delay)] : []),
      ...places.flatMap((i) => {
        const to = others[i - 1];
        const level =
          from && to ? signedTenths(20 * Math.log10(to.spot.gyro / from.spot.gyro)) : NOTHING;
        return [level, ...(delays ? [delayText(to?.spot.delay)] : [])];
      }),
    ]);
    return renderTable(columns, cells, { headingInk: ink.quiet });
  });
  const out = rows.flatMap(({ name, cells }) => {
    const where = cells.flatMap((c, i) => (c?.spot.ruledOut === undefined ? [] : [i]));
    if (where.length === 0) return [];
    const why = printable(cells[where[0]]?.spot.ruledOut ?? "");
    const which =
      where.length === variants.length
        ? "every variant"
        : where.map((i) => printable(variants[i].name)).join(", ");
    return [`${printable(name)} is ruled out with ${which}: ${why}`];
  });
  return (
    text.join("") +
    wrap(
      `Gyro noise against the reference at the same spot${delays ? ", and the delay of the low-pass that it needs" : ""}.`,
    ) +
    bullets(out)
  );
}

/** Crossings near hover that come and go, and what is there at all. */
export function crossingChangesText(study: ComparisonStudy): string {
  const rows = crossingsAcross(study);
  const [reference, ...others] = rows;
  const told = (c: CrossingChange) =>
    `${printable(c.order)} meets ${printable(c.name)} (${quantity(c.frequency, "Hz")}), ${signedPercent(c.fromHover)} from hover`;
  const list = (some: readonly CrossingChange[]) => some.map(told).join("; ");
  const who = others.length > 0 ? `${printable(reference.name)}: ` : "";
  const first = `${who}${reference.near.length > 0 ? list(reference.near) : NONE_NEAR}.`;
  const changes = others.map(({ name, near, lost }) => {
    const gained = near.filter((c) => c.gained);
    const parts = [
      ...(gained.length > 0 ? [`new: ${list(gained)}`] : []),
      ...(lost.length > 0 ? [`gone: ${list(lost)}`] : []),
    ];
    return `${printable(name)}: ${parts.length > 0 ? parts.join("; ") : "no change"}.`;
  });
  return bullets([first, ...changes]);
}

/** Names head columns of numbers: they must not make them wide. */
function cutName(name: string): string {
  const signs = Array.from(printable(name));
  return signs.length > 10 ? `${signs.slice(0, 9).join("")}…` : signs.join("");
}
