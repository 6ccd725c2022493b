/** `stillpoint sensitivity`: what moves the modes and the noise, and what would help. */

import { readFileSync } from "node:fs";
import { type Command, Option } from "commander";
import { InterruptedError, inputError } from "../errors.ts";
import type { StudyBase } from "../study/sensitivity-base.ts";
import type { SensitivityTable } from "../study/sensitivity-types.ts";
import type { Suggestions } from "../study/suggest-types.ts";
import {
  analyseOptions,
  jsonOption,
  type MeshOptions,
  meshSizeOption,
  wholeNumber,
} from "./input/options.ts";
import { workersOption } from "./input/study-options.ts";
import type { Terminal } from "./terminal/terminal.ts";

interface SensitivityCommandOptions extends MeshOptions {
  readonly mode?: number;
  readonly spot?: string;
  readonly top: number;
  readonly suggestions: boolean;
  readonly workers?: number;
  readonly json?: boolean;
}

const MOST_MODES = 300;
const MOST_ROWS = 1000;
/** Modes looked at in any case. */
const MODES = 20;

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
    .argument("<frame>", "the frame file")
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
    .action((frame: string, options: SensitivityCommandOptions) =>
      sensitivity(frame, options, terminal),
    );
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
  const base = inFrame(frame, settings, () => studyBase(source, settings.meshSize));
  const spot = spotAsked(base, options.spot);
  const text = readFileSync(framePath, "utf8");
  const found = await studied(base, text, options, terminal);
  const shown = { ...found, ...(spot !== undefined && { spot }), frame };
  requireMode(found.table, options.mode);
  if (options.json) {
    const { sensitivityJson } = await import("./output/sensitivity-json.ts");
    terminal.print(sensitivityJson(shown));
    return;
  }
  const { sensitivityText } = await import("./output/sensitivity-text.ts");
  const { mode, top } = options;
  terminal.print(
    sensitivityText(shown, { top, ...(mode !== undefined && { mode }) }, terminal.ink),
  );
}

async function studied(
  base: StudyBase,
  text: string,
  { mode = 0, workers, suggestions: wanted }: SensitivityCommandOptions,
  terminal: Terminal,
): Promise<{ readonly table: SensitivityTable; readonly suggested?: Suggestions }> {
  const { sensitivityTable } = await import("../runs/sensitivity-run.ts");
  const { interruptible } = await import("../runs/interrupt.ts");
  const { suggestions } = await import("../study/suggest.ts");
  const { stageProgressOn } = await import("./terminal/stage-progress.ts");
  const { show, end } = stageProgressOn(terminal);
  try {
    const table = await interruptible(async (signal) => {
      const found = await sensitivityTable(base, text, {
        modes: Math.max(MODES, mode),
        ...(workers !== undefined && { workers }),
        signal,
        progress: (done, all) => show("moving every input", done, all),
      });
      if (signal.aborted) throw new InterruptedError("Stopped before the answer was there.");
      return found;
    });
    if (!wanted || table.spots.length === 0) return { table };
    const suggested = suggestions(base, table, {
      progress: (_, done, all) => show("trying changes", done, all),
    });
    return { table, suggested };
  } finally {
    end();
  }
}

/** The number of the spot in the table's list; undefined where there is none to look at. */
function spotAsked({ outcome }: StudyBase, name: string | undefined): number | undefined {
  const { spots, best } = outcome;
  if (name === undefined) return best ?? (spots.length > 0 ? 0 : undefined);
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
