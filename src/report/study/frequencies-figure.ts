/** Matched modes of all variants as points in rows, with hover's orders as upright bands. */

import { HOVER_MARGIN } from "../../ranking/crossings.ts";
import { type ModeCell, type ModeRow, modesAcross, mostChanged } from "../../study/across.ts";
import type { ComparisonStudy } from "../../study/results.ts";
import {
  type BandMark,
  bandFigure,
  placeInRow,
  topNote,
  uprightBand,
  uprightLine,
} from "../band-figure.ts";
import { type Figure, type Trace, WIDE_ONLY } from "../figure.ts";
import { hertz, percent, rounded, signed, three } from "../numbers.ts";
import { logTicks } from "../ticks.ts";

/** Rows of the chart; the table has all. */
const MOST_ROWS = 14;
/** Names over hover's bands keep this share of the axis apart. */
const APART = 0.14;

/** Modes that change most, or the lowest of one variant alone. */
export function shownModes(study: ComparisonStudy): ModeRow[] {
  const all = modesAcross(study);
  if (study.variants.length === 1) return all.slice(0, MOST_ROWS);
  const changed = mostChanged(all, MOST_ROWS);
  return changed.length > 0 ? changed : all.slice(0, MOST_ROWS);
}

export function frequenciesFigure(study: ComparisonStudy): Figure {
  const rows = shownModes(study);
  const names = study.variants.map((v) => v.name);
  const marks = rows.flatMap((row, i) =>
    row.cells.flatMap((c, n): BandMark[] => {
      if (!c) return [];
      const low = c.band && Math.min(c.band.low.value, c.band.median.value);
      return [
        {
          at: placeInRow(i, n, names.length),
          series: n,
          middle: c.band?.median.value ?? c.frequency,
          ...(low !== undefined && { low, high: c.band?.high.value }),
          words: markWords(row, c, names.length > 1 ? `${names[n]}: ` : ""),
        } as BandMark,
      ];
    }),
  );
  const ends = marks.flatMap((m) => [m.low ?? m.middle, m.high ?? m.middle]).filter((f) => f > 0);
  const [low, high] = [0.94 * Math.min(1e6, ...ends), 1.06 * Math.max(1e-6, ...ends)];
  const range = [Math.log10(low), Math.log10(high)] as const;
  return bandFigure({
    rows: rows.map((r) => {
      const number = r.cells[0]?.number;
      return { name: number ? `${number}: ${r.name}` : r.name, short: String(number ?? "new") };
    }),
    series: names,
    marks,
    longestName: 36,
    xaxis: {
      title: { text: "frequency, Hz", standoff: 8 },
      type: "log",
      range: range.map((v) => rounded(v)),
      ...logTicks(low, high),
    },
    under: names.length > 1 ? [joins(rows, names.length)] : [],
    ...hoverMarks(study, low, high),
    topMargin: 34,
  });
}

/** A line along each row from its first variant to its last. */
function joins(rows: readonly ModeRow[], of: number): Trace {
  const points = rows.flatMap((row, i) => [
    ...row.cells.flatMap((c, n) =>
      c ? [{ x: c.band?.median.value ?? c.frequency, y: placeInRow(i, n, of) }] : [],
    ),
    undefined,
  ]);
  return {
    type: "scatter",
    mode: "lines",
    x: points.map((p) => (p ? rounded(p.x) : null)),
    y: points.map((p) => (p ? rounded(p.y) : null)),
    line: { color: "--muted", width: 1.2 },
    hoverinfo: "skip",
  };
}

function markWords(row: ModeRow, c: ModeCell, who: string): string {
  const parts = [
    `${who}mode ${c.number}, ${row.name}: ${hertz(c.frequency)} as drawn`,
    c.share !== undefined && `${signed(100 * c.share)}\u00a0%`,
    c.likeness !== undefined && `likeness of shapes ${c.likeness.toFixed(2)}`,
    c.band && `nine of ten frames ${three(c.band.low.value)} to ${hertz(c.band.high.value)}`,
  ];
  return parts.filter((p) => typeof p === "string").join("; ");
}

export interface HoverOrder {
  readonly name: string;
  readonly multiple: number;
  /** Hz, over the variants */
  readonly from: number;
  readonly to: number;
}

/** Where the forces of the motors push in hover, with the margin that counts as near it. */
export function hoverOrders({ variants }: Pick<ComparisonStudy, "variants">): HoverOrder[] {
  const hovers = variants.map((v) => v.outcome.hover / (2 * Math.PI)).filter((f) => f > 0);
  if (hovers.length === 0) return [];
  const met = variants.flatMap((v) => v.outcome.meetings);
  const multiples = [...new Set(met.map((m) => m.multiple))].sort((a, b) => a - b);
  return multiples.map((multiple) => ({
    name: [...new Set(met.filter((m) => m.multiple === multiple).map((m) => m.order))].join(", "),
    multiple,
    from: multiple * Math.min(...hovers),
    to: multiple * Math.max(...hovers),
  }));
}

function hoverMarks(study: ComparisonStudy, low: number, high: number) {
  const orders = hoverOrders(study).filter((o) => o.to > low && o.from < high);
  const shapes = orders.flatMap(({ from, to }) => [
    uprightBand((1 - HOVER_MARGIN) * from, (1 + HOVER_MARGIN) * to, "--cautionSoft"),
    uprightLine(Math.sqrt(from * to)),
  ]);
  let last = Number.NEGATIVE_INFINITY;
  const annotations = orders.flatMap(({ name, from, to }) => {
    const at = Math.log10(Math.sqrt(from * to));
    if (at - last < APART * Math.log10(high / low)) return [];
    last = at;
    const atEnd = at > Math.log10(high) - 0.1 * Math.log10(high / low);
    return [topNote(rounded(at), name, { name: WIDE_ONLY, ...(atEnd && { xanchor: "right" }) })];
  });
  return { shapes, annotations };
}

/** What the chart shows, in words. */
export function frequenciesFinding(study: ComparisonStudy): string {
  const rows = shownModes(study);
  if (rows.length === 0) return "No modes are known.";
  if (study.variants.length === 1) {
    const bands = rows.flatMap((r) => r.cells[0]?.band ?? []);
    const half = (b: (typeof bands)[number]) => (b.high.value - b.low.value) / (2 * b.median.value);
    const wide = bands.map(half).sort((a, b) => a - b);
    if (wide.length === 0) return "Frequencies as drawn; nothing was varied.";
    return `From frame to frame the modes scatter by ±${percent(wide[0], 2)} to ±${percent(wide[wide.length - 1], 2)}.`;
  }
  const [most] = rows.toSorted((a, b) => largest(b) - largest(a));
  if (!most || largest(most) < 0.005) return "No mode moves by half a per cent or more.";
  const from = most.cells[0];
  const told = most.cells.flatMap((c, i) =>
    i > 0 && c ? [`${hertz(c.frequency)} with “${study.variants[i].name}”`] : [],
  );
  return `The mode that moves most is number ${from?.number}, ${most.name}: ${from ? hertz(from.frequency) : "new"} with “${study.variants[0].name}”, ${told.join(", ")}.`;
}

const largest = ({ cells }: ModeRow) => Math.max(0, ...cells.map((c) => Math.abs(c?.share ?? 0)));
