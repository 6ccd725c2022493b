/** What is said about files that were written. */

import { libraryFile } from "../../report/plotly.ts";
import type { ReportOptions } from "../input/report-options.ts";
import { commandLine } from "../terminal/numbers.ts";
import { printable } from "../terminal/printable.ts";
import { wrap } from "../terminal/wrap.ts";
import type { WrittenFiles } from "./ranking-json.ts";

/**
 * Paths stay in one piece, whatever their length, so that they can be copied.
 *
 * @param libraryBeside whether the report needs the plot library's file in its folder
 */
export function rankedLines(
  { report, map }: WrittenFiles,
  { libraryBeside = false }: Pick<ReportOptions, "libraryBeside">,
): string {
  const library = () => `Plot library beside it: ${libraryFile()} (keep them together)\n`;
  const lines = [
    ...(report === undefined ? [] : [`Report: ${printable(report)}\n`]),
    ...(report !== undefined && libraryBeside ? [library()] : []),
    ...(map === undefined ? [] : [`Map: ${printable(map)}\n`]),
  ];
  return lines.length === 0 ? "" : `\n${lines.join("")}`;
}

export function writtenLines(files: readonly string[]): string {
  return files.map((file) => `Wrote ${printable(file)}\n`).join("");
}

export function startedText(file: string, sizeClass: string): string {
  const next = [commandLine("check", file), commandLine("rank", file)];
  return [
    writtenLines([file]),
    wrap(
      `It holds typical sizes of the ${sizeClass} class. Put in your own, then see whether all fits together, and rank the places:`,
    ),
    ...next.map((line) => wrap(printable(line), "  ")),
  ].join("");
}
