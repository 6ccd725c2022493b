/** Entry of a worker thread: sets its task up once, then answers jobs in the order they come. */

import { type MessagePort, parentPort, workerData } from "node:worker_threads";
import { loadTask } from "./load-task.ts";
import { type Answer, packError, type ThreadSetup } from "./messages.ts";
import { attempt, type Work } from "./task.ts";

if (parentPort === null) throw new Error("worker.ts runs in worker threads only");
await serve(parentPort, workerData as ThreadSetup);

async function serve(port: MessagePort, { task, setup }: ThreadSetup): Promise<void> {
  const answer = (message: Answer<unknown>): void => port.postMessage(message);
  let work: Work<unknown, unknown>;
  try {
    work = await (await loadTask<unknown, unknown, unknown>(task)).setUp(setup);
  } catch (error) {
    return answer({ kind: "error", error: packError(error) });
  }
  // one after the other, also when a job waits for something
  let last = Promise.resolve();
  port.on("message", (job: unknown) => {
    last = last.then(async () => {
      try {
        answer({ kind: "result", result: await attempt(work, job) });
      } catch (error) {
        answer({ kind: "error", error: packError(error) });
      }
    });
  });
  answer({ kind: "ready" });
}
