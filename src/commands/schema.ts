/** `stillpoint schema`: the rules of the frame file for editors. */

import type { Command } from "commander";
import { requireName } from "./input/options.ts";
import type { Terminal } from "./terminal/terminal.ts";

interface SchemaOptions {
  readonly output?: string;
}

const EXAMPLES = `
Examples:
  stillpoint schema --output frame.schema.json
  stillpoint schema

Write "$schema": "./frame.schema.json" at the top of a frame file, and an editor
that knows JSON Schema will explain the fields and underline mistakes.`;

export function setUp(command: Command, terminal: Terminal): void {
  command
    .description("Prints the JSON Schema (draft 7) of frame files.")
    .option("--output <file>", "write it to a file instead")
    .addHelpText("after", EXAMPLES)
    .action((options: SchemaOptions) => schema(options, terminal));
}

async function schema({ output }: SchemaOptions, terminal: Terminal): Promise<void> {
  requireName("--output", output, "frame.schema.json");
  const { requireFree, SCHEMA } = await import("./overwrite.ts");
  if (output !== undefined) requireFree(output, SCHEMA);
  const { frameJsonSchema } = await import("../frame/json-schema.ts");
  const text = `${JSON.stringify(frameJsonSchema(), null, 2)}\n`;
  if (output === undefined) return terminal.print(text);
  const { writeFiles } = await import("./write-files.ts");
  const { writtenLines } = await import("./output/written.ts");
  writeFiles([{ path: output, text }]);
  terminal.print(writtenLines([output]));
}
