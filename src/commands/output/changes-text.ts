/** What changes against the reference: modes, spots, crossings near hover. */

import { HOVER_MARGIN } from "../../ranking/crossings.ts";
import {
  crossingsAcross,
  type ModeRow,
  modesAcross,
  mostChanged,
  spotsAcross,
} from "../../study/across.ts";
import type { CrossingChange } from "../../study/compare-types.ts";
import type { ComparisonStudy } from "../../study/results.ts";
import { shortNames } from "../../study/short-names.ts";
import type { Ink } from "../terminal/ink.ts";
import { digits, shortest, signedPercent, signedTenths } from "../terminal/numbers.ts";
import { columnsOf, printable, shorten } from "../terminal/printable.ts";
import { type Column, renderTable } from "../terminal/table.ts";
import { bullets, HARD_SPACE, PAGE_COLUMNS, wrap } from "../terminal/wrap.ts";
import { delayText } from "./variants-table.ts";

/** Modes told; the report and the JSON document have more. */
const MODES = 6;
/** Crossings told of each variant, of those that come and of those that go. */
const CROSSINGS = 3;
const RIGHT = { align: "right" } as const;
const NOTHING = "-";

/**
 * Places of the variants beside the reference, a table's worth at a time.
 *
 * @param first columns that stand before the variants
 * @param each columns of a variant, beside those of its name
 */
function tables({ variants }: ComparisonStudy, first: number, each: number): number[][] {
  const name = Math.max(5, ...titlesOf(variants).map(columnsOf));
  const most = Math.max(1, Math.floor((PAGE_COLUMNS - first - name) / (name + each)));
  const places = variants.slice(1).map((_, i) => i + 1);
  const groups: number[][] = [];
  for (let i = 0; i < places.length; i += most) groups.push(places.slice(i, i + most));
  return groups;
}

export function modeChangesText(study: ComparisonStudy, ink: Ink): string {
  const { variants, comparison } = study;
  const all = modesAcross(study);
  const rows = mostChanged(all, MODES);
  const unmatched = comparison.differences.find((d) => d.unmatched !== undefined);
  if (unmatched) return wrap(`Modes are not compared: ${printable(unmatched.unmatched ?? "")}.`);
  if (rows.length === 0) return wrap("No mode moves by half a per cent or more.");
  const titles = titlesOf(variants);
  // indent, number, motion; gap, change, likeness
  const text = tables(study, 2 + 6 + 14, 2 + 7 + 6).map((places) => {
    const columns: Column[] = [
      { title: "Mode", ...RIGHT },
      { title: "What moves", least: 12 },
      { title: titles[0], unit: "Hz", ...RIGHT, least: 5 },
      ...places.flatMap((i) => [
        { title: titles[i], unit: "Hz", ...RIGHT },
        { title: "", unit: "%", ...RIGHT },
        { title: "", unit: "like", ...RIGHT },
      ]),
    ];
    const cells = rows.map((row) => [
      String(row.cells[0]?.number ?? "new"),
      row.name,
      frequencyText(row, 0),
      ...places.flatMap((i) => {
        const { share, likeness } = row.cells[i] ?? {};
        return [
          frequencyText(row, i),
          share === undefined ? NOTHING : signedTenths(100 * share),
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
      `Modes are matched by how alike their shapes are (like: 1 for the same shape, below 0.5 it is another mode).${rest > 0 ? ` Those that change most; ${rest} more in the report.` : ""}`,
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
  const titles = titlesOf(variants);
  const delayWidth = delays ? 7 : 0;
  const text = tables(study, 2 + 14 + delayWidth, 2 + delayWidth).map((places) => {
    const columns: Column[] = [
      { title: "Spot", least: 12 },
      { title: titles[0], unit: "deg/s", ...RIGHT },
      ...delayed("", "ms"),
      ...places.flatMap((i) => [{ title: titles[i], unit: "dB", ...RIGHT }, ...delayed("", "ms")]),
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

/** What is met near hover, and what comes and goes against the reference. */
export function crossingChangesText(study: ComparisonStudy, ink: Ink): string {
  const all = crossingsAcross(study);
  const near = `within ${shortest(100 * HOVER_MARGIN)}${HARD_SPACE}% of hover`;
  const alone = all.length === 1;
  const told = all.flatMap(({ name, near, lost }, i): Told[] => [
    ...near
      .filter((c) => i === 0 || c.gained)
      .slice(0, CROSSINGS)
      .map((c) => ({ name, what: i === 0 ? "met" : "new", crossing: c })),
    ...lost.slice(0, CROSSINGS).map((c) => ({ name, what: "gone", crossing: c })),
  ]);
  const every = all.reduce(
    (sum, { near, lost }, i) => sum + near.filter((c) => i === 0 || c.gained).length + lost.length,
    0,
  );
  if (told.length === 0) return wrap(`No order of the motors meets a mode ${near}.`);
  const columns: Column[] = [
    ...(alone ? [] : [{ title: "Variant", least: 8 }, { title: "" }]),
    { title: "From hover", ...RIGHT },
    { title: "Freq.", unit: "Hz", ...RIGHT },
    { title: "What moves", least: 16 },
    { title: "Shaken by", least: 12 },
  ];
  const rows = told.map(({ name, what, crossing: c }, i) => [
    ...(alone ? [] : [told[i - 1]?.name === name ? "" : name, what]),
    signedPercent(c.fromHover),
    digits(c.frequency),
    c.name,
    c.order,
  ]);
  const rest = every - told.length;
  return (
    renderTable(columns, rows, { headingInk: ink.quiet }) +
    (rest > 0 ? wrap(`and ${rest} more ${near}, in the report`, "  ") : "")
  );
}

interface Told {
  readonly name: string;
  readonly what: string;
  readonly crossing: CrossingChange;
}

/** Names head columns of numbers: they must not make them wide. */
function titlesOf(variants: ComparisonStudy["variants"]): string[] {
  return shortNames(variants.map((v) => v.name)).map((name) => shorten(printable(name), 10));
}
