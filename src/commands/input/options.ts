/** Options that several commands share, and how their values are read. */

import { InvalidArgumentError, Option } from "commander";
import type { AnalyseOptions } from "../../analyse.ts";
import { inputError } from "../../errors.ts";
import { readLength } from "./lengths.ts";

export interface MeshOptions {
  readonly meshSize?: string;
}

export interface SolveOptions extends MeshOptions {
  readonly modes?: number;
}

const MOST_MODES = 500;

export function meshSizeOption(): Option {
  return new Option("--mesh-size <length>", 'size of the mesh, such as "4 mm"; finer is slower');
}

export function modesOption(): Option {
  return new Option("--modes <n>", "how many modes to compute (default: 40)").argParser(
    wholeNumber(1, MOST_MODES),
  );
}

export function jsonOption(): Option {
  return new Option(
    "--json",
    "print one JSON document for other programs; field names carry their units",
  );
}

export function wholeNumber(least: number, most: number): (text: string) => number {
  return (text) => {
    const value = Number(text);
    if (/^\d+$/.test(text) && value >= least && value <= most) return value;
    throw new InvalidArgumentError(`Give a whole number from ${least} to ${most}.`);
  };
}

/** @throws InputError when an option that names a file was given without a name */
export function requireName(option: string, name: string | undefined, example: string): void {
  if (name === undefined || name.trim() !== "") return;
  throw inputError(option, `nothing was given: name a file, such as "${example}".`);
}

/** The options of the analysis; what is not given is absent. */
export async function analyseOptions(
  options: SolveOptions,
  progress: (stage: string) => void,
): Promise<AnalyseOptions> {
  const { meshSize, modes } = options;
  return {
    ...(meshSize !== undefined && { meshSize: await readLength("--mesh-size", meshSize) }),
    ...(modes !== undefined && { modes }),
    progress,
  };
}

/** The options that change the numbers, as they were typed. */
export function solveOptionsText({ modes, meshSize }: SolveOptions): string {
  return [
    ...(modes === undefined ? [] : [`--modes ${modes}`]),
    ...(meshSize === undefined ? [] : [`--mesh-size ${JSON.stringify(meshSize)}`]),
  ].join(" ");
}
