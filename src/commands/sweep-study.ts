/** The rows that a sweep has computed, as a study. */

import { InputError, SolveError } from "../errors.ts";
import type { Change, FrameSource } from "../frame/change.ts";
import type { FrameGiven } from "../runs/compare-run.ts";
import type { Job } from "../runs/jobs.ts";
import type { SweptParameter } from "../runs/sweep-run.ts";
import type { SweepParameter, SweepRow, SweepStudy } from "../study/results-sweep.ts";
import { sweepStudy } from "../study/sweep-study.ts";
import type { Outcome } from "../variants/types.ts";

export interface ComputedRows {
  /** one more variant, as the rows were solved */
  readonly solve: (changes: readonly Change[]) => Outcome;
  readonly source: FrameSource;
  readonly given: FrameGiven;
  readonly parameters: readonly SweptParameter[];
  readonly jobs: readonly Job[];
  /** by number of the job */
  readonly outcomes: ReadonlyMap<number, Outcome>;
  readonly reasons: ReadonlyMap<number, string>;
}

export function studyOf(computed: ComputedRows): SweepStudy {
  const { source, given, parameters, jobs, outcomes, reasons, solve } = computed;
  const told = parameters.map(toldParameter);
  const rows = jobs.map(({ index }): SweepRow => {
    const outcome = outcomes.get(index);
    const failed = reasons.get(index);
    return {
      at: positionsOf(parameters, index),
      ...(outcome && { outcome }),
      ...(failed && { failed }),
    };
  });
  return sweepStudy({
    title: source.file.name,
    files: [{ path: given.path, hash: given.hash }],
    parameters: told,
    rows,
    between: betweenRows(parameters, told, solve),
  });
}

/** Positions of a job's values, the last parameter changing fastest. */
function positionsOf(parameters: readonly SweptParameter[], index: number): number[] {
  const at: number[] = [];
  let rest = index;
  for (const { values } of [...parameters].reverse()) {
    at.unshift(rest % values.length);
    rest = Math.floor(rest / values.length);
  }
  return at;
}

const NUMBER_THEN_UNIT = /^\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)\s*(.*?)\s*$/;

function toldParameter({ name, values, unit: bare = "" }: SweptParameter): SweepParameter {
  const read = values.map((written) => {
    if (typeof written === "number") return { value: written, unit: bare };
    const match = typeof written === "string" ? NUMBER_THEN_UNIT.exec(written) : null;
    return match && { value: Number(match[1]), unit: match[2] };
  });
  const [first] = read;
  const alike = first && read.every((r) => r?.unit === first.unit);
  const unit = alike ? first.unit : "";
  const texts = values.map((v, i) =>
    typeof v === "string" ? v : alike ? `${read[i]?.value} ${unit}`.trim() : JSON.stringify(v),
  );
  const numbers = read.flatMap((r) => (r ? [r.value] : []));
  return { name, unit, texts, ...(alike && { numbers }) };
}

/** A variant part of the way between two rows that differ in one parameter. */
function betweenRows(
  parameters: readonly SweptParameter[],
  told: readonly SweepParameter[],
  solve: ComputedRows["solve"],
) {
  return (from: SweepRow, to: SweepRow, f: number): Outcome | undefined => {
    const along = from.at.findIndex((k, p) => k !== to.at[p]);
    const { numbers, unit } = told[along];
    if (!numbers) return undefined;
    const value = (1 - f) * numbers[from.at[along]] + f * numbers[to.at[along]];
    const written = unit === "" ? value : `${value} ${unit}`;
    const changes = parameters.flatMap(({ places, values }, p): Change[] =>
      places.map((path) => ({ path, written: p === along ? written : values[from.at[p]] })),
    );
    try {
      return solve(changes);
    } catch (error) {
      if (error instanceof InputError || error instanceof SolveError) return undefined;
      throw error;
    }
  };
}
