/** Where the modes lie, variant beside variant. */

import { HOVER_MARGIN } from "../../ranking/crossings.ts";
import { crossingsAcross, type ModeRow, modesAcross } from "../../study/across.ts";
import type { ComparisonStudy } from "../../study/results.ts";
import { chartBox } from "../figure.ts";
import { type Html, html, named, type Part } from "../html.ts";
import { percent, signed, three } from "../numbers.ts";
import { type Column, folded, section, table } from "../section.ts";
import { marksLegend } from "../series-marks.ts";
import { frequenciesFinding, hoverOrders, shownModes } from "./frequencies-figure.ts";

const NEAR = percent(HOVER_MARGIN);

export function frequenciesSection(study: ComparisonStudy): Html {
  const { variants, comparison, sure } = study;
  const all = modesAcross(study);
  const shown = shownModes(study);
  const finding = frequenciesFinding(study);
  const alone = variants.length === 1;
  const matched = alone
    ? ""
    : "A mode of one variant is taken for the mode of another whose shape is most like its own, whatever their order of frequency; the likeness of shapes is 1 where all parts move in the same proportions and 0 where they have nothing in common, and below 0.5 it counts as another mode.";
  const bars = sure
    ? "Nine of ten frames lie within the bar, half of them on either side of the mark."
    : "";
  const orders = hoverOrders(study);
  const hover =
    orders.length > 0
      ? `Orange bands: what pushes in hover (${orders.map((o) => o.name).join("; ")}), ±${NEAR}; a mode in such a band is shaken most.`
      : "";
  const unmatched = comparison.differences.filter((d) => d.unmatched !== undefined);
  return section(
    "frequencies",
    "Where the modes lie",
    { finding, how: [bars, hover, matched].filter((t) => t !== "").join(" ") || undefined },
    unmatched.length > 0 &&
      html`<div class="warnings"><h3>Not matched</h3>${unmatched.map((d) => html`<p>${named(d.name)}: ${d.unmatched}.</p>`)}</div>`,
    html`<figure>${chartBox("frequencies-chart", "bars", finding, rowsHeight(shown.length, variants.length))}
<figcaption>${!alone && marksLegend(variants.map((v) => v.name))}</figcaption></figure>`,
    shown.length < all.length &&
      html`<p class="notes">${alone ? "The lowest" : "The"} ${shown.length} ${alone ? "" : "that change most "}of ${all.length} modes; the table has all.</p>`,
    folded(`All ${all.length} modes as a table`, modesTable(study, all)),
  );
}

/** Room for a row with so many marks, in rows of one mark with its name. */
export function rowsHeight(rows: number, marks: number): number {
  return Number((rows * Math.max(0.72, 0.36 * marks)).toFixed(2));
}

function modesTable({ variants }: ComparisonStudy, rows: readonly ModeRow[]): Html {
  const columns = variants.map(
    (v, n): Column<ModeRow> => ({
      head: html`${named(v.name)}<br><small>Hz</small>`,
      label: variants.length > 1 ? `${v.name}, Hz` : "Hz",
      number: true,
      cell: (r) => modeCell(r, n),
    }),
  );
  return table(
    variants.length > 1
      ? "Modes, matched by shape, with the change against the first variant and the likeness of shapes"
      : "Modes as drawn, with nine of ten frames",
    [{ head: "what moves", names: true, cell: (r) => named(r.name) }, ...columns],
    rows,
    { cards: true },
  );
}

function modeCell({ cells }: ModeRow, n: number): Part {
  const c = cells[n];
  if (!c) return html`<span class="quiet">not found</span>`;
  const change = c.share !== undefined && ` ${signed(100 * c.share)}\u00a0%`;
  const alike = c.likeness !== undefined && `, likeness ${c.likeness.toFixed(2)}`;
  const band =
    c.band &&
    html` <small class="axis">${three(c.band.low.value)} to ${three(c.band.high.value)}</small>`;
  return html`<strong>${three(c.frequency)}</strong> <small class="axis">mode ${c.number}${change}${alike}</small>${band}`;
}

interface CrossingLine {
  readonly variant: string;
  readonly what: string;
  readonly order: string;
  readonly mode: string;
  readonly frequency: number;
  readonly fromHover: number;
}

/** "3 meetings within 10 % of hover; the nearest: unbalance with mode 2 (arms flap), 1 % above." */
function nearestWords(rows: readonly CrossingLine[]): string {
  const [near] = rows;
  const many = rows.length === 1 ? "One force meets a mode" : `${rows.length} meetings lie`;
  const way = near.fromHover < 0 ? "below" : "above";
  return `${many} within ${NEAR} of hover; the nearest: ${near.order} with mode ${near.mode}, ${percent(Math.abs(near.fromHover), 2)} ${way} hover speed.`;
}

/** undefined where nothing turns. */
export function crossingsSection(study: ComparisonStudy): Html | undefined {
  if (study.variants.every((v) => v.outcome.hover === 0)) return undefined;
  const alone = study.variants.length === 1;
  const rows = crossingsAcross(study).flatMap(({ name, near, lost }, i): CrossingLine[] => [
    ...near.map((c) => ({
      ...c,
      variant: name,
      what: i === 0 ? "there" : c.gained ? "new" : "there as well",
      mode: `${c.mode}: ${c.name}`,
    })),
    ...lost.map((c) => ({ ...c, variant: name, what: "gone", mode: `${c.mode}: ${c.name}` })),
  ]);
  const gained = rows.filter((r) => r.what === "new").length;
  const lost = rows.filter((r) => r.what === "gone").length;
  const counts = `${gained === 0 ? "none is" : gained === 1 ? "one is" : `${gained} are`} new, ${lost === 0 ? "none is" : lost === 1 ? "one is" : `${lost} are`} gone.`;
  const gone = alone
    ? ""
    : ` What is gone is told with the mode’s number and frequency in “${study.variants[0].name}”.`;
  const how = `Where a force of the motors meets a mode within ${NEAR} of hover, the craft shakes for most of its flight.${gone}`;
  if (rows.length === 0) {
    return section("crossings", "What is met near hover", {
      finding: `No force meets a mode within ${NEAR} of hover.`,
    });
  }
  return section(
    "crossings",
    "What is met near hover",
    { finding: alone ? nearestWords(rows) : `Against “${study.variants[0].name}”: ${counts}`, how },
    table(
      "Meetings of forces and modes near hover",
      [
        ...(alone
          ? []
          : [{ head: "variant", label: "variant", cell: (r: CrossingLine) => named(r.variant) }]),
        { head: "mode", names: true, cell: (r) => named(r.mode) },
        ...(alone ? [] : [{ head: "is", label: "is", cell: (r: CrossingLine) => r.what }]),
        { head: "shaken by", label: "shaken by", cell: (r) => r.order },
        {
          head: html`frequency<br><small>Hz</small>`,
          label: "frequency, Hz",
          number: true,
          cell: (r) => three(r.frequency),
        },
        {
          head: html`from hover<br><small>%</small>`,
          label: "from hover, %",
          number: true,
          cell: (r) => signed(100 * r.fromHover, 0),
        },
      ],
      rows,
      { cards: true, rowClass: (r) => (r.what === "new" ? "near" : "") },
    ),
  );
}
