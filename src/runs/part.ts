/** A file of rows, read to be joined with others. */

import { readFileSync } from "node:fs";
import { type Finding, InputError, inputError } from "../errors.ts";
import { MOST_JOBS } from "./jobs.ts";
import { agree, readLines } from "./lines.ts";
import { type ReadRow, readHeader, readRow } from "./read-row.ts";
import { IDENTITY, type RowFormat, rowFormat } from "./sheet.ts";

export interface PartRow {
  /** 1.. */
  readonly index: number;
  /** without its end */
  readonly line: string;
  readonly hasFailed: boolean;
}

export interface Part {
  readonly file: string;
  readonly format: RowFormat;
  /** line of titles, "" where rows name their fields; undefined when there is not one whole line */
  readonly header: string | undefined;
  readonly titles: readonly string[];
  /** of the first row; absent when there is none */
  readonly of?: number;
  readonly sweep?: string;
  readonly rows: readonly PartRow[];
}

/** How every file of rows begins. */
const BEGINS: Readonly<Record<RowFormat, string>> = {
  csv: `${IDENTITY.join(",")},`,
  jsonl: `{"${IDENTITY[0]}":`,
};

/**
 * The whole rows of a file; a beginning that a killed run left behind the last is left out.
 *
 * @throws InputError when the file cannot be read or holds anything but rows of one sweep
 */
export function readPart(file: string, option = "<parts>"): Part {
  const format = rowFormat(file, option);
  const { whole, torn } = readLines(contentOf(file));
  if (whole.length === 0 && !agree(torn, BEGINS[format])) throw notRows(file);
  // a spreadsheet may put a byte-order mark before the first line
  const lines = whole.map((line) => line.replace(/^\uFEFF|\r?\n$/g, ""));
  if (format === "jsonl") return { ...rowsOf(file, format, lines, 0), header: "" };
  const [header, ...rows] = lines;
  if (header === undefined) return { file, format, header, titles: [], rows: [] };
  const titles = readHeader(header);
  if (titles === undefined) throw notRows(file);
  return { ...rowsOf(file, format, rows, 1, titles), header };
}

function rowsOf(
  file: string,
  format: RowFormat,
  lines: readonly string[],
  headers: number,
  header?: readonly string[],
): Omit<Part, "header"> {
  const rows: PartRow[] = [];
  let first: ReadRow | undefined;
  for (const [i, line] of lines.entries()) {
    const row = readRow(format, line);
    if (first === undefined && row === undefined && header === undefined) throw notRows(file);
    const alike = header ?? first?.titles ?? row?.titles ?? [];
    if (row === undefined || row.titles.length !== alike.length) {
      throw wrongLine(file, i + headers, "is not a whole row");
    }
    first ??= row;
    const sameTitles = header !== undefined || row.titles.every((title, k) => title === alike[k]);
    if (row.sweep !== first.sweep || row.of !== first.of || !sameTitles || row.of > MOST_JOBS) {
      throw wrongLine(file, i + headers, "is of another sweep than the first");
    }
    rows.push({ index: row.index, line, hasFailed: row.hasFailed });
  }
  const titles = header ?? first?.titles ?? [];
  return { file, format, titles, rows, ...(first && { of: first.of, sweep: first.sweep }) };
}

function contentOf(file: string): Buffer {
  try {
    return readFileSync(file);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === undefined) throw error;
    throw new InputError([unreadable(file, code)]);
  }
}

function unreadable(file: string, code: string): Finding {
  if (code === "ENOENT") return { path: "", message: `${file}: there is no such file.` };
  if (code === "EISDIR") return { path: "", message: `${file} is a folder: name the files in it.` };
  const reason = code === "EACCES" ? "you have no permission" : `the system reports ${code}`;
  return { path: "", message: `${file} cannot be read: ${reason}.` };
}

function notRows(file: string): InputError {
  return inputError("", `${file} does not hold rows of a sweep.`);
}

function wrongLine(file: string, line: number, what: string): InputError {
  return inputError(
    "",
    `${file}: line ${line + 1} ${what}: the file was changed. Make it anew with the command that wrote it.`,
  );
}
