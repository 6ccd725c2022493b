/** The files that `rank` writes beside what it prints. */

import path from "node:path";
import type { Analysis } from "../analyse.ts";
import type { Ranking } from "../ranking/types.ts";
import type { HowSure } from "../study/how-sure.ts";
import type { LoadedFrame } from "./input/load-frame.ts";
import { type MapOptions, mapPitchText } from "./input/map-options.ts";
import { type SolveOptions, solveOptionsText } from "./input/options.ts";
import type { ReportOptions } from "./input/report-options.ts";
import { type SureOptions, sureOptionsText } from "./input/sure-options.ts";
import type { WrittenFiles } from "./output/ranking-json.ts";
import type { OutputFile } from "./write-files.ts";

export type OutputOptions = SolveOptions & MapOptions & ReportOptions & SureOptions;

/** Where report and map go, both free to be written. @throws InputError */
export async function freeOutputs(
  framePath: string,
  options: OutputOptions,
): Promise<WrittenFiles> {
  const { MAP, requireApart, requireFree } = await import("./overwrite.ts");
  const { requireReportFree } = await import("./page-input.ts");
  const report = reportPath(framePath, options.report);
  const { map } = options;
  if (report !== undefined) await requireReportFree(report, options, framePath);
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
  { analysis, ranking, sure }: Told,
  frame: LoadedFrame,
  options: OutputOptions,
): Promise<void> {
  const { writeFiles } = await import("./write-files.ts");
  const files: OutputFile[] = [];
  if (report !== undefined) {
    const { pageParts } = await import("./page-input.ts");
    const { renderReport } = await import("../report/page.ts");
    const typed = [solveOptionsText(options), mapPitchText(options), sureOptionsText(options)];
    const { input, beside } = await pageParts(report, options, typed);
    const from = { fileName: frame.path, fileHash: frame.hash, ...(sure && { sure }) };
    files.push({ path: report, text: renderReport(analysis, { ...input, ...from }) }, ...beside);
  }
  if (map !== undefined) {
    const { mapCsv } = await import("./output/map-csv.ts");
    files.push({ path: map, text: mapCsv(ranking.map) });
  }
  writeFiles(files);
}

function reportPath(frame: string, report: string | false | undefined): string | undefined {
  if (report === false) return undefined;
  return report ?? path.join("reports", `${path.parse(frame).name}.html`);
}
