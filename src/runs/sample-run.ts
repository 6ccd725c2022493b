/** Variants over samples of their spreads, through a reduced model, as many as the answer needs. */

import { type InputError, inputError } from "../errors.ts";
import { type Change, parseFrameSource } from "../frame/change.ts";
import { type Input, inputsOf, withInput } from "../frame/inputs.ts";
import { LIBRARY_NAMES } from "../material/library-names.ts";
import { bandOf } from "../study/bands.ts";
import { spotChances } from "../study/chances.ts";
import { differenceOf } from "../study/difference.ts";
import { type Dimensions, dimensionsOf, sampledValues } from "../study/dimensions.ts";
import { haltonSequence } from "../study/halton.ts";
import { pairedNoise, variantChances } from "../study/paired.ts";
import type { SampledInput, Sureness } from "../study/results.ts";
import {
  BATCH,
  enough,
  MOST_SAMPLES,
  type SampleError,
  type Sufficiency,
  sampleCountText,
} from "../study/sample-count.ts";
import { modeSamples } from "../study/sampled.ts";
import { comparedPairs, type SampledVariant } from "../study/sureness.ts";
import { trainingPoints } from "../study/training.ts";
import { prepareVariant } from "../variants/prepare.ts";
import {
  isAlike,
  type ReducedBase,
  type ReducedVariants,
  reduceVariants,
  solveBase,
} from "../variants/reduced.ts";
import type { Outcome } from "../variants/types.ts";
import type { Solved } from "./asked.ts";
import { requireGoingOn } from "./interrupt.ts";
import { modesOfAll } from "./modes-of-all.ts";
import { moduleBeside } from "./module-beside.ts";
import { runJobs } from "./pool.ts";
import { isUsable } from "./usable.ts";
import type { FrameText, VariantAnswer, VariantJob, VariantSetup } from "./variant-task.ts";

export interface SampleOptions {
  /** as many as the wanted error needs where not given */
  readonly samples?: number;
  /** one standard error of chances (share) and band edges (dB) */
  readonly wanted?: SampleError;
  readonly seed: number;
  readonly workers?: number;
  readonly signal?: AbortSignal;
  readonly progress?: (stage: string, done: number, of: number) => void;
}

export interface SampledRun {
  readonly sureness: Sureness;
  /** in the order of the variants */
  readonly variants: readonly SampledVariant[];
}

/** The first batch; more follow until the errors are as small as wanted ... */
const FIRST = 48;
/** ... up to this many, unless a number or an error was asked for: an answer is wanted within a minute. */
const MOST_UNASKED = 192;
/**
 * Wanted where nothing is asked: one standard error. Edges of a band of noise that is 10 dB wide are known
 * to 1.5 dB after about 50 samples.
 */
const USUAL: SampleError = { chance: 0.05, level: 1.5 };
/** Variants at the ends of the spreads from which a space is made, at least, and for each variant. */
const TRAINING = 6;
const TRAINING_EACH = 2;
/**
 * Samples may be off by this much in frequency before they are solved exactly: the spreads themselves move
 * frequencies by several per cent, and gyro noise is within 0.03 dB at an error of 1.5 %.
 */
const TOLERANCE = 0.01;

const TASK = "./variant-task";

/** Changes of every variant for one sample, and which space it is solved in. */
interface Sampler {
  readonly space: number;
  readonly changesAt: (point: Float64Array) => Change[];
}

