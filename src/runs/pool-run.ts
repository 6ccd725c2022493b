/** What a run of many jobs is given. */

import type { JobResult } from "./task.ts";

/** Called once per job, in the order of the jobs, with its position in the list. */
export type Deliver<R> = (position: number, result: JobResult<R>) => void;

export interface PoolRun<S, J, R> {
  readonly jobs: readonly J[];
  /** URL of the task module (`task.ts`); `moduleBeside` makes one */
  readonly task: string;
  /** for the task's `setUp`, once per thread: plain data */
  readonly setup: S;
  /** by default as many as there are cores; 1: in this thread, without any other */
  readonly workers?: number;
  /** stops the run: jobs under way are dropped, what was delivered stays */
  readonly signal?: AbortSignal;
  readonly deliver: Deliver<R>;
}
