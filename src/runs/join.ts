/** Parts of a sweep as one file. */

import { type Finding, InputError, inputError } from "../errors.ts";
import { missingText } from "./missing.ts";
import type { Part } from "./part.ts";
import { inRanges, listed } from "./ranges.ts";

export interface Joined {
  /** the whole file */
  readonly text: string;
  readonly rows: number;
  /** rows of the sweep */
  readonly of: number;
  readonly failed: number;
  /** which rows are missing and how to get them; absent when none is */
  readonly missing?: string;
}

/**
 * Puts the rows of all parts in the order of their numbers, as a single run would have written them.
 *
 * @param partial whether rows may be missing
 * @throws InputError for parts of different sweeps, rows that stand twice, and missing rows
 */
export function joinParts(parts: readonly Part[], partial: boolean): Joined {
  const first = requireOneSweep(parts);
  requireSingle(parts);
  const rows = parts.flatMap((part) => part.rows).sort((a, b) => a.index - b.index);
  const there = new Set(rows.map(({ index }) => index));
  const missing = Array.from({ length: first.of }, (_, i) => i + 1).filter((i) => !there.has(i));
  const words = missing.length === 0 ? undefined : missingText(missing, parts, first.of);
  if (words !== undefined && !partial) {
    throw inputError("", `${words} To join what is there all the same, add --partial.`);
  }
  const end = first.format === "csv" ? "\r\n" : "\n";
  const lines = [...(first.header ? [first.header] : []), ...rows.map(({ line }) => line)];
  return {
    text: lines.map((line) => line + end).join(""),
    rows: rows.length,
    of: first.of,
    failed: rows.filter(({ hasFailed }) => hasFailed).length,
    ...(words !== undefined && { missing: words }),
  };
}

type Filled = Part & { readonly of: number };

/** The first part that has rows, which all others agree with. */
function requireOneSweep(parts: readonly Part[]): Filled {
  const [one, other] = [parts[0], parts.find(({ format }) => format !== parts[0].format)];
  if (other !== undefined) {
    throw inputError(
      "",
      `${one.file} and ${other.file} cannot be joined: join .csv files or .jsonl files.`,
    );
  }
  const twice = parts.find(({ file }, i) => parts.some((p, k) => k < i && p.file === file));
  if (twice !== undefined) throw inputError("", `${twice.file} was given twice: name it once.`);
  const first = parts.find((part): part is Filled => part.of !== undefined);
  if (first === undefined)
    throw inputError("", `There are no rows in ${listed(parts.map(({ file }) => file))}.`);
  const strangers = parts.filter((part) => part.rows.length > 0 && !isSameSweep(part, first));
  if (strangers.length === 0) return first;
  throw inputError(
    "",
    `${listed(strangers.map(({ file }) => file))} and ${first.file} are not parts of one sweep: the frame file, the values or the options were not the same. Leave out what does not belong here, or run it again.`,
  );
}

function isSameSweep(a: Part, b: Part): boolean {
  const sameTitles =
    a.titles.length === b.titles.length && a.titles.every((t, i) => t === b.titles[i]);
  return a.sweep === b.sweep && a.of === b.of && a.header === b.header && sameTitles;
}

/** @throws InputError that says which rows stand in which two files */
function requireSingle(parts: readonly Part[]): void {
  const holders = new Map<number, Part>();
  const doubles = new Map<string, number[]>();
  for (const part of parts) {
    for (const { index } of part.rows) {
      const holder = holders.get(index);
      if (holder === undefined) {
        holders.set(index, part);
        continue;
      }
      const where =
        holder === part
          ? `twice in ${part.file}: the file was changed, so make it anew.`
          : `both in ${holder.file} and in ${part.file}: leave out one of the two, or cut the sweep into the same number of parts for both.`;
      const indexes = doubles.get(where) ?? [];
      indexes.push(index);
      doubles.set(where, indexes);
    }
  }
  const findings = Array.from(doubles, ([where, indexes]): Finding => {
    const sorted = [...new Set(indexes)].sort((a, b) => a - b);
    const stand = sorted.length === 1 ? "Row # stands" : "Rows # stand";
    return { path: "", message: `${stand.replace("#", inRanges(sorted))} ${where}` };
  });
  if (findings.length > 0) throw new InputError(findings);
}
