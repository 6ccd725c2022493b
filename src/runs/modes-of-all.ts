/** Lowest modes of several variants of a frame, on all cores. */

import type { Change } from "../frame/change.ts";
import { moduleBeside } from "./module-beside.ts";
import { runJobs } from "./pool.ts";
import type { FrameText, VariantAnswer, VariantJob, VariantSetup } from "./variant-task.ts";

export interface ModesRun {
  readonly stage: string;
  readonly workers?: number;
  readonly signal?: AbortSignal;
  readonly progress?: (stage: string, done: number, of: number) => void;
}

/** @returns of those that could be solved, in the order given (each n x count, column-major) */
export async function modesOfAll(
  frames: readonly FrameText[],
  frame: number,
  changes: readonly (readonly Change[])[],
  count: number,
  { stage, workers, signal, progress }: ModesRun,
): Promise<Float64Array[]> {
  const found: Float64Array[] = [];
  await runJobs<VariantSetup, VariantJob, VariantAnswer>({
    jobs: changes.map((c): VariantJob => ({ kind: "modes", frame, changes: c, count })),
    task: moduleBeside(import.meta.url, "./variant-task"),
    setup: { frames, spaces: [] },
    ...(workers !== undefined && { workers }),
    ...(signal && { signal }),
    deliver: (i, result) => {
      progress?.(stage, i + 1, changes.length);
      if ("value" in result) found.push(result.value as Float64Array);
    },
  });
  return found;
}
