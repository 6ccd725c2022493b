/** What a file holds of the rows it is to hold. */

import { inputError } from "../errors.ts";
import type { Job } from "./jobs.ts";
import { agree, readLines } from "./lines.ts";
import { readHeader, readRow } from "./read-row.ts";
import type { Sheet } from "./sheet.ts";

export interface RowsThere {
  /** the first so many of the jobs have their row */
  readonly rows: number;
  /** how many of these failed */
  readonly failed: number;
  /** of header and rows; what stands behind them is the torn beginning of the next */
  readonly bytes: number;
}

/** @throws InputError when anything but the first rows of these jobs is there */
export function rowsThere(
  file: string,
  content: Buffer,
  sheet: Sheet,
  jobs: readonly Job[],
): RowsThere {
  const { whole, bytes, torn } = readLines(content);
  const headers = sheet.header === "" ? 0 : 1;
  const begins = (line: number): string | undefined => {
    if (line < headers) return sheet.header;
    return line - headers < jobs.length ? sheet.begin(jobs[line - headers]) : undefined;
  };
  const found = [...whole.map((line) => Buffer.from(line)), ...(torn.length > 0 ? [torn] : [])];
  const wrong = found.findIndex((line, i) => {
    const begin = begins(i);
    return begin === undefined || !agree(line, begin);
  });
  if (wrong >= 0)
    throw inputError("", `${file} ${objection(sheet, whole, wrong, jobs.at(wrong - headers))}`);
  const rows = whole.slice(headers);
  return { rows: rows.length, failed: rows.filter(sheet.isFailed).length, bytes };
}

/** What is to be said about a file whose line `wrong` (0..) is not the row of this job. */
function objection(
  sheet: Sheet,
  whole: readonly string[],
  wrong: number,
  job: Job | undefined,
): string {
  const headers = sheet.header === "" ? 0 : 1;
  const [first, row] = [headers, wrong].map((line) => readRow(sheet.format, whole[line] ?? ""));
  if (first === undefined && (headers === 0 || readHeader(whole[0] ?? "") === undefined)) {
    return "exists and does not hold rows of a sweep; choose another name or delete it.";
  }
  if (first?.sweep !== sheet.sweep) {
    return "holds rows of another sweep: its frame file, its values or its options were others. Choose another name, or delete it if it is not needed any more.";
  }
  if (row?.sweep === sheet.sweep && row.index - 1 !== job?.index) {
    return `holds another part of this sweep (row ${row.index} of ${row.of} is where another belongs): give the same --shard as before, or another name.`;
  }
  return `cannot be continued: its line ${wrong + 1} is not as this program wrote it. Choose another name or delete it.`;
}