/** @throws InputError for spreads that cannot be, SolveError where a variant cannot be solved */
export async function sampleVariants(
  frames: readonly FrameText[],
  solved: readonly Solved[],
  options: SampleOptions,
): Promise<SampledRun> {
  const inputs = solved.map(({ source }) => inputsOf(source));
  const dimensions = dimensionsOf(inputs);
  const sequence = haltonSequence(dimensions.size, options.seed);
  const { spaces, spaceOf } = await makeSpaces(frames, solved, inputs, dimensions, options);
  const samplers = solved.map(
    (s, i): Sampler => ({
      space: spaceOf[i],
      changesAt: (point) => changesAt(s, inputs[i], dimensions, point),
    }),
  );
  const setup = { frames, spaces, tolerance: TOLERANCE };
  const outcomes: Outcome[][] = solved.map(() => []);
  const failed = new Map<string, number>();
  const { wanted = USUAL } = options;
  const most = options.wanted ? MOST_SAMPLES : MOST_UNASKED;
  let drawn = 0;
  let goal = options.samples ?? FIRST;
  let state: Sufficiency;
  for (;;) {
    const points = Array.from({ length: goal - drawn }, (_, k) => sequence.point(drawn + k));
    const rows = await sampleRows(setup, samplers, points, drawn, goal, options);
    for (const row of rows) {
      // A frame that cannot be built with one variant is left out of all, so that samples stay paired.
      if (typeof row === "string") failed.set(row, (failed.get(row) ?? 0) + 1);
      else row.forEach((o, v) => void outcomes[v].push(o));
    }
    requireGoingOn(options.signal);
    drawn = goal;
    if (outcomes[0].length === 0) throw noFrames(failed);
    state = sufficiency(solved[0].outcome, outcomes, wanted);
    const isLast = options.samples !== undefined || state.enough || drawn >= most;
    if (isLast) break;
    goal = Math.min(most, Math.max(drawn + BATCH, state.needed));
  }
  const all = outcomes.flat();
  const reduced = all.filter((o) => o.solution.method === "reduced").length;
  return {
    sureness: {
      samples: outcomes[0].length,
      text: sampleCountText(outcomes[0].length, state, solved.length > 1 ? "differences" : "bands"),
      seed: options.seed,
      inputs: sampledInputs(inputs),
      reduced,
      exact: all.length - reduced,
      failed: [...failed].map(([reason, count]) => ({ reason, count })),
    },
    variants: solved.map(({ asked: { name }, outcome }, v) => ({
      name,
      nominal: outcome,
      samples: outcomes[v],
      modes: modeSamples(outcome, outcomes[v]),
    })),
  };
}

function changesAt(
  { asked, source }: Solved,
  inputs: readonly Input[],
  dimensions: Dimensions,
  point: Float64Array,
): Change[] {
  const sampled = sampledValues(inputs, dimensions, point);
  return [...asked.changes, ...sampled.map(({ input, value }) => withInput(source, input, value))];
}

/** Not one sample could be built or solved. */
function noFrames(failed: ReadonlyMap<string, number>): InputError {
  const [reason] = [...failed].reduce((a, b) => (b[1] > a[1] ? b : a), ["", 0]);
  return inputError(
    "spreads",
    `no frame drawn from the spreads can be solved; mostly because: ${reason}. Give smaller spreads in the section "spreads", or leave sampling out (compare --no-sampling, rank without --sure).`,
  );
}

/** One space for all variants of a frame whose meshes are alike, further ones for the rest. */
async function makeSpaces(
  frames: readonly FrameText[],
  solved: readonly Solved[],
  inputs: readonly (readonly Input[])[],
  dimensions: Dimensions,
  options: SampleOptions,
) {
  const prepared = solved.map(({ asked, source }) =>
    prepareVariant(source.file, frames[asked.frame].meshSize),
  );
  const bases: { readonly frame: number; readonly base: ReducedBase; readonly of: number[] }[] = [];
  const spaceOf = prepared.map((p, i) => {
    const { frame } = solved[i].asked;
    const known = bases.findIndex((b) => b.frame === frame && isAlike(b.base, p));
    if (known >= 0) {
      bases[known].of.push(i);
      return known;
    }
    options.progress?.("solving what samples are reduced from", bases.length, bases.length + 1);
    bases.push({ frame, base: solveBase(p, frames[frame].modes), of: [i] });
    return bases.length - 1;
  });
  const spaces: { frame: number; reduced: ReducedVariants }[] = [];
  for (const { frame, base, of } of bases) {
    // An even number each, so that a point and its opposite belong to one variant.
    const each = Math.max(TRAINING_EACH, 2 * Math.ceil(TRAINING / of.length / 2));
    const points = trainingPoints(dimensions.size, each * of.length);
    const training = points.map((point, k) => {
      const i = of[Math.floor(k / each)];
      return changesAt(solved[i], inputs[i], dimensions, point);
    });
    const changes = [...of.slice(1).map((i) => solved[i].asked.changes), ...training];
    const count = base.all.modes.lambda.length;
    const known = parseFrameSource(frames[frame].text, frames[frame].path, LIBRARY_NAMES);
    const usable = changes.filter((c) => isUsable(known, frames[frame], base, c));
    const snapshots = await modesOfAll(frames, frame, usable, count, {
      ...options,
      stage: "solving what samples are reduced from",
    });
    spaces.push({ frame, reduced: reduceVariants(base, snapshots) });
  }
  return { spaces, spaceOf };
}

