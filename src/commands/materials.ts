/** `stillpoint materials`: what the built-in library knows. */

import type { Command } from "commander";
import { inputError } from "../errors.ts";
import { jsonOption } from "./input/options.ts";
import { commandLine } from "./terminal/numbers.ts";
import type { Terminal } from "./terminal/terminal.ts";

interface MaterialsOptions {
  readonly json?: boolean;
}

const EXAMPLES = `
Examples:
  stillpoint materials
  stillpoint materials carbon-plate-0-90
  stillpoint materials --json

Use a name as the "material" of a plate, arm or standoff, a ply as the "ply" of
a laminate of your own.`;

export function setUp(command: Command, terminal: Terminal): void {
  command
    .description("Lists the built-in materials and plies with their values and sources.")
    .argument("[name]", "show this one in full")
    .addOption(jsonOption())
    .addHelpText("after", EXAMPLES)
    .action((name: string | undefined, options: MaterialsOptions) => {
      return materials(name, options, terminal);
    });
}

async function materials(
  name: string | undefined,
  { json }: MaterialsOptions,
  terminal: Terminal,
): Promise<void> {
  const { LIBRARY_MATERIALS } = await import("../material/library-materials.ts");
  const { LIBRARY_PLIES } = await import("../material/library-plies.ts");
  if (name === undefined) {
    const { libraryJson } = await import("./output/library-json.ts");
    const { libraryText } = await import("./output/library-text.ts");
    const show = json ? libraryJson : libraryText;
    return terminal.print(show(LIBRARY_MATERIALS, LIBRARY_PLIES, terminal.ink));
  }
  const material = LIBRARY_MATERIALS.find(({ id }) => id === name);
  const ply = LIBRARY_PLIES.find(({ id }) => id === name);
  const found = material ?? ply;
  if (found === undefined) {
    throw await unknownName(name, [...LIBRARY_MATERIALS, ...LIBRARY_PLIES]);
  }
  const { entryJson } = await import("./output/library-json.ts");
  const { entryText } = await import("./output/library-entry.ts");
  terminal.print(json ? entryJson(found) : entryText(found, terminal.ink));
}

async function unknownName(name: string, entries: readonly { readonly id: string }[]) {
  const { nearestName } = await import("../frame/nearest-name.ts");
  const { shown } = await import("../frame/shown.ts");
  const near = nearestName(
    name,
    entries.map(({ id }) => id),
  );
  const hint = near === undefined ? "" : ` Did you mean ${shown(near)}?`;
  return inputError(
    "",
    `There is no built-in material or ply ${shown(name)}.${hint} List them all with: ${commandLine("materials")}`,
  );
}
