/** What a thread does with the jobs of a sweep. */

import type { Change } from "../frame/change.ts";
import type { FilePath } from "../frame/file-path.ts";
import type { ReducedVariants } from "../variants/reduced.ts";
import type { Outcome } from "../variants/types.ts";
import type { Job } from "./jobs.ts";
import type { Work } from "./task.ts";
import { type FrameText, setUp as setUpVariants, type VariantJob } from "./variant-task.ts";

export interface SweepSetup {
  readonly frame: FrameText;
  /** the places that each parameter sets, in the order of the parameters */
  readonly places: readonly (readonly FilePath[])[];
  /** undefined: every variant is solved exactly */
  readonly reduced?: ReducedVariants;
  readonly delays: boolean;
}

export interface SweepAnswer {
  /** number of the job in the whole sweep, from 0 */
  readonly index: number;
  readonly outcome: Outcome;
}

export function setUp({ frame, places, reduced, delays }: SweepSetup): Work<Job, SweepAnswer> {
  const spaces = reduced ? [{ frame: 0, reduced }] : [];
  const work = setUpVariants({ frames: [frame], spaces });
  return async (job) => {
    const changes = jobChanges(job, places);
    const variant: VariantJob = reduced
      ? { kind: "reduced", space: 0, changes, delays }
      : { kind: "exact", frame: 0, changes, delays };
    return { index: job.index, outcome: (await work(variant)) as Outcome };
  };
}

export function jobChanges(job: Job, places: SweepSetup["places"]): Change[] {
  return job.inputs.flatMap(({ written }, p) => places[p].map((path) => ({ path, written })));
}
