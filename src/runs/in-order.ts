/** Results as they come, handed on in the order of the jobs. */

import type { Deliver } from "./pool-run.ts";
import type { JobResult } from "./task.ts";

export interface InOrder<R> {
  readonly put: (position: number, result: JobResult<R>) => void;
  /** how many were handed on: also the position that is waited for */
  readonly delivered: () => number;
}

export function inOrder<R>(deliver: Deliver<R>, signal?: AbortSignal): InOrder<R> {
  const waiting = new Map<number, JobResult<R>>();
  let delivered = 0;
  return {
    put: (position, result) => {
      waiting.set(position, result);
      for (let due = waiting.get(delivered); due !== undefined; due = waiting.get(delivered)) {
        // results that waited for this one are not delivered either once the run is to stop
        if (signal?.aborted) return;
        waiting.delete(delivered);
        deliver(delivered++, due);
      }
    },
    delivered: () => delivered,
  };
}
