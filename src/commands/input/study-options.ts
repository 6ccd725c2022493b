/** Options of the commands that sample spreads. */

import { type Command, InvalidArgumentError, Option } from "commander";
import { inputError } from "../../errors.ts";
import type { SampleOptions } from "../../runs/sample-run.ts";
import type { SampleError } from "../../study/sample-count.ts";
import {
  jsonOption,
  meshSizeOption,
  modesOption,
  type SolveOptions,
  wholeNumber,
} from "./options.ts";
import type { ReportOptions } from "./report-options.ts";

export interface RunOptions extends SolveOptions {
  readonly keepHeights?: boolean;
  readonly workers?: number;
}

export interface StudyOptions extends RunOptions, ReportOptions {
  readonly samples?: number;
  readonly error?: string;
  readonly seed?: number;
  readonly json?: boolean;
}

const MOST_WORKERS = 256;
const MOST_SEED = 2 ** 31 - 1;

export function workersOption(): Option {
  return new Option(
    "--workers <n>",
    "threads to use (default: as many as there are cores)",
  ).argParser(wholeNumber(1, MOST_WORKERS));
}

/** Those of a run on many threads. */
export function addRunOptions(command: Command): Command {
  return command
    .option("--keep-heights", "leave parts at the heights of the file when a thickness changes")
    .addOption(workersOption())
    .addOption(modesOption())
    .addOption(meshSizeOption());
}

export function samplesOption(): Option {
  return new Option(
    "--samples <n>",
    "frames drawn from the spreads of the inputs (default: as many as the answer needs, at most 192)",
  ).argParser(sampleNumber);
}

export function seedOption(): Option {
  return new Option("--seed <n>", "another set of samples (default: 1)").argParser(
    wholeNumber(0, MOST_SEED),
  );
}

export function addStudyOptions(command: Command): Command {
  command
    .addOption(samplesOption())
    .option(
      "--error <percent>",
      "how well chances are to be known, one standard error, in percentage points; takes up to 4096 samples (default: 5, with 192 at most)",
    )
    .addOption(seedOption());
  return addRunOptions(command).addOption(jsonOption());
}

/** Refuses what is no number with the words that were typed. */
function sampleNumber(text: string): number {
  if (/^\s*-?\d+(?:\.\d*)?\s*$/.test(text)) return Number(text);
  throw new InvalidArgumentError("Give a whole number from 32 to 4096, or leave it out.");
}

/** @throws InputError for numbers that make no sense */
export async function sampleOptions(
  options: Pick<StudyOptions, "samples" | "error" | "seed" | "workers">,
): Promise<Pick<SampleOptions, "samples" | "wanted" | "seed" | "workers">> {
  const { checkSampleCount, WANTED_ERROR } = await import("../../study/sample-count.ts");
  const { samples, error, workers } = options;
  if (samples !== undefined) asOption("--samples", () => checkSampleCount(samples));
  return {
    ...(samples !== undefined && { samples }),
    ...(error !== undefined && { wanted: wantedError(error, WANTED_ERROR) }),
    seed: options.seed ?? 1,
    ...(workers !== undefined && { workers }),
  };
}

/** The error of levels goes along in the same ratio. */
function wantedError(text: string, usual: SampleError): SampleError {
  const percent = Number(text.replace(/%$/, ""));
  if (!(percent >= 1 && percent <= 20)) {
    throw inputError(
      "--error",
      `${JSON.stringify(text)} is not possible: give percentage points from 1 to 20. One point takes 25 times the samples of five.`,
    );
  }
  const share = percent / 100;
  return { chance: share, level: (usual.level * share) / usual.chance };
}

function asOption(option: string, check: () => unknown): void {
  try {
    check();
  } catch (error) {
    throw inputError(option, (error as Error).message.replace(/^samples: /, ""));
  }
}
