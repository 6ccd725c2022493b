/** Jobs handed out to worker threads, so that all stay busy until the end. */

import { inOrder } from "./in-order.ts";
import type { PoolRun } from "./pool-run.ts";
import type { JobResult } from "./task.ts";
import { startThread, type Thread } from "./thread.ts";

/** How far the others may be ahead of the slowest job: bounds the results that wait for their turn. */
const AHEAD_PER_THREAD = 32;

/** `runJobs` on two or more threads. */
export async function runOnThreads<S, J, R>(run: PoolRun<S, J, R>, threads: number): Promise<void> {
  const crew = new Set<Thread<J>>();
  let leave = (): void => {};
  try {
    await new Promise<void>((resolve, reject) => {
      leave = resolve;
      run.signal?.addEventListener("abort", leave);
      employ(run, threads, crew, resolve, reject);
    });
  } finally {
    run.signal?.removeEventListener("abort", leave);
    await Promise.all(Array.from(crew, (thread) => thread.stop()));
  }
}

/** Starts the threads and hands out the jobs until all are delivered or something is wrong. */
function employ<S, J, R>(
  { jobs, task, setup, signal, deliver }: PoolRun<S, J, R>,
  threads: number,
  crew: Set<Thread<J>>,
  done: () => void,
  fail: (error: unknown) => void,
): void {
  const results = inOrder(deliver, signal);
  let next = 0;
  let isOver = false;

  const stop = (error: unknown): void => {
    isOver = true;
    fail(error);
  };
  const handOut = (): void => {
    for (const thread of crew) {
      const isFarAhead = next >= results.delivered() + AHEAD_PER_THREAD * threads;
      if (isOver || signal?.aborted || isFarAhead || next === jobs.length) return;
      if (thread.isFree()) thread.give(next, jobs[next++]);
    }
  };
  const put = (position: number, result: JobResult<R>): void => {
    if (isOver || signal?.aborted) return;
    try {
      results.put(position, result);
    } catch (error) {
      stop(error);
    }
    if (results.delivered() === jobs.length) {
      isOver = true;
      done();
    }
    handOut();
  };
  const hire = (): void => {
    const thread: Thread<J> = startThread<J, R>(
      { task, setup },
      {
        ready: handOut,
        result: put,
        error: stop,
        died: (position, reason) => {
          crew.delete(thread);
          hire();
          put(position, {
            failed: `the thread that computed this variant was lost: ${reason}`,
          });
        },
      },
    );
    crew.add(thread);
  };
  for (let i = 0; i < threads; i++) hire();
}
