/** The files that `rank` writes beside what it prints. */

import path from "node:path";
import type { Analysis } from "../analyse.ts";
import { inputError } from "../errors.ts";
import type { Ranking } from "../ranking/types.ts";
import type { HowSure } from "../study/how-sure.ts";
import type { LoadedFrame } from "./input/load-frame.ts";
import { type MapOptions, mapPitchText } from "./input/map-options.ts";
import { requireName, type SolveOptions, solveOptionsText } from "./input/options.ts";
import { type SureOptions, sureOptionsText } from "./input/sure-options.ts";
import type { WrittenFiles } from "./output/ranking-json.ts";
import { programVersion } from "./version.ts";
import type { OutputFile } from "./write-files.ts";

export interface OutputOptions extends SolveOptions, MapOptions, SureOptions {
  /** false: none; absent: the usual place */
  readonly report?: string | false;
  readonly date: boolean;
}

/** What is wrong with the options themselves, before anything is read. @throws InputError */
export function requireSenseOfReport(report: string | false | undefined, both: boolean): void {
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

/** Where report and map go, both free to be written. @throws InputError */
export async function freeOutputs(
  framePath: string,
  options: OutputOptions,
): Promise<WrittenFiles> {
  const { MAP, REPORT, requireApart, requireFree } = await import("./overwrite.ts");
  const report = reportPath(framePath, options.report);
  const { map } = options;
  if (report !== undefined) requireFree(report, REPORT, framePath);
  if (map !== undefined) requireFree(map, MAP, framePath);
  if (report !== undefined && map !== undefined) requireApart(report, map);
  return { ...(report !== undefined && { report }), ...(map !== undefined && { map }) };
}

/** What the files tell. */
export interface Told {
  readonly analysis: Analysis;
  readonly ranking: Ranking;
  readonly sure?: HowSure;
}

/** Report and map, both or none. */
export async function writeOutputs(
  { report, map }: WrittenFiles,
  told: Told,
  frame: LoadedFrame,
  options: OutputOptions,
): Promise<void> {
  const { writeFiles } = await import("./write-files.ts");
  const files: OutputFile[] = [];
  if (report !== undefined) {
    files.push({ path: report, text: await reportText(told, frame, options) });
  }
  if (map !== undefined) {
    const { mapCsv } = await import("./output/map-csv.ts");
    files.push({ path: map, text: mapCsv(told.ranking.map) });
  }
  writeFiles(files);
}

function reportPath(frame: string, report: string | false | undefined): string | undefined {
  if (report === false) return undefined;
  return report ?? path.join("reports", `${path.parse(frame).name}.html`);
}

async function reportText(
  { analysis, sure }: Told,
  frame: LoadedFrame,
  options: OutputOptions,
): Promise<string> {
  const { renderReport } = await import("../report/page.ts");
  const { readPlotly } = await import("../report/plotly.ts");
  return renderReport(analysis, {
    fileName: frame.path,
    fileHash: frame.hash,
    version: programVersion(),
    ...(options.date && { created: new Date().toISOString() }),
    options: [solveOptionsText(options), mapPitchText(options), sureOptionsText(options)]
      .filter((t) => t !== "")
      .join(" "),
    ...(sure && { sure }),
    plotly: readPlotly(),
  });
}
