/** Bands as bars of text over one axis that grows by factors. */

import type { BarSigns } from "../terminal/bar-signs.ts";
import { digits, shortest } from "../terminal/numbers.ts";
import { columnsOf, isolated, printable, shorten } from "../terminal/printable.ts";
import { PAGE_COLUMNS } from "../terminal/wrap.ts";

export interface PlotRow {
  readonly name: string;
  /** above 0; absent where there is nothing to draw */
  readonly band?: { readonly low: number; readonly median: number; readonly high: number };
  /** stands behind the bar */
  readonly note: string;
}

const INDENT = "  ";
const GAP = "  ";
const MOST_NAME = 20;
const LEAST_BAR = 16;
/** Values beside each other on the axis keep this many columns apart. */
const APART = 3;
/** The axis spans this factor at least, so that small differences look small. */
const LEAST_FACTOR = 1.5;
/** Below this factor from end to end the values on the axis have equal steps, about so many. */
const LINEAR_BELOW = 8;
const STEPS = 5;

/** Lines of at most 80 columns; "" where no row has a band. */
export function bandPlot(rows: readonly PlotRow[], unit: string, signs: BarSigns): string {
  const bands = rows.flatMap(({ band }) => band ?? []);
  if (bands.length === 0) return "";
  const names = rows.map((r) => shorten(printable(r.name), MOST_NAME));
  const nameWidth = Math.max(...names.map(columnsOf));
  const noteWidth = Math.max(...rows.map((r) => columnsOf(r.note)));
  const around = columnsOf(INDENT) + nameWidth + noteWidth + 2 * GAP.length;
  const width = Math.max(LEAST_BAR, PAGE_COLUMNS - around);
  const axis = axisOf(bands, width);
  const lines = rows.map(({ band, note }, i) => {
    const name = isolated(names[i]) + " ".repeat(nameWidth - columnsOf(names[i]));
    const bar = band ? barOf(band, axis.column, width, signs) : " ".repeat(width);
    return `${INDENT}${name}${GAP}${bar}${GAP}${note}`.trimEnd();
  });
  const before = " ".repeat(columnsOf(INDENT) + nameWidth + GAP.length);
  const scale = `${before}${scaleOf(axis, width)}${GAP}${unit}`.trimEnd();
  return `${[...lines, scale].join("\n")}\n`;
}

interface Axis {
  readonly least: number;
  readonly most: number;
  readonly column: (value: number) => number;
}

function axisOf(bands: readonly { low: number; high: number }[], width: number): Axis {
  const [low, high] = [Math.min(...bands.map((b) => b.low)), Math.max(...bands.map((b) => b.high))];
  const widen = Math.max(1, Math.sqrt((LEAST_FACTOR * low) / high));
  const [least, most] = [low / widen, high * widen];
  const share = (v: number) => Math.log(v / least) / Math.log(most / least);
  return { least, most, column: (v) => Math.round(share(v) * (width - 1)) };
}

function barOf(
  { low, median, high }: { low: number; median: number; high: number },
  column: (value: number) => number,
  width: number,
  { from, line, middle, to, point }: BarSigns,
): string {
  const [a, m, b] = [column(low), column(median), column(high)];
  if (a === b) return (" ".repeat(a) + point).padEnd(width);
  const signs = Array.from({ length: b - a + 1 }, () => line);
  signs[0] = from;
  signs[b - a] = to;
  signs[m - a] = middle;
  return `${" ".repeat(a)}${signs.join("")}${" ".repeat(width - 1 - b)}`;
}

/** Round values under their columns. */
function scaleOf({ least, most, column }: Axis, width: number): string {
  let text = "";
  for (const value of roundValues(least, most)) {
    const label = shortest(value);
    const at = Math.max(0, column(value) - Math.floor(label.length / 2));
    if (text !== "" && at < text.length + APART) continue;
    if (at + label.length > width) break;
    text = text.padEnd(at) + label;
  }
  return text.padEnd(width);
}

/** 1, 2, 5, 10 ... over many octaves, else multiples of a round step. */
function roundValues(least: number, most: number): number[] {
  if (most / least < LINEAR_BELOW) {
    const rough = (most - least) / STEPS;
    const decade = 10 ** Math.floor(Math.log10(rough));
    const step = decade * ([1, 2, 5].find((s) => s * decade >= rough) ?? 10);
    const first = Math.ceil(least / step);
    return Array.from(
      { length: Math.floor(most / step) - first + 1 },
      (_, i) => (first + i) * step,
    );
  }
  const found: number[] = [];
  for (let decade = Math.floor(Math.log10(least)); 10 ** decade <= most; decade++) {
    found.push(...[1, 2, 5].map((s) => s * 10 ** decade));
  }
  return found.filter((v) => v >= least && v <= most);
}

type Edges = Record<"low" | "median" | "high", { readonly value: number }>;

/** A band as a row has it, with its figures as the note. */
export function bandRow(edges: Edges | undefined) {
  if (!edges) return { note: "" };
  const [low, median, high] = [edges.low.value, edges.median.value, edges.high.value];
  return {
    band: { low, median, high },
    note: `${digits(median)} (${digits(low)} to ${digits(high)})`,
  };
}
