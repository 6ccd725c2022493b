/** The options of a ranking that is also to say how sure it is. */

import type { Command } from "commander";
import { inputError } from "../../errors.ts";
import { samplesOption, seedOption, workersOption } from "./study-options.ts";

export interface SureOptions {
  readonly sure?: boolean;
  readonly samples?: number;
  readonly seed?: number;
  readonly workers?: number;
}

/** Of no use without --sure. */
const NEEDED = ["samples", "seed", "workers"] as const;

export function addSureOptions(command: Command): Command {
  return command
    .option(
      "--sure",
      "also draw frames from the spreads and move every input: how often each place is the best, what moves the noise, what would help; takes a minute or two",
    )
    .addOption(samplesOption())
    .addOption(seedOption())
    .addOption(workersOption());
}

/** @throws InputError for options that go with --sure, given without it */
export function requireSenseOfSure(options: SureOptions): void {
  if (options.sure) return;
  const given = NEEDED.find((name) => options[name] !== undefined);
  if (given === undefined) return;
  throw inputError(
    `--${given}`,
    "goes with --sure, which draws frames from the spreads: add --sure, or leave it out.",
  );
}

/** Those that change the numbers, as they were typed. */
export function sureOptionsText({ sure, samples, seed }: SureOptions): string {
  return [
    ...(sure ? ["--sure"] : []),
    ...(samples === undefined ? [] : [`--samples ${samples}`]),
    ...(seed === undefined ? [] : [`--seed ${seed}`]),
  ].join(" ");
}
