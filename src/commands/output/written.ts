/** What is said about files that were written. */

import { commandLine } from "../terminal/numbers.ts";
import { printable } from "../terminal/printable.ts";
import { wrap } from "../terminal/wrap.ts";

/** The path stays in one piece, whatever its length, so that it can be copied. */
export function reportLine(report: string | undefined): string {
  return report === undefined ? "" : `\nReport: ${printable(report)}\n`;
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
