/** Tables that fit a terminal of 80 columns: names give way, numbers never do. */

import { columnsOf, isolated, printable, shorten } from "./printable.ts";
import { HARD_SPACE, PAGE_COLUMNS } from "./wrap.ts";

export interface Column {
  readonly title: string;
  /** Printed under the title where any column has one. */
  readonly unit?: string;
  readonly align?: "left" | "right";
  /** Columns of text may be shortened down to this width; others are printed whole. */
  readonly least?: number;
}

/** A text that knows how to become shorter without losing its numbers. */
export interface Fitted {
  readonly ideal: string;
  readonly fit: (columns: number) => string;
}

export type Cell = string | Fitted;

export interface TableLook {
  readonly indent?: string;
  /** Colour for a whole printed row; the text is complete when it is called. */
  readonly ink?: (row: number, text: string) => string;
  readonly headingInk?: (text: string) => string;
  /** Lines under a row, ready to print. */
  readonly under?: (row: number) => string;
}

const GAP = "  ";

/** The table as lines, each ended by a line break and at most 80 columns wide. */
export function renderTable(
  columns: readonly Column[],
  rows: readonly (readonly Cell[])[],
  look: TableLook = {},
): string {
  const { indent = "  ", ink = (_, text) => text, headingInk = (text) => text } = look;
  const safe = rows.map((row) => row.map(made));
  const widths = shares(columns, safe, PAGE_COLUMNS - columnsOf(indent));
  const line = (cells: readonly string[]): string => {
    const padded = cells.map((text, i) => pad(text, widths[i], columns[i].align));
    return (indent + padded.join(GAP)).trimEnd().replaceAll(HARD_SPACE, " ");
  };
  const head = [line(columns.map((c) => c.title))];
  if (columns.some((c) => c.unit)) head.push(line(columns.map((c) => c.unit ?? "")));
  const body = safe.map((row, r) => {
    const text = ink(r, line(row.map((cell, i) => cell.fit(widths[i]))));
    return `${text}\n${look.under?.(r) ?? ""}`;
  });
  return head.map((text) => `${headingInk(text)}\n`).join("") + body.join("");
}

/** A list such as "top plate 61 %, front left arm 12 %": as many whole entries as fit. */
export function fittedList(
  entries: readonly { readonly name: string; readonly number: string }[],
): Fitted {
  const safe = entries.map(({ name, number }) => ({ name: printable(name), number }));
  const text = (n: number): string =>
    safe
      .slice(0, n)
      .map(({ name, number }) => `${name} ${number}`)
      .join(", ");
  return {
    ideal: text(safe.length),
    fit: (columns) => {
      for (let n = safe.length; n > 0; n--) if (columnsOf(text(n)) <= columns) return text(n);
      const first = safe[0];
      if (first === undefined) return "";
      return `${shorten(first.name, columns - columnsOf(first.number) - 1)} ${first.number}`;
    },
  };
}

function made(cell: Cell): Fitted {
  if (typeof cell !== "string") return cell;
  const ideal = printable(cell);
  return { ideal, fit: (columns) => shorten(ideal, columns) };
}

/** Width of each column: what it would like, less what must go, taken from the widest texts. */
function shares(
  columns: readonly Column[],
  rows: readonly (readonly Fitted[])[],
  room: number,
): number[] {
  const widths = columns.map((column, i) =>
    Math.max(
      columnsOf(column.title),
      columnsOf(column.unit ?? ""),
      ...rows.map((row) => columnsOf(row[i].ideal)),
    ),
  );
  let excess = widths.reduce((sum, w) => sum + w, 0) + GAP.length * (columns.length - 1) - room;
  for (; excess > 0; excess--) {
    let widest = -1;
    columns.forEach(({ least }, i) => {
      const mayShrink = least !== undefined && widths[i] > least;
      if (mayShrink && (widest < 0 || widths[i] > widths[widest])) widest = i;
    });
    if (widest < 0) break;
    widths[widest]--;
  }
  return widths;
}

function pad(text: string, width: number, align: Column["align"] = "left"): string {
  const space = " ".repeat(Math.max(0, width - columnsOf(text)));
  return align === "right" ? space + isolated(text) : isolated(text) + space;
}
