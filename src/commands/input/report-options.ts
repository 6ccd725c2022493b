/** The options of a report, the same on every command that writes one. */

import type { Command } from "commander";
import { inputError } from "../../errors.ts";
import { requireName } from "./options.ts";

export interface ReportOptions {
  /** false: none; absent: the usual place */
  readonly report?: string | false;
  readonly date: boolean;
  readonly libraryBeside?: boolean;
}

/**
 * Adds --report, --no-report, --no-date and --library-beside.
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
    .option("--no-date", "leave the date out of the report")
    .option(
      "--library-beside",
      "leave the plot library beside the report, in a file that many reports share, instead of inside it",
    );
  return ({ report, libraryBeside }) => {
    requireSenseOfReport(report, given.size > 1);
    if (report === false && libraryBeside) {
      throw inputError(
        "--library-beside",
        "is about a report, and --no-report asks for none: leave out one of the two.",
      );
    }
  };
}

/** What is wrong with the options themselves, before anything is read. @throws InputError */
function requireSenseOfReport(report: string | false | undefined, both: boolean): void {
  if (both) {
    throw inputError("--report", "was given together with --no-report: leave out one of the two.");
  }
  if (typeof report !== "string") return;
  requireName("--report", report, "my-frame.html");
  if (/\.jsonc?$/i.test(report)) {
    throw inputError(
      "--report",
      `${report} has the name of a frame file, but a report is a web page: give a name that ends in .html.`,
    );
  }
}

/** Adds one more value to an option that may be given several times. */
export const collect = (value: string, before: readonly string[] = []) => [...before, value];
