/** A task for the tests of the pool: what a job does depends on its words. */

import { threadId } from "node:worker_threads";
import { InputError, SolveError } from "../../src/errors.ts";

export interface ToySetup {
  /** over shared memory: entry 0 counts the setups, entry 1 the jobs begun */
  readonly counts: Int32Array;
  readonly factors: Float64Array;
  readonly broken?: "input" | "solve" | "bug" | "exit";
}

export interface ToyJob {
  readonly index: number;
  /** "meet" waits until three other jobs have begun after it */
  readonly does?:
    | "input"
    | "solve"
    | "bug"
    | "exit"
    | "meet"
    | "linger"
    | "forever"
    | "uncloneable";
}

export interface ToyResult {
  readonly values: Float64Array;
  readonly thread: number;
}

export function setUp(setup: ToySetup): (job: ToyJob) => Promise<ToyResult> {
  Atomics.add(setup.counts, 0, 1);
  misbehave(setup.broken);
  return async ({ index, does }) => {
    Atomics.add(setup.counts, 1, 1);
    if (does === "meet") await others(setup.counts, Atomics.load(setup.counts, 1) + 3);
    else if (does === "linger") await new Promise((resolve) => setTimeout(resolve, 50));
    else if (does === "forever") for (;;) Atomics.wait(setup.counts, 2, 0, 1000);
    else misbehave(does);
    const values = Float64Array.from(setup.factors, (factor) => factor * index);
    if (does === "uncloneable") return { values, thread: threadId, extra: () => 0 } as ToyResult;
    return { values, thread: threadId };
  };
}

async function others(counts: Int32Array, jobs: number): Promise<void> {
  while (Atomics.load(counts, 1) < jobs) await new Promise((resolve) => setTimeout(resolve, 1));
}

function misbehave(does: ToyJob["does"]): void {
  if (does === "input") throw new InputError([{ path: "arms", message: "are too thin" }]);
  if (does === "solve") throw new SolveError("a mode is missing");
  if (does === "bug") throw new TypeError("x is not a function");
  if (does === "exit") process.exit(7);
}
