/** One worker thread and the job it was given. */

import { Worker } from "node:worker_threads";
import { type Answer, type ThreadSetup, unpackError } from "./messages.ts";
import { moduleBeside, threadArguments } from "./module-beside.ts";
import type { JobResult } from "./task.ts";

export interface Thread<J> {
  readonly isFree: () => boolean;
  /** to a free one only */
  readonly give: (position: number, job: J) => void;
  readonly stop: () => Promise<unknown>;
}

/** What a thread tells; after `error` or `died` nothing more comes of it. */
export interface ThreadEvents<R> {
  readonly ready: () => void;
  readonly result: (position: number, result: JobResult<R>) => void;
  /** the run cannot go on */
  readonly error: (error: Error) => void;
  /** the thread is gone while it did its job */
  readonly died: (position: number, reason: string) => void;
}

export function startThread<J, R>(setup: ThreadSetup, tell: ThreadEvents<R>): Thread<J> {
  const worker = new Worker(new URL(moduleBeside(import.meta.url, "./worker")), {
    workerData: setup,
    execArgv: threadArguments(import.meta.url),
  });
  /** position of the job under way; undefined when free */
  let given: number | undefined;
  let isReady = false;
  let isOver = false;
  let reason = "";

  const end = (last: () => void): void => {
    if (isOver) return;
    isOver = true;
    last();
  };
  worker.on("message", (answer: Answer<R>) => {
    if (isOver) return;
    if (answer.kind === "error") return end(() => tell.error(unpackError(answer.error)));
    isReady = true;
    const position = given;
    given = undefined;
    if (answer.kind === "ready") tell.ready();
    else if (position !== undefined) tell.result(position, answer.result);
  });
  worker.on("messageerror", (error) => end(() => tell.error(error)));
  worker.on("error", (error: NodeJS.ErrnoException) => {
    if (error.code === "ERR_WORKER_OUT_OF_MEMORY") reason = "it ran out of memory";
    else end(() => tell.error(error));
  });
  worker.on("exit", (code) => {
    reason ||= `it ended with exit code ${code}`;
    end(() => {
      if (given !== undefined) tell.died(given, reason);
      else tell.error(new Error(`a worker thread is gone that had no job: ${reason}`));
    });
  });

  return {
    isFree: () => isReady && !isOver && given === undefined,
    give: (position, job) => {
      given = position;
      worker.postMessage(job);
    },
    stop: () => {
      isOver = true;
      return worker.terminate();
    },
  };
}
