/** `stillpoint check`: the frame read, built and weighed, without solving anything. */

import type { Command } from "commander";
import { analyseOptions, jsonOption, type MeshOptions, meshSizeOption } from "./input/options.ts";
import { progressOn } from "./terminal/progress.ts";
import type { Terminal } from "./terminal/terminal.ts";

interface CheckOptions extends MeshOptions {
  readonly json?: boolean;
}

const EXAMPLES = `
Examples:
  stillpoint check frames/five-inch.jsonc
  stillpoint check frames/five-inch.jsonc --json`;

export function setUp(command: Command, terminal: Terminal): void {
  command
    .description(
      "Reads the frame file, builds the frame, makes sure that everything hangs together, and weighs it. Computes no vibrations, so it is quick.",
    )
    .argument("<frame>", "the frame file")
    .addOption(meshSizeOption())
    .addOption(jsonOption())
    .addHelpText("after", EXAMPLES)
    .action((frame: string, options: CheckOptions) => check(frame, options, terminal));
}

async function check(framePath: string, options: CheckOptions, terminal: Terminal): Promise<void> {
  const settings = await analyseOptions(options, progressOn(terminal));
  const { inFrame, loadFrame } = await import("./input/load-frame.ts");
  const { prepare } = await import("../analyse.ts");
  const frame = loadFrame(framePath);
  const prepared = inFrame(frame, settings, () => prepare(frame.file, settings));
  const { checkJson, checkText } = await import("./output/check.ts");
  terminal.print(
    options.json ? checkJson(prepared, frame) : checkText(prepared, frame, terminal.ink),
  );
}
