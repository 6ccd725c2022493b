/** What every page is made by, and the file that may have to lie beside it. */

import { existsSync, readFileSync } from "node:fs";
import path from "node:path";
import { inputError } from "../errors.ts";
import type { PageInput } from "../report/types.ts";
import type { ReportOptions } from "./input/report-options.ts";
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
  const there = existsSync(target);
  if (there && readFileSync(target, "utf8") !== source) {
    throw inputError(
      "--library-beside",
      `${target} exists and is not the plot library that reports use: choose another folder for the report or move the file.`,
    );
  }
  return {
    input: { ...common, library: { kind: "beside", file } },
    beside: there ? [] : [{ path: target, text: source }],
  };
}
