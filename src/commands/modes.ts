/** `stillpoint modes`: how the frame vibrates by itself. */

import type { Command } from "commander";
import {
  analyseOptions,
  jsonOption,
  meshSizeOption,
  modesOption,
  type SolveOptions,
} from "./input/options.ts";
import { progressOn } from "./terminal/progress.ts";
import type { Terminal } from "./terminal/terminal.ts";

interface ModesOptions extends SolveOptions {
  readonly json?: boolean;
}

const EXAMPLES = `
Examples:
  stillpoint modes frames/five-inch.jsonc
  stillpoint modes frames/five-inch.jsonc --modes 12 --mesh-size "5 mm"
  stillpoint modes frames/five-inch.jsonc --json`;

export function setUp(command: Command, terminal: Terminal): void {
  command
    .description(
      "Lists the natural vibrations (modes) of the frame: frequency, damping, what moves, and which parts bend.",
    )
    .argument("<frame>", "the frame file")
    .addOption(modesOption())
    .addOption(meshSizeOption())
    .addOption(jsonOption())
    .addHelpText("after", EXAMPLES)
    .action((frame: string, options: ModesOptions) => modes(frame, options, terminal));
}

async function modes(framePath: string, options: ModesOptions, terminal: Terminal): Promise<void> {
  const settings = await analyseOptions(options, progressOn(terminal));
  const { inFrame, loadFrame } = await import("./input/load-frame.ts");
  const { analyseModes } = await import("../analyse.ts");
  const frame = loadFrame(framePath);
  const analysis = inFrame(frame, settings, () => analyseModes(frame.file, settings));
  if (options.json) {
    const { modesJson } = await import("./output/modes-json.ts");
    terminal.print(modesJson(analysis, frame));
  } else {
    const { modesText } = await import("./output/modes-text.ts");
    terminal.print(modesText(analysis, terminal.ink));
  }
}
