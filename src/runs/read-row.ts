/** A row of a sweep as it stands in a file, read back. */

import { readCsvLine } from "./csv.ts";
import { FAILED, IDENTITY, type RowFormat } from "./sheet.ts";

export interface ReadRow {
  /** 1.. */
  readonly index: number;
  readonly of: number;
  readonly sweep: string;
  /** names of the columns where the row has them itself, else "" each */
  readonly titles: readonly string[];
  readonly hasFailed: boolean;
}

/** Undefined where the line is no row. */
export function readRow(format: RowFormat, line: string): ReadRow | undefined {
  const fields = format === "csv" ? csvFields(line) : jsonFields(line);
  const [index, of, sweep] = (fields ?? []).map(({ value }) => value);
  if (fields === undefined || !isCount(index) || !isCount(of) || !isSweep(sweep)) return undefined;
  if (Number(index) > Number(of)) return undefined;
  return {
    index: Number(index),
    of: Number(of),
    sweep,
    titles: fields.map(({ title }) => title),
    hasFailed: (fields.at(-1)?.value ?? "") !== "",
  };
}

/** Titles of a header, or undefined where the line is no header of a sweep. */
export function readHeader(line: string): readonly string[] | undefined {
  const titles = csvFields(line)?.map(({ value }) => value ?? "") ?? [];
  const isOurs = IDENTITY.every((title, i) => titles[i] === title) && titles.at(-1) === FAILED;
  return isOurs ? titles : undefined;
}

interface Field {
  readonly title: string;
  readonly value: string | undefined;
}

function csvFields(line: string): Field[] | undefined {
  return readCsvLine(line.replace(/\r?\n$/, ""))?.map((value) => ({ title: "", value }));
}

function jsonFields(line: string): Field[] | undefined {
  let row: unknown;
  try {
    row = JSON.parse(line);
  } catch {
    return undefined;
  }
  if (typeof row !== "object" || row === null || Array.isArray(row)) return undefined;
  const { index, of, sweep, failed, ...others } = row as Readonly<Record<string, unknown>>;
  const ordered = { index, of, sweep, ...others, failed };
  return Object.entries(ordered).map(([title, value]) => {
    return { title, value: value === null || value === undefined ? undefined : String(value) };
  });
}

function isCount(text: string | undefined): boolean {
  return text !== undefined && /^[1-9]\d{0,8}$/.test(text);
}

function isSweep(text: string | undefined): text is string {
  return text !== undefined && /^s[0-9a-f]{12}$/.test(text);
}
