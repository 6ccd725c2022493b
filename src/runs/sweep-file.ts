/** A sweep into a file: what is there already stays, what is missing is computed on all cores. */

import type { Cell } from "./columns.ts";
import { gridJobs, type Job, type Parameter } from "./jobs.ts";
import { runJobs } from "./pool.ts";
import { openRowFile } from "./row-file.ts";
import { type Shard, shardOf, WHOLE } from "./shard.ts";
import { makeSheet, rowFormat, sweepHash } from "./sheet.ts";

export interface SweepRun<S, R> {
  /** every combination of their values is a variant */
  readonly parameters: readonly Parameter[];
  /**
   * Whatever else decides the figures, as plain data: hash of the frame file, options, version of the
   * program. Rows of runs that differ here are never mixed.
   */
  readonly decides: unknown;
  /** titles of the figures, with their units: hover_rpm */
  readonly results: readonly string[];
  /** the figures of one variant, one per title */
  readonly cells: (value: R) => readonly Cell[];
  /** URL of a task module (`task.ts`) whose jobs are `Job`s */
  readonly task: string;
  /** called only when there is something to compute */
  readonly setup: () => S | Promise<S>;
  /** ends in .csv or .jsonl */
  readonly out: string;
  readonly shard?: Shard;
  readonly workers?: number;
  readonly signal?: AbortSignal;
  /** told of every variant that could not be computed in this run, with its number from 0 */
  readonly onFailed?: (index: number, reason: string) => void;
  /** once at the beginning and after every row */
  readonly onProgress?: (progress: SweepProgress) => void;
}

export interface SweepProgress {
  /** rows in the file now */
  readonly rows: number;
  /** rows that the file will have */
  readonly total: number;
  /** rows in the file that were there before this run */
  readonly before: number;
  /** rows in the file whose variant could not be computed */
  readonly failed: number;
}

/**
 * Computes the rows that the file does not have yet. Ends early, with whole rows in the file, when the
 * signal is aborted: rows < total then. before = total: there was nothing to do.
 *
 * @throws InputError when the values or the shard make no sense, or the file cannot be written or holds
 * anything else
 */
export async function runSweep<S, R>(run: SweepRun<S, R>): Promise<SweepProgress> {
  const { parameters, results, cells, out, shard = WHOLE, onProgress = () => {} } = run;
  const all = gridJobs(parameters);
  const jobs = shardOf(all, shard);
  const sweep = sweepHash({ parameters, results, decides: run.decides });
  const sheet = makeSheet(rowFormat(out), { parameters, results, of: all.length, sweep });

  const file = openRowFile(out, sheet, jobs);
  let progress = { rows: file.rows, total: jobs.length, before: file.rows, failed: file.failed };
  try {
    onProgress(progress);
    const left = jobs.slice(file.rows);
    if (left.length === 0) return progress;
    await runJobs<S, Job, R>({
      ...{ jobs: left, task: run.task, setup: await run.setup() },
      ...(run.workers !== undefined && { workers: run.workers }),
      ...(run.signal !== undefined && { signal: run.signal }),
      deliver: (position, result) => {
        if ("failed" in result) run.onFailed?.(left[position].index, result.failed);
        const figures = "value" in result ? { value: cells(result.value) } : result;
        file.append(sheet.row(left[position], figures));
        const failed = progress.failed + ("value" in result ? 0 : 1);
        progress = { ...progress, rows: progress.rows + 1, failed };
        onProgress(progress);
      },
    });
    return progress;
  } finally {
    file.close();
  }
}
