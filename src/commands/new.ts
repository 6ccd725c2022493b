/** `stillpoint new`: a frame file to start from. */

import path from "node:path";
import { type Command, InvalidArgumentError } from "commander";
import { inputError } from "../errors.ts";
import { SIZE_CLASSES, type SizeClass } from "../frame/starter-classes.ts";
import type { Terminal } from "./terminal/terminal.ts";

interface NewOptions {
  readonly class: SizeClass;
  readonly force?: boolean;
}

const EXAMPLES = `
Examples:
  stillpoint new my-frame.jsonc --class "5 inch"
  stillpoint new light.jsonc --class 3
  stillpoint new light.jsonc --class 3 --force`;

export function setUp(command: Command, terminal: Terminal): void {
  command
    .description(
      "Starts a frame file with the typical sizes and weights of a propeller class, every one with a comment, to be replaced by your own.",
    )
    .argument("<file>", "the frame file to write, such as my-frame.jsonc")
    .requiredOption("--class <size>", `propeller size: ${inWords(SIZE_CLASSES)}`, sizeClass)
    .option("--force", "write over a file that exists")
    .addHelpText("after", EXAMPLES)
    .action((file: string, options: NewOptions) => start(file, options, terminal));
}

/** "5", "5inch" and "5 in" all mean "5 inch". */
function sizeClass(text: string): SizeClass {
  const inches = /^\s*(\d+)\s*-?\s*(?:inch(?:es)?|in|")?\s*$/i.exec(text)?.[1];
  const found = SIZE_CLASSES.find((known) => known === `${inches} inch`);
  if (found === undefined) throw new InvalidArgumentError(`Choose ${inWords(SIZE_CLASSES)}.`);
  return found;
}

function inWords(classes: readonly string[]): string {
  return `${classes.slice(0, -1).join(", ")} or ${classes.at(-1)}`;
}

async function start(file: string, options: NewOptions, terminal: Terminal): Promise<void> {
  const { statIfThere, writeFiles } = await import("./write-files.ts");
  if (!options.force && statIfThere(file)?.isFile()) {
    throw inputError(
      "",
      `${file} exists already and was left as it is. Choose another name, or add --force to write over it.`,
    );
  }
  const { starterFrame } = await import("../frame/starter.ts");
  const name = path.parse(file).name;
  writeFiles([{ path: file, text: starterFrame(options.class, name) }]);
  const { startedText } = await import("./output/written.ts");
  terminal.print(startedText(file, options.class));
}
