/** `stillpoint rank`: the main job. */

import path from "node:path";
import type { Command } from "commander";
import type { Analysis } from "../analyse.ts";
import { inputError } from "../errors.ts";
import type { LoadedFrame } from "./input/load-frame.ts";
import {
  analyseOptions,
  jsonOption,
  meshSizeOption,
  modesOption,
  requireName,
  type SolveOptions,
  solveOptionsText,
} from "./input/options.ts";
import { commandLine } from "./terminal/numbers.ts";
import { progressOn } from "./terminal/progress.ts";
import type { Terminal } from "./terminal/terminal.ts";
import { programVersion } from "./version.ts";

interface RankOptions extends SolveOptions {
  readonly json?: boolean;
  /** false: none; absent: the usual place */
  readonly report?: string | false;
  readonly date: boolean;
}

const EXAMPLES = `
Examples:
  stillpoint rank frames/five-inch.jsonc
  stillpoint rank frames/five-inch.jsonc --report five-inch.html
  stillpoint rank frames/five-inch.jsonc --mesh-size "8 mm" --no-report --json`;

export function setUp(command: Command, terminal: Terminal): void {
  // both are one option to the parser, which would let the last one win
  const given = new Set<string>();
  for (const name of ["report", "no-report"]) command.on(`option:${name}`, () => given.add(name));
  command
    .description(
      "Computes how the frame vibrates and what its motors cause at every place where the sensor stack could sit, and ranks the places. Writes a report with figures.",
    )
    .argument("<frame>", "the frame file")
    .option("--report <file>", "where the report goes (default: reports/<frame>.html)")
    .option("--no-report", "write no report")
    .option("--no-date", "leave the date out of the report")
    .addOption(modesOption())
    .addOption(meshSizeOption())
    .addOption(jsonOption())
    .addHelpText("after", EXAMPLES)
    .action((frame: string, options: RankOptions) => {
      requireSenseOfReport(options.report, given.size > 1);
      return rank(frame, options, terminal);
    });
}

async function rank(framePath: string, options: RankOptions, terminal: Terminal): Promise<void> {
  const settings = await analyseOptions(options, progressOn(terminal));
  const { inFrame, loadFrame } = await import("./input/load-frame.ts");
  const { analyse } = await import("../analyse.ts");
  const { REPORT, requireFree } = await import("./overwrite.ts");
  const { writeFiles } = await import("./write-files.ts");
  const frame = loadFrame(framePath);
  const report = reportPath(framePath, options.report);
  if (report !== undefined) requireFree(report, REPORT, framePath);

  const { analysis, ranking, excitation } = inFrame(frame, settings, () => {
    requireMotors(frame);
    return ranked(analyse(frame.file, settings));
  });
  if (report !== undefined) {
    const text = await reportText(analysis, frame, options);
    writeFiles([{ path: report, text }]);
  }
  if (options.json) {
    const { rankingJson } = await import("./output/ranking-json.ts");
    terminal.print(rankingJson(analysis, ranking, excitation, frame, report));
  } else {
    const { rankingText } = await import("./output/ranking-text.ts");
    const { reportLine } = await import("./output/written.ts");
    terminal.print(rankingText(analysis, ranking, excitation, terminal.ink) + reportLine(report));
  }
}

/** What is wrong with the options themselves, before anything is read. */
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

function reportPath(frame: string, report: string | false | undefined): string | undefined {
  if (report === false) return undefined;
  return report ?? path.join("reports", `${path.parse(frame).name}.html`);
}

/** Said before the modes are computed, since nothing would come of them. */
function requireMotors({ path: frame, file }: LoadedFrame): void {
  if (file.propulsion !== undefined) return;
  throw inputError(
    "propulsion",
    `The frame has no motors, so nothing shakes its places and they cannot be ranked. Describe the motors and propellers in the section "propulsion"; or list how the frame vibrates by itself with: ${commandLine("modes", frame)}`,
  );
}

function ranked(analysis: Analysis) {
  const { ranking, excitation } = analysis;
  if (ranking !== undefined && excitation !== undefined) return { analysis, ranking, excitation };
  throw inputError(
    "candidates",
    'There is no place on this frame for a sensor stack: none is named, and its hole pattern fits on no plate. Name at least one place on a plate in the section "candidates".',
  );
}

async function reportText(
  analysis: Analysis,
  frame: LoadedFrame,
  options: RankOptions,
): Promise<string> {
  const { renderReport } = await import("../report/page.ts");
  const { readPlotly } = await import("../report/plotly.ts");
  return renderReport(analysis, {
    fileName: frame.path,
    fileHash: frame.hash,
    version: programVersion(),
    ...(options.date && { created: new Date().toISOString() }),
    options: solveOptionsText(options),
    plotly: readPlotly(),
  });
}
