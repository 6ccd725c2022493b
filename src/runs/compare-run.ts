/** Variants solved, sampled and compared, on all cores. */

import { InputError } from "../errors.ts";
import { changedSource, type FrameSource, parseFrameSource } from "../frame/change.ts";
import { LIBRARY_NAMES } from "../material/library-names.ts";
import type { Chances } from "../study/chances.ts";
import { compareOutcomes } from "../study/compare.ts";
import { delayWords } from "../study/delay-words.ts";
import { gramsOf } from "../study/figures.ts";
import { leadOf } from "../study/lead.ts";
import { overviewWords } from "../study/overview-words.ts";
import { variantChances } from "../study/paired.ts";
import { bestGyro } from "../study/pareto.ts";
import type { ComparisonStudy, VariantResult } from "../study/results.ts";
import { sampledOf } from "../study/sampled.ts";
import { variantWords } from "../study/sure-words.ts";
import { pairsOf } from "../study/sureness.ts";
import { prepareVariant } from "../variants/prepare.ts";
import type { Outcome } from "../variants/types.ts";
import type { Solved, VariantAsked } from "./asked.ts";
import { requireGoingOn } from "./interrupt.ts";
import { moduleBeside } from "./module-beside.ts";
import { runJobs } from "./pool.ts";
import { type SampledRun, type SampleOptions, sampleVariants } from "./sample-run.ts";
import {
  changeOptions,
  type FrameText,
  type VariantAnswer,
  type VariantJob,
  type VariantSetup,
} from "./variant-task.ts";

export interface FrameGiven extends FrameText {
  /** SHA-256 of the file, hexadecimal */
  readonly hash: string;
}

export interface CompareOptions extends SampleOptions {
  /** false: nothing is sampled, and nothing said about how sure the differences are */
  readonly sampled: boolean;
}

/** @throws InputError for files that cannot be read, or when no variant can be built */
export async function compareVariants(
  frames: readonly FrameGiven[],
  asked: readonly VariantAsked[],
  options: CompareOptions,
): Promise<ComparisonStudy> {
  const sources = frames.map(({ path, text }) => parseFrameSource(text, path, LIBRARY_NAMES));
  const sized = frames.map((f, i) => ({
    ...f,
    meshSize: f.meshSize ?? prepareVariant(sources[i].file).mesh.size,
  }));
  const { solved, failed } = await solveAll(sized, sources, asked, options);
  requireGoingOn(options.signal);
  // Nothing is left to compare when only the frame as it is could be built.
  if (solved.length < Math.min(asked.length, 2)) {
    throw new InputError(failed.map(({ name, reason }) => ({ path: name, message: reason })));
  }
  const named = solved.map(({ asked: { name }, outcome }) => ({ name, outcome }));
  const comparison =
    named.length > 1 ? compareOutcomes(named) : { reference: named[0].name, differences: [] };
  const use = solved[0].source.file.control.use;
  const study = {
    title: solved[0].source.file.name,
    files: frames.map(({ path, hash }) => ({ path, hash })),
    use,
    failed,
    comparison,
  };
  const plain = solved.map(({ asked: { name, told }, outcome }): VariantResult => {
    return { name, changes: told, outcome };
  });
  if (!options.sampled || solved.every(({ outcome }) => outcome.spots.length === 0)) {
    const words = [...overviewWords(named), ...delayWords(named)];
    return {
      ...study,
      variants: plain,
      words: [...notBuilt(failed), ...(words.length > 0 ? words : [NO_NOISE])],
    };
  }
  const run = await sampleVariants(sized, solved, options);
  const told = sure(plain, run, use);
  return { ...study, ...told, words: [...notBuilt(failed), ...told.words] };
}

function sure(
  plain: readonly VariantResult[],
  { sureness, variants: sampled }: SampledRun,
  use: ComparisonStudy["use"],
): Pick<ComparisonStudy, "variants" | "words" | "sure"> {
  const variants = plain.map((v, i) => {
    const { nominal, samples, modes } = sampled[i];
    return { ...v, sampled: sampledOf(nominal, samples, modes, use) };
  });
  const chances = variantChances(sampled);
  const pairs = pairsOf(sampled);
  const words =
    plain.length > 1
      ? [
          variantWords(chances),
          ...pairs.map((p) => p.words),
          ...delayWords(plain),
          ...massWords(plain, chances),
        ]
      : [variants[0].sampled.words];
  return { variants, words, sure: { ...sureness, chances, pairs } };
}

function notBuilt(failed: ComparisonStudy["failed"]): string[] {
  return failed.map(({ name, reason }) => `"${name}" could not be built: ${reason}`);
}

/** Said where there is nothing to rank by. */
const NO_NOISE =
  "Nothing shakes this frame, or it has no spot: masses and frequencies are told as drawn, and nothing is sampled.";

/** What the variants weigh; which is quietest as drawn only where the samples bear it out. */
function massWords(variants: readonly VariantResult[], chances: Chances): string[] {
  const lead = leadOf(chances);
  const quietest = variants.reduce((a, b) => (bestGyro(b.outcome) < bestGyro(a.outcome) ? b : a));
  if (lead.kind === "clear" && lead.first.name === quietest.name) return overviewWords(variants);
  const byMass = [...variants].sort((a, b) => a.outcome.mass - b.outcome.mass);
  const [light, heavy] = [byMass[0], byMass[byMass.length - 1]];
  const grams = (v: VariantResult) => gramsOf(v.outcome.mass);
  return [
    `The lightest is "${light.name}" (${grams(light)}), the heaviest "${heavy.name}" (${grams(heavy)}).`,
  ];
}

async function solveAll(
  frames: readonly FrameText[],
  sources: readonly FrameSource[],
  asked: readonly VariantAsked[],
  { workers, signal, progress }: CompareOptions,
) {
  const solved: Solved[] = [];
  const failed: { name: string; reason: string }[] = [];
  const jobs = asked.map(({ frame, changes }): VariantJob => {
    return { kind: "exact", frame, changes, delays: true };
  });
  await runJobs<VariantSetup, VariantJob, VariantAnswer>({
    jobs,
    task: moduleBeside(import.meta.url, "./variant-task"),
    setup: { frames, spaces: [] },
    ...(workers !== undefined && { workers }),
    ...(signal && { signal }),
    deliver: (i, result) => {
      progress?.("solving the variants", i + 1, jobs.length);
      if ("failed" in result) failed.push({ name: asked[i].name, reason: result.failed });
      else {
        const outcome = result.value as Outcome;
        solved.push({ asked: asked[i], source: changed(frames, sources, asked[i]), outcome });
      }
    },
  });
  return { solved, failed };
}

function changed(
  frames: readonly FrameText[],
  sources: readonly FrameSource[],
  { frame, changes }: VariantAsked,
): FrameSource {
  return changedSource(sources[frame], changes, changeOptions(frames[frame])).source;
}
