/** Ctrl-C as a wish to stop, not as the end of the process. */

import { InterruptedError } from "../errors.ts";

/** @throws InterruptedError when the run was asked to stop and has nothing to show yet */
export function requireGoingOn(signal: AbortSignal | undefined): void {
  if (signal?.aborted) throw new InterruptedError("Stopped before the answer was there.");
}

/**
 * Does the work with a signal that the first Ctrl-C aborts; a second one ends the process as ever.
 * Afterwards nothing listens any more. The work is expected to end soon after the abort.
 */
export async function interruptible<T>(work: (signal: AbortSignal) => Promise<T>): Promise<T> {
  const abort = new AbortController();
  const stop = (): void => abort.abort();
  process.once("SIGINT", stop);
  try {
    return await work(abort.signal);
  } finally {
    process.off("SIGINT", stop);
  }
}
