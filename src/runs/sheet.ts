/** The table that a sweep is written to: its columns, and each row as a line of text. */

import { createHash } from "node:crypto";
import path from "node:path";
import { inputError } from "../errors.ts";
import { type Cell, inputColumn } from "./columns.ts";
import { spreadsheetField } from "./csv.ts";
import type { Job, Parameter } from "./jobs.ts";
import type { JobResult } from "./task.ts";

export type RowFormat = "csv" | "jsonl";

/**
 * Every row says which one it is: its number (1..), of how many, and of which sweep. That is what
 * continuing and joining go by, since a row is found out about wherever it was moved.
 */
export const IDENTITY = ["index", "of", "sweep"] as const;
/** The last column: why there are no figures; empty where there are. */
export const FAILED = "failed";

export interface Sheet {
  readonly format: RowFormat;
  readonly sweep: string;
  /** the line of titles; "" where every row names its fields itself */
  readonly header: string;
  /** how the row of this job begins, whatever becomes of it: identity and inputs */
  readonly begin: (job: Job) => string;
  /** the whole row, ended by a line break; never more than one line */
  readonly row: (job: Job, result: JobResult<readonly Cell[]>) => string;
  readonly isFailed: (row: string) => boolean;
}

export interface SheetFields {
  readonly parameters: readonly Parameter[];
  /** titles of the figures, with their units: hover_rpm */
  readonly results: readonly string[];
  /** jobs of the whole sweep */
  readonly of: number;
  /** from `sweepHash` */
  readonly sweep: string;
}

/** The format that a file's ending stands for. @throws InputError */
export function rowFormat(file: string, option = "--out"): RowFormat {
  const ending = path.extname(file).toLowerCase();
  if (ending === ".csv") return "csv";
  if (ending === ".jsonl") return "jsonl";
  if (file.trim() === "") {
    throw inputError(option, 'nothing was given: name a file, such as "rows.csv".');
  }
  throw inputError(
    option,
    `${file}: give a name that ends in .csv (for spreadsheets) or .jsonl (one JSON object per line).`,
  );
}

/**
 * Short name of a sweep. Begins with a letter, so that no spreadsheet takes it for a number.
 *
 * @param decides whatever the figures depend on, as plain data
 */
export function sweepHash(decides: unknown): string {
  return `s${createHash("sha256").update(JSON.stringify(decides)).digest("hex").slice(0, 12)}`;
}

export function makeSheet(
  format: RowFormat,
  { parameters, results, of, sweep }: SheetFields,
): Sheet {
  const inputs = parameters.map(inputColumn);
  const titles = [...IDENTITY, ...inputs.map(({ title }) => title), ...results, FAILED];
  if (new Set(titles).size < titles.length) throw new Error(`a title stands twice: ${titles}`);
  const known = (job: Job): Cell[] => {
    const cells = job.inputs.map(({ written }, i) => inputs[i].cell(written));
    return [job.index + 1, of, sweep, ...cells];
  };
  const figures = (result: JobResult<readonly Cell[]>): readonly Cell[] => {
    if ("failed" in result) return [...results.map(() => undefined), result.failed || "unknown"];
    if (result.value.length === results.length) return [...result.value, undefined];
    throw new Error(`${result.value.length} figures for ${results.length} columns`);
  };
  const { header, text, last, empty } = format === "csv" ? csvLook(titles) : jsonLook(titles);
  return {
    format,
    sweep,
    header,
    begin: (job) => text(known(job), 0),
    row: (job, result) => {
      const before = known(job);
      return text(before, 0) + text(figures(result), before.length).slice(0, -1) + last;
    },
    isFailed: (row) => !row.endsWith(empty),
  };
}

interface Look {
  readonly header: string;
  /** cells from this column on, each with the comma after it */
  readonly text: (cells: readonly Cell[], from: number) => string;
  /** after the last cell, in place of its comma */
  readonly last: string;
  /** the end of a row whose last cell is empty */
  readonly empty: string;
}

/** RFC 4180. */
function csvLook(titles: readonly string[]): Look {
  const field = (cell: Cell): string =>
    typeof cell === "string" ? spreadsheetField(oneLine(cell)) : numberOr("", cell);
  return {
    header: `${titles.map(field).join(",")}\r\n`,
    text: (cells) => cells.map((cell) => `${field(cell)},`).join(""),
    last: "\r\n",
    empty: ",\r\n",
  };
}

/** JSON Lines: flat objects with the same fields as the table has columns. */
function jsonLook(titles: readonly string[]): Look {
  const value = (cell: Cell): string =>
    typeof cell === "string" ? JSON.stringify(oneLine(cell)) : numberOr("null", cell);
  const field = (cell: Cell, column: number): string =>
    `${column === 0 ? "{" : ""}${JSON.stringify(titles[column])}:${value(cell)},`;
  return {
    header: "",
    text: (cells, from) => cells.map((cell, i) => field(cell, from + i)).join(""),
    last: "}\n",
    empty: ":null}\n",
  };
}

function numberOr(none: string, value: number | undefined): string {
  return value === undefined || !Number.isFinite(value) ? none : String(value + 0);
}

function oneLine(text: string): string {
  return text.replace(/\s*[\r\n]+\s*/g, " ");
}
