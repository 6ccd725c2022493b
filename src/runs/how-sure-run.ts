/** How sure a ranking is: its frame over samples of the spreads, and every input moved. */

import { parseFrameSource } from "../frame/change.ts";
import { LIBRARY_NAMES } from "../material/library-names.ts";
import type { HowSure } from "../study/how-sure.ts";
import { studyBase } from "../study/sensitivity-base.ts";
import { spotTold } from "../study/sensitivity-study.ts";
import { compareVariants, type FrameGiven } from "./compare-run.ts";
import { requireGoingOn } from "./interrupt.ts";
import type { SampleOptions } from "./sample-run.ts";
import { studySensitivity } from "./sensitivity-study.ts";

/**
 * @param first the place that the ranking puts first: what is told and suggested is about it where the
 *   file names it, else about the best that the file names
 * @throws InputError, SolveError; InterruptedError when stopped
 */
export async function howSure(
  frame: FrameGiven,
  first: { readonly name: string; readonly plate: string } | undefined,
  options: SampleOptions,
): Promise<HowSure> {
  const asked = { name: frame.path, frame: 0, changes: [], told: [] };
  const sampled = await compareVariants([frame], [asked], { ...options, sampled: true });
  requireGoingOn(options.signal);
  const { workers, signal, progress } = options;
  progress?.("solving what is moved", 0, 1);
  const source = parseFrameSource(frame.text, frame.path, LIBRARY_NAMES);
  const base = studyBase(source, frame.meshSize, frame.modes);
  const moved = await studySensitivity(base, frame.text, {
    ...spotTold(base.outcome, first),
    ...(workers !== undefined && { workers }),
    ...(signal && { signal }),
    ...(progress && { progress }),
  });
  return { sampled, moved };
}
