import { describe, expect, test } from "vitest";
import { InputError } from "../../src/errors.ts";
import { moduleBeside } from "../../src/runs/module-beside.ts";
import { runJobs } from "../../src/runs/pool.ts";
import type { JobResult } from "../../src/runs/task.ts";
import type { ToyJob, ToyResult, ToySetup } from "./toy-task.ts";

const TASK = moduleBeside(import.meta.url, "./toy-task");

interface Toy {
  readonly jobs: readonly ToyJob[];
  readonly workers: number;
  readonly broken?: ToySetup["broken"];
  readonly signal?: AbortSignal;
  readonly onDelivery?: (position: number) => void;
}

function toyRun({ jobs, workers, broken, signal, onDelivery }: Toy) {
  const counts = new Int32Array(new SharedArrayBuffer(16));
  const got: { readonly position: number; readonly result: JobResult<ToyResult> }[] = [];
  const setup = { counts, factors: Float64Array.of(1, 0.1), ...(broken && { broken }) };
  const done = runJobs<ToySetup, ToyJob, ToyResult>({
    ...{ jobs, task: TASK, setup, workers },
    ...(signal && { signal }),
    deliver: (position, result) => {
      got.push({ position, result });
      onDelivery?.(position);
    },
  });
  return { done, got, counts };
}

/** What each job came to: its values, or its failure. */
function summary(got: ReturnType<typeof toyRun>["got"]): unknown[] {
  return got.map(({ result }) => ("value" in result ? [...result.value.values] : result.failed));
}

function jobs(n: number, does: Readonly<Record<number, ToyJob["does"]>> = {}): ToyJob[] {
  return Array.from({ length: n }, (_, index) => {
    const what = does[index];
    return { index, ...(what !== undefined && { does: what }) };
  });
}

describe.each([1, 2])("with %i workers", (workers) => {
  test("every result comes once and in order", async () => {
    const { done, got, counts } = toyRun({ jobs: jobs(200), workers });
    await done;
    expect(got.map(({ position }) => position)).toEqual(Array.from({ length: 200 }, (_, i) => i));
    expect(summary(got)).toEqual(Array.from({ length: 200 }, (_, i) => [i, i * 0.1]));
    // the counts reach this thread through shared memory
    expect(counts[0]).toBeLessThanOrEqual(workers);
    expect(counts[1]).toBe(200);
    const first = got[0].result;
    expect("value" in first && first.value.thread === 0).toBe(workers === 1);
  });

  test("a job that its input makes impossible fails, the others go on", async () => {
    const { done, got } = toyRun({ jobs: jobs(6, { 1: "input", 4: "solve" }), workers });
    await done;
    expect(summary(got)).toEqual([
      [0, 0],
      "arms: are too thin",
      [2, 0.2],
      [3, 3 * 0.1],
      "a mode is missing",
      [5, 0.5],
    ]);
  });

  test("a bug ends the run with its own message and stack", async () => {
    const { done, got } = toyRun({ jobs: jobs(50, { 3: "bug" }), workers });
    const error = await done.catch((reason: unknown) => reason);
    expect(error).toBeInstanceOf(Error);
    expect(error).toMatchObject({ message: "x is not a function" });
    expect((error as Error).stack).toContain("toy-task");
    expect(got.length).toBeLessThanOrEqual(3);
  });

  test.each([
    ["input", InputError, "arms: are too thin"],
    ["bug", Error, "x is not a function"],
  ] as const)(
    "an error of the setup ends the run as what it is: %s",
    async (broken, type, message) => {
      const error = await toyRun({ jobs: jobs(5), workers, broken }).done.catch((e: unknown) => e);
      expect(error).toBeInstanceOf(type);
      expect(error).toMatchObject({ message });
    },
  );

  test("an error of who takes the results ends the run", async () => {
    const onDelivery = (position: number) => {
      if (position === 2) throw new InputError([{ path: "", message: "the disk is full" }]);
    };
    const { done, got } = toyRun({ jobs: jobs(100), workers, onDelivery });
    await expect(done).rejects.toThrow("the disk is full");
    expect(got).toHaveLength(3);
  });

  test("an abort ends the run without an error; nothing is delivered after it", async () => {
    const abort = new AbortController();
    const onDelivery = (position: number) => {
      if (position === 9) abort.abort();
    };
    const { done, got } = toyRun({ jobs: jobs(5000), workers, signal: abort.signal, onDelivery });
    await done;
    expect(got).toHaveLength(10);
  });

  test("a run aborted before its begin does nothing", async () => {
    const { done, got, counts } = toyRun({ jobs: jobs(5), workers, signal: AbortSignal.abort() });
    await done;
    expect(got).toEqual([]);
    expect(counts[0]).toBe(0);
  });
});

describe("threads", () => {
  test("work at the same time, and results wait for their turn", async () => {
    const { done, got } = toyRun({ jobs: jobs(100, { 0: "meet", 50: "meet" }), workers: 3 });
    await done;
    expect(summary(got)).toEqual(Array.from({ length: 100 }, (_, i) => [i, i * 0.1]));
  });

  test("that die are replaced, and only their own jobs fail", async () => {
    const { done, got, counts } = toyRun({ jobs: jobs(12, { 2: "exit", 3: "exit" }), workers: 2 });
    await done;
    const lost = "the thread that computed this variant was lost: it ended with exit code 7";
    expect(summary(got)).toEqual(
      Array.from({ length: 12 }, (_, i) => (i === 2 || i === 3 ? lost : [i, i * 0.1])),
    );
    expect(counts[1]).toBe(12);
  });

  test("that die while they are set up end the run", async () => {
    const { done } = toyRun({ jobs: jobs(5), workers: 2, broken: "exit" });
    await expect(done).rejects.toThrow("it ended with exit code 7");
  });

  test("are dropped by an abort, whatever they are doing", async () => {
    const abort = new AbortController();
    const onDelivery = () => abort.abort();
    const stuck = { 1: "forever", 2: "forever" } as const;
    const { done, got } = toyRun({
      jobs: jobs(9, stuck),
      workers: 2,
      signal: abort.signal,
      onDelivery,
    });
    await done;
    expect(got).toHaveLength(1);
  });

  test("do not run far ahead of a slow job", async () => {
    let most = 0;
    const { done, got, counts } = toyRun({
      jobs: jobs(2000, { 0: "linger" }),
      workers: 2,
      onDelivery: (position) => {
        if (position === 0) most = counts[1];
      },
    });
    await done;
    expect(got).toHaveLength(2000);
    expect(most).toBeLessThanOrEqual(64);
  });

  test("say when a result cannot be sent", async () => {
    const { done } = toyRun({ jobs: jobs(5, { 1: "uncloneable" }), workers: 2 });
    await expect(done).rejects.toThrow("could not be cloned");
  });

  test("need not be there for a single job, nor anything for none", async () => {
    const one = toyRun({ jobs: jobs(1), workers: 8 });
    await one.done;
    expect(one.got[0].result).toMatchObject({ value: { thread: 0 } });
    const none = toyRun({ jobs: [], workers: 8 });
    await none.done;
    expect(none.counts[0]).toBe(0);
  });
});
