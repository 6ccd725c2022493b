/** What every page is made by, and the file that may have to lie beside it. */

import { existsSync, readFileSync, statSync } from "node:fs";
import path from "node:path";
import { inputError } from "../errors.ts";
import type { PageInput } from "../report/types.ts";
import type { ReportOptions } from "./input/report-options.ts";
import { REPORT, requireFree } from "./overwrite.ts";
import { programVersion } from "./version.ts";
import type { OutputFile } from "./write-files.ts";

export interface PageParts {
  readonly input: PageInput;
  /** to be written with the page: the plot library, where it is to lie beside it and does not yet */
  readonly beside: readonly OutputFile[];
}

/**
 * @param report where the page goes
 * @param typed the options that its figures depend on
 * @throws InputError when another file has the library's name
 */
export async function pageParts(
  report: string,
  { date, libraryBeside }: ReportOptions,
  typed: readonly string[],
): Promise<PageParts> {
  const { libraryFile, readPlotly } = await import("../report/plotly.ts");
  const source = readPlotly();
  const file = libraryFile();
  const common = {
    version: programVersion(),
    ...(date && { created: new Date().toISOString() }),
    options: typed.filter((t) => t !== "").join(" "),
  };
  if (!libraryBeside) {
    return { input: { ...common, library: { kind: "inside", source } }, beside: [] };
  }
  const target = path.join(path.dirname(report), file);
  return {
    input: { ...common, library: { kind: "beside", file } },
    beside: isThere(target, source) ? [] : [{ path: target, text: source }],
  };
}

/**
 * Fails before work is done for a report that could not be written, or whose library could not.
 *
 * @throws InputError that says what is in the way
 */
export async function requireReportFree(
  report: string,
  { libraryBeside }: ReportOptions,
  framePath: string,
): Promise<void> {
  requireFree(report, REPORT, framePath);
  if (!libraryBeside) return;
  const { libraryFile, readPlotly } = await import("../report/plotly.ts");
  isThere(path.join(path.dirname(report), libraryFile()), readPlotly());
}

/** Whether the library lies there already. @throws InputError where something else does */
function isThere(file: string, source: string): boolean {
  if (!existsSync(file)) return false;
  if (statSync(file).isFile() && readFileSync(file, "utf8") === source) return true;
  throw inputError(
    "--library-beside",
    `${file} exists and is not the plot library that reports use: choose another folder for the report or move the file.`,
  );
}
