/** `stillpoint sensitivity`: what moves the modes and the noise, and what would help. */

import { readFileSync } from "node:fs";
import { type Command, Option } from "commander";
import { inputError } from "../errors.ts";
import type { StudyBase } from "../study/sensitivity-base.ts";
import type { SensitivityStudy } from "../study/sensitivity-study.ts";
import type { SensitivityTable } from "../study/sensitivity-types.ts";
import type { LoadedFrame } from "./input/load-frame.ts";
import {
  analyseOptions,
  jsonOption,
  type MeshOptions,
  meshSizeOption,
  solveOptionsText,
  wholeNumber,
} from "./input/options.ts";
import { addReportOptions, type ReportOptions } from "./input/report-options.ts";
import { workersOption } from "./input/study-options.ts";
import { reportPath } from "./study.ts";
import type { Terminal } from "./terminal/terminal.ts";
import type { OutputFile } from "./write-files.ts";

interface SensitivityCommandOptions extends MeshOptions, ReportOptions {
  readonly mode?: number;
  readonly spot?: string;
  readonly top: number;
  readonly suggestions: boolean;
  readonly workers?: number;
  readonly json?: boolean;
}

const MOST_MODES = 300;
const MOST_ROWS = 1000;

const EXAMPLES = `
Examples:
  stillpoint sensitivity frames/five-inch.jsonc
  stillpoint sensitivity frames/five-inch.jsonc --mode 13 --top 20
  stillpoint sensitivity frames/five-inch.jsonc --spot "rear bay"
  stillpoint sensitivity frames/five-inch.jsonc --no-suggestions --json`;

export function setUp(command: Command, terminal: Terminal): void {
  command
    .description(
      "Says which numbers of the frame file move its natural frequencies and the noise at a spot most, in Hz per mm and dB per %, and suggests changes that would help, each solved anew.",
    )
    .argument("<frame>", "the frame file");
  const checkReport = addReportOptions(command, "reports/<frame>-sensitivity.html");
  command
    .addOption(
      new Option("--mode <n>", "the mode to tell all about (default: a line on each)").argParser(
        wholeNumber(1, MOST_MODES),
      ),
    )
    .option(
      "--spot <name>",
      "the spot whose noise is looked at (default: the best); suggestions are for the best",
    )
    .addOption(
      new Option("--top <n>", "how many inputs to list")
        .argParser(wholeNumber(1, MOST_ROWS))
        .default(12),
    )
    .option("--no-suggestions", "suggest nothing, which saves some time")
    .addOption(workersOption())
    .addOption(meshSizeOption())
    .addOption(jsonOption())
    .addHelpText("after", EXAMPLES)
    .action((frame: string, options: SensitivityCommandOptions) => {
      checkReport(options);
      return sensitivity(frame, options, terminal);
    });
}

async function sensitivity(
  framePath: string,
  options: SensitivityCommandOptions,
  terminal: Terminal,
): Promise<void> {
  const settings = await analyseOptions(options, () => {});
  const { inFrame, loadFrame } = await import("./input/load-frame.ts");
  const { readFrameSource } = await import("../frame/change.ts");
  const { LIBRARY_NAMES } = await import("../material/library-names.ts");
  const { studyBase } = await import("../study/sensitivity-base.ts");
  const frame = loadFrame(framePath);
  const source = readFrameSource(framePath, LIBRARY_NAMES);
  const report = reportPath(framePath, "-sensitivity", options.report);
  if (report !== undefined) {
    const { requireReportFree } = await import("./page-input.ts");
    await requireReportFree(report, options, framePath);
  }
  const base = inFrame(frame, settings, () => studyBase(source, settings.meshSize));
  const { spotTold } = await import("../study/sensitivity-study.ts");
  const { outcome } = base;
  const spot =
    options.spot === undefined ? spotTold(outcome).spot : spotAsked(outcome, options.spot);
  const text = readFileSync(framePath, "utf8");
  const study = await studied(base, text, spot, options, terminal);
  requireMode(study.table, options.mode);
  if (report !== undefined) {
    const { writeFiles } = await import("./write-files.ts");
    writeFiles(await pageFiles(report, study, frame, options));
  }
  const written = { ...(report !== undefined && { report }) };
  if (options.json) {
    const { sensitivityJson } = await import("./output/sensitivity-json.ts");
    terminal.print(sensitivityJson({ ...study, frame }, written));
    return;
  }
  const { sensitivityText } = await import("./output/sensitivity-text.ts");
  const { rankedLines } = await import("./output/written.ts");
  const { mode, top } = options;
  const look = { top, ...(mode !== undefined && { mode }) };
  terminal.print(
    sensitivityText({ ...study, frame }, look, terminal.ink) + rankedLines(written, options),
  );
}

async function studied(
  base: StudyBase,
  text: string,
  spot: number | undefined,
  { mode, workers, suggestions: wanted }: SensitivityCommandOptions,
  terminal: Terminal,
): Promise<SensitivityStudy> {
  const { studySensitivity } = await import("../runs/sensitivity-study.ts");
  const { interruptible } = await import("../runs/interrupt.ts");
  const { stageProgressOn } = await import("./terminal/stage-progress.ts");
  const { show, end } = stageProgressOn(terminal);
  try {
    return await interruptible((signal) =>
      studySensitivity(base, text, {
        ...(mode !== undefined && { modes: mode }),
        ...(spot !== undefined && { spot }),
        ...(!wanted && { suggestFor: false }),
        ...(workers !== undefined && { workers }),
        signal,
        progress: show,
      }),
    );
  } finally {
    end();
  }
}

/** The page, and what has to lie beside it. */
async function pageFiles(
  report: string,
  study: SensitivityStudy,
  frame: LoadedFrame,
  options: SensitivityCommandOptions,
): Promise<OutputFile[]> {
  const { pageParts } = await import("./page-input.ts");
  const { renderSensitivity } = await import("../report/sensitivity-page.ts");
  const { spot } = options;
  const { input, beside } = await pageParts(report, options, [
    solveOptionsText(options),
    spot === undefined ? "" : `--spot ${JSON.stringify(spot)}`,
  ]);
  const from = { fileName: frame.path, fileHash: frame.hash };
  return [
    { path: report, text: renderSensitivity(frame.file.name, study, { ...input, ...from }) },
    ...beside,
  ];
}

/** The number of the spot in the table's list. */
function spotAsked({ spots }: StudyBase["outcome"], name: string): number {
  const found = spots.findIndex((s) => s.name === name);
  if (found >= 0) return found;
  const names = spots.map((s) => `"${s.name}"`).join(", ");
  throw inputError(
    "--spot",
    spots.length === 0
      ? `${JSON.stringify(name)} cannot be looked at: nothing shakes this frame, or it names no place for the stack.`
      : `There is no spot ${JSON.stringify(name)} on this frame. Its spots are ${names}.`,
  );
}

function requireMode({ modes }: SensitivityTable, mode: number | undefined): void {
  if (mode === undefined || mode <= modes.length) return;
  throw inputError("--mode", `There is no mode ${mode}: this frame has ${modes.length} in all.`);
}
