/** Many jobs on all cores: the same results in the same order, however many threads there are. */

import { availableParallelism } from "node:os";
import { setImmediate } from "node:timers/promises";
import { loadTask } from "./load-task.ts";
import type { PoolRun } from "./pool-run.ts";
import { attempt } from "./task.ts";
import { runOnThreads } from "./threads.ts";

/**
 * Runs the jobs and delivers their results in order. Ends early, without an error, when the signal is
 * aborted. A job that throws InputError or SolveError, or whose thread dies, is delivered as failed.
 *
 * @throws what `setUp` or `deliver` throws, and any other error of a job: those are bugs
 */
export async function runJobs<S, J, R>(run: PoolRun<S, J, R>): Promise<void> {
  const { jobs, workers = availableParallelism() } = run;
  if (jobs.length === 0 || run.signal?.aborted) return;
  const threads = Math.min(workers, jobs.length);
  await (threads > 1 ? runOnThreads(run, threads) : runHere(run));
}

async function runHere<S, J, R>(run: PoolRun<S, J, R>): Promise<void> {
  const work = await (await loadTask<S, J, R>(run.task)).setUp(run.setup);
  for (const [position, job] of run.jobs.entries()) {
    // lets timers and Ctrl-C be heard between two jobs
    await setImmediate();
    if (run.signal?.aborted) return;
    run.deliver(position, await attempt(work, job));
  }
}
