/** What a sweep has to compute: every combination of the values, as a numbered list of jobs. */

import { inputError } from "../errors.ts";

/** What is varied, and all it is set to. */
export interface Parameter {
  /** as users read it: arms.arm.thickness */
  readonly name: string;
  /** as they would stand in the file: numbers in the field's own bare unit, texts with a unit, lists ... */
  readonly values: readonly unknown[];
  /** of the numbers among the values ("mm"); "" or absent for plain ones */
  readonly unit?: string;
}

export interface JobInput {
  readonly name: string;
  readonly written: unknown;
}

export interface Job {
  /** 0.. over the whole sweep, whichever part of it is computed */
  readonly index: number;
  readonly inputs: readonly JobInput[];
}

/** More would be a slip of a step rather than a wish: at 30 per second they take an hour. */
export const MOST_JOBS = 100_000;

/**
 * Every combination of the values, that of the last parameter changing fastest.
 *
 * @throws InputError when nothing is varied, one is varied twice, has no values, or there are too many
 */
export function gridJobs(parameters: readonly Parameter[]): Job[] {
  requireSense(parameters);
  const lists = parameters.map(({ name, values }) => values.map((written) => ({ name, written })));
  const combinations = lists.reduce<JobInput[][]>(
    (so, list) => so.flatMap((inputs) => list.map((input) => [...inputs, input])),
    [[]],
  );
  return combinations.map((inputs, index) => ({ index, inputs }));
}

function requireSense(parameters: readonly Parameter[]): void {
  if (parameters.length === 0) throw inputError("", "Nothing is varied: name at least one input.");
  const seen = new Set<string>();
  for (const { name, values } of parameters) {
    if (seen.has(name)) throw inputError(name, "is varied twice: put all its values in one list.");
    if (values.length === 0)
      throw inputError(name, "has no values to be set to: give at least one.");
    seen.add(name);
  }
  const counts = parameters.map(({ values }) => values.length);
  const jobs = counts.reduce((product, n) => product * n, 1);
  if (jobs > MOST_JOBS) {
    throw inputError(
      "",
      `The values make ${counts.join(" x ")} = ${jobs} variants; at most ${MOST_JOBS} can be run. Take larger steps or fewer inputs.`,
    );
  }
}
