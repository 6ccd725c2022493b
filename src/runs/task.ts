/** What a job runs: a module that is set up once per thread and then called job by job. */

import { InputError, SolveError } from "../errors.ts";

/** Computes one job; the answer is plain data, fit to be sent between threads. */
export type Work<J, R> = (job: J) => R | Promise<R>;

/**
 * Exported as `setUp` by every task module. The setup is plain data; Float64Arrays over a
 * SharedArrayBuffer are the same memory in every thread, others are copied. An answer that is a view of
 * a larger array takes all of that with it: cut it out with `slice` first.
 */
export type SetUp<S, J, R> = (setup: S) => Work<J, R> | Promise<Work<J, R>>;

export interface TaskModule<S, J, R> {
  readonly setUp: SetUp<S, J, R>;
}

/** The answer of a job, or why it has none. */
export type JobResult<R> = { readonly value: R } | { readonly failed: string };

/** Does the job. Errors about its input are an answer; any other is a bug and is thrown. */
export async function attempt<J, R>(work: Work<J, R>, job: J): Promise<JobResult<R>> {
  try {
    return { value: await work(job) };
  } catch (error) {
    if (error instanceof InputError || error instanceof SolveError)
      return { failed: error.message };
    throw error;
  }
}
