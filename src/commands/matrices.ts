/** `stillpoint matrices`: stiffness and mass of the frame for other programs. */

import path from "node:path";
import type { Command } from "commander";
import { inputError } from "../errors.ts";
import { analyseOptions, type MeshOptions, meshSizeOption } from "./input/options.ts";
import { printable } from "./terminal/printable.ts";
import { progressOn } from "./terminal/progress.ts";
import type { Terminal } from "./terminal/terminal.ts";
import { statIfThere, writeFiles } from "./write-files.ts";

interface MatricesOptions extends MeshOptions {
  readonly output: string;
}

const EXAMPLES = `
Examples:
  stillpoint matrices frames/five-inch.jsonc --output matrices/
  stillpoint matrices frames/five-inch.jsonc --output k --mesh-size "6 mm"

The first writes stiffness.mtx, mass.mtx and unknowns.csv into the folder
matrices, the second k-stiffness.mtx and so on. Units: m, kg, s, rad.`;

export function setUp(command: Command, terminal: Terminal): void {
  command
    .description(
      "Writes the stiffness matrix K and the mass matrix M of the frame as Matrix Market files (symmetric, lower triangle), and a list of what their rows stand for.",
    )
    .argument("<frame>", "the frame file")
    .requiredOption("--output <place>", "a folder (ends with /) or how the names begin")
    .addOption(meshSizeOption())
    .addHelpText("after", EXAMPLES)
    .action((frame: string, options: MatricesOptions) => matrices(frame, options, terminal));
}

async function matrices(
  framePath: string,
  options: MatricesOptions,
  terminal: Terminal,
): Promise<void> {
  const place = placeFor(options.output);
  const settings = await analyseOptions(options, progressOn(terminal));
  const { inFrame, loadFrame } = await import("./input/load-frame.ts");
  const { prepare } = await import("../analyse.ts");
  const { assemble } = await import("../matrices/assemble.ts");
  const { matrixMarket } = await import("../linalg/matrix-market.ts");
  const { unknownsCsv } = await import("./output/unknowns.ts");
  const { writtenLines } = await import("./output/written.ts");
  const { MATRIX, requireFree, UNKNOWNS } = await import("./overwrite.ts");

  const frame = loadFrame(framePath);
  const [stiffness, mass, unknowns] = ["stiffness.mtx", "mass.mtx", "unknowns.csv"].map(place);
  for (const file of [stiffness, mass]) requireFree(file, MATRIX, framePath);
  requireFree(unknowns, UNKNOWNS, framePath);
  const { K, M, reduction, mesh } = inFrame(frame, settings, () => {
    const { mesh, model } = prepare(frame.file, settings);
    return { ...assemble(mesh, model), mesh };
  });
  const comments = (what: string, units: string): string[] => [
    `${what} of the frame "${printable(frame.file.name)}", in ${units}`,
    "Axes: x forward, y left, z up. What each row stands for: see the list of unknowns.",
  ];
  const files = [
    { path: stiffness, text: matrixMarket(K, comments("stiffness", "N/m, N, N m")) },
    { path: mass, text: matrixMarket(M, comments("mass", "kg, kg m, kg m^2")) },
    { path: unknowns, text: unknownsCsv(mesh, reduction) },
  ];
  writeFiles(files);
  terminal.print(writtenLines(files.map((file) => file.path)));
}

/** Where a file of this name goes: into the folder, or with the prefix and a hyphen before it. */
function placeFor(output: string): (name: string) => string {
  if (output.trim() === "") {
    throw inputError(
      "--output",
      'nothing was given: name a folder, such as "matrices/", or how the names of the files begin.',
    );
  }
  const isFolder = /[\\/]$/.test(output) || statIfThere(output)?.isDirectory() === true;
  return (name) => (isFolder ? path.join(output, name) : `${output}-${name}`);
}
