/** The options of a report, the same on every command that writes one. */

import type { Command } from "commander";
import { requireSenseOfReport } from "../rank-outputs.ts";

export interface ReportOptions {
  /** false: none; absent: the usual place */
  readonly report?: string | false;
  readonly date: boolean;
}

/**
 * Adds --report, --no-report and --no-date.
 *
 * @param usual where the report goes where none is named, for the help
 * @returns the check that the options make sense together; it throws InputError
 */
export function addReportOptions(
  command: Command,
  usual: string,
): (options: ReportOptions) => void {
  // both are one option to the parser, which would let the last one win
  const given = new Set<string>();
  for (const name of ["report", "no-report"]) command.on(`option:${name}`, () => given.add(name));
  command
    .option("--report <file>", `where the report goes (default: ${usual})`)
    .option("--no-report", "write no report")
    .option("--no-date", "leave the date out of the report");
  return ({ report }) => requireSenseOfReport(report, given.size > 1);
}

/** Adds one more value to an option that may be given several times. */
export const collect = (value: string, before: readonly string[] = []) => [...before, value];
