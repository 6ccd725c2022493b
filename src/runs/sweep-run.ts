/** A sweep of one frame: a space for its variants, then every variant into a file. */

import type { Change, FrameSource } from "../frame/change.ts";
import type { FilePath } from "../frame/file-path.ts";
import { namedCandidates } from "../ranking/candidates.ts";
import { sweepColumns } from "../study/sweep-columns.ts";
import { prepareVariant } from "../variants/prepare.ts";
import { reduceVariants, solveBase } from "../variants/reduced.ts";
import type { Outcome } from "../variants/types.ts";
import { gridJobs, type Job, type Parameter } from "./jobs.ts";
import { modesOfAll } from "./modes-of-all.ts";
import { moduleBeside } from "./module-beside.ts";
import { runJobs } from "./pool.ts";
import type { Shard } from "./shard.ts";
import { runSweep, type SweepProgress } from "./sweep-file.ts";
import { jobChanges, type SweepAnswer, type SweepSetup } from "./sweep-task.ts";
import { isUsable } from "./usable.ts";
import { type FrameText, setUp as variantWork } from "./variant-task.ts";

/** A parameter with the places it sets. */
export interface SweptParameter extends Parameter {
  readonly places: readonly FilePath[];
}

export interface SweepOptions {
  readonly frame: FrameText;
  /** SHA-256 of the file */
  readonly hash: string;
  readonly source: FrameSource;
  readonly parameters: readonly SweptParameter[];
  readonly out: string;
  /** of the program */
  readonly version: string;
  readonly delays: boolean;
  /** every variant exactly */
  readonly exact: boolean;
  readonly shard?: Shard;
  readonly workers?: number;
  readonly signal?: AbortSignal;
  readonly progress?: (stage: string, done: number, of: number) => void;
  readonly onProgress?: (progress: SweepProgress) => void;
  /** told of every variant computed in this run, with its number in the whole sweep from 0 */
  readonly onOutcome?: (index: number, outcome: Outcome) => void;
  readonly onFailed?: (index: number, reason: string) => void;
}

/** Fewer variants than this are not worth a space. */
const WORTH_A_SPACE = 16;
/** Ends of this many parameters are combined; of more, each is tried at its ends alone. */
const COMBINED = 3;

export interface SweepEnd {
  readonly progress: SweepProgress;
  /** computes jobs as the rows were, on all cores, and tells onOutcome and onFailed of them */
  readonly compute: (jobs: readonly Job[]) => Promise<void>;
  /** how one more variant is solved, as the rows were */
  readonly solver: () => Promise<(changes: readonly Change[]) => Outcome>;
}

/** @throws InputError, SolveError */
export async function sweepFrame(options: SweepOptions): Promise<SweepEnd> {
  const { frame, source, parameters, delays, exact, workers, signal, shard, onProgress } = options;
  const base = prepareVariant(source.file, frame.meshSize);
  const sized = { ...frame, meshSize: base.mesh.size };
  const spots = namedCandidates(base.file, base.model).map((c) => c.name);
  const columns = sweepColumns(spots, delays);
  const jobs = gridJobs(parameters);
  const reduced = !exact && jobs.length >= WORTH_A_SPACE;
  const task = moduleBeside(import.meta.url, "./sweep-task");
  let known: SweepSetup | undefined;
  const setup = async () => {
    known ??= {
      frame: sized,
      places: parameters.map((p) => p.places),
      delays,
      ...(reduced && { reduced: await spaceFor(sized, options, jobs) }),
    };
    return known;
  };
  const progress = await runSweep<SweepSetup, SweepAnswer>({
    parameters: parameters.map(({ name, values, unit }) => ({
      name,
      values,
      ...(unit !== undefined && { unit }),
    })),
    decides: {
      hash: options.hash,
      version: options.version,
      places: parameters.map((p) => p.places),
      ...{ meshSize: sized.meshSize, modes: frame.modes, keepHeights: frame.keepHeights ?? false },
      ...{ delays, reduced },
    },
    results: columns.titles,
    cells: ({ index, outcome }) => {
      options.onOutcome?.(index, outcome);
      return columns.cells(outcome);
    },
    task,
    setup,
    out: options.out,
    ...(shard && { shard }),
    ...(workers !== undefined && { workers }),
    ...(signal && { signal }),
    ...(onProgress && { onProgress }),
    ...(options.onFailed && { onFailed: options.onFailed }),
  });
  const compute = async (more: readonly Job[]) =>
    runJobs<SweepSetup, Job, SweepAnswer>({
      jobs: more,
      task,
      setup: await setup(),
      ...(workers !== undefined && { workers }),
      ...(signal && { signal }),
      deliver: (i, result) => {
        if ("failed" in result) options.onFailed?.(more[i].index, result.failed);
        else options.onOutcome?.(result.value.index, result.value.outcome);
      },
    });
  return { progress, compute, solver: async () => solverOf(await setup()) };
}

function solverOf({ frame, reduced, delays }: SweepSetup): (changes: readonly Change[]) => Outcome {
  const spaces = reduced ? [{ frame: 0, reduced }] : [];
  const work = variantWork({ frames: [frame], spaces });
  return (changes) => {
    const kind = reduced
      ? { kind: "reduced" as const, space: 0 }
      : { kind: "exact" as const, frame: 0 };
    return work({ ...kind, changes, delays }) as Outcome;
  };
}

/** Made from the frame as it is and variants at the ends of the parameters: the same for every shard. */
async function spaceFor(frame: FrameText, options: SweepOptions, jobs: readonly Job[]) {
  const { source, parameters, progress, workers, signal } = options;
  progress?.("solving what variants are reduced from", 0, 1);
  const base = solveBase(prepareVariant(source.file, frame.meshSize), frame.modes);
  const places = parameters.map((p) => p.places);
  const ends = endJobs(parameters, jobs).map((job) => jobChanges(job, places));
  // Of those that are no frame their rows will say why.
  const usable = ends.filter((changes) => isUsable(source, frame, base, changes));
  const count = base.all.modes.lambda.length;
  const snapshots = await modesOfAll([frame], 0, usable, count, {
    stage: "solving what variants are reduced from",
    ...(workers !== undefined && { workers }),
    ...(signal && { signal }),
    ...(progress && { progress }),
  });
  return reduceVariants(base, snapshots);
}

/** Variants at the least and largest values of the parameters (the first and last of words), and amid them. */
function endJobs(parameters: readonly SweptParameter[], jobs: readonly Job[]): Job[] {
  const sizes = parameters.map((p) => p.values.length);
  const at = (positions: readonly number[]) =>
    jobs[positions.reduce((index, k, p) => index * sizes[p] + k, 0)];
  const orders = parameters.map(({ values }) => risingOrder(values));
  const middle = orders.map((order) => order[Math.floor((order.length - 1) / 2)]);
  const ends = orders.map((order) => [...new Set([order[0], order[order.length - 1]])]);
  const corners =
    sizes.length <= COMBINED
      ? ends.reduce<number[][]>((all, two) => all.flatMap((c) => two.map((e) => [...c, e])), [[]])
      : sizes.flatMap((_, p) => ends[p].map((e) => middle.map((m, q) => (q === p ? e : m))));
  const chosen = [...corners, middle].map(at);
  return [...new Set(chosen)];
}

/** Positions of the values from the least to the largest; as they are where they are not all numbers. */
function risingOrder(values: readonly unknown[]): number[] {
  const numbers = values.map((v) => Number.parseFloat(String(v)));
  const order = values.map((_, i) => i);
  return numbers.some(Number.isNaN) ? order : order.sort((a, b) => numbers[a] - numbers[b]);
}