/** Every sample as the outcomes of all variants, or why it has none. */
async function sampleRows(
  setup: VariantSetup,
  samplers: readonly Sampler[],
  points: readonly Float64Array[],
  before: number,
  goal: number,
  { workers, signal, progress }: SampleOptions,
): Promise<(Outcome[] | string)[]> {
  const width = samplers.length;
  const jobs = points.flatMap((point) =>
    samplers.map(({ space, changesAt }): VariantJob => {
      return { kind: "reduced", space, changes: changesAt(point) };
    }),
  );
  const rows: (Outcome[] | string)[] = [];
  let row: Outcome[] = [];
  let reason: string | undefined;
  await runJobs<VariantSetup, VariantJob, VariantAnswer>({
    jobs,
    task: moduleBeside(import.meta.url, TASK),
    setup,
    ...(workers !== undefined && { workers }),
    ...(signal && { signal }),
    deliver: (i, result) => {
      if ("failed" in result) reason ??= result.failed;
      else row.push(result.value as Outcome);
      if ((i + 1) % width > 0) return;
      rows.push(reason ?? row);
      [row, reason] = [[], undefined];
      progress?.("sampling the spreads", before + rows.length, goal);
    },
  });
  return rows;
}

/** Chances and bands that the answer rests on; no pair of variants may be left open for want of samples. */
function sufficiency(
  nominal: Outcome,
  outcomes: readonly (readonly Outcome[])[],
  wanted: SampleError,
): Sufficiency {
  const [first, ...others] = outcomes;
  const samples = first.length;
  if (others.length === 0) {
    const chances = spotChances(first).rivals.map((r) => r.best);
    const band = bestBand(nominal, first);
    return enough({ samples, chances, levels: band ? [band] : [] }, wanted);
  }
  const named = outcomes.map((all, v) => ({ name: String(v), samples: all }));
  const pairs = comparedPairs(outcomes).map(([a, b]) => pairedNoise(a, b));
  const state = enough(
    {
      samples,
      chances: variantChances(named).rivals.map((r) => r.best),
      levels: pairs.flatMap(({ decibel }) => (decibel ? [decibel] : [])),
    },
    wanted,
  );
  const isOpen = pairs.some((p) => differenceOf(p)?.kind === "unsure");
  return isOpen ? { ...state, enough: false, needed: Math.max(state.needed, 2 * samples) } : state;
}

/** Gyro noise at the spot that is best as drawn, dB. */
function bestBand({ spots, best }: Outcome, samples: readonly Outcome[]) {
  const { name } = spots[best ?? 0];
  return bandOf(
    samples.map(({ spots: all }) => {
      const spot = all.find((s) => s.name === name && s.ruledOut === undefined);
      return spot && 20 * Math.log10(spot.gyro);
    }),
  );
}

function sampledInputs(inputs: readonly (readonly Input[])[]): SampledInput[] {
  const known = new Map<string, SampledInput>();
  for (const input of inputs.flat()) {
    const { name, spread } = input;
    if (spread) known.set(name, { name, spread: spreadWords(input), source: spread.source });
  }
  return [...known.values()];
}

/** "±3 %", "5.3 to 28", "58.3 to 84 Hz". */
function spreadWords({ value, spread, perSI, unit }: Input): string {
  if (!spread) return "";
  const { from, to } = spread;
  const digits = (v: number) => String(Number(v.toPrecision(3)));
  const even = Math.abs(value - from - (to - value)) < 1e-6 * Math.abs(to - from);
  if (even && value !== 0) return `±${digits((100 * (to - value)) / Math.abs(value))} %`;
  return `${digits(from * perSI)} to ${digits(to * perSI)}${unit === "" ? "" : ` ${unit}`}`;
}
