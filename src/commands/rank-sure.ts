/** What `rank --sure` computes beyond the ranking. */

import { readFileSync } from "node:fs";
import type { RankedCandidate } from "../ranking/types.ts";
import type { HowSure } from "../study/how-sure.ts";
import type { LoadedFrame } from "./input/load-frame.ts";
import { sampleOptions } from "./input/study-options.ts";
import type { SureOptions } from "./input/sure-options.ts";
import type { Terminal } from "./terminal/terminal.ts";

export interface SolvedBy {
  /** m */
  readonly meshSize?: number;
  readonly modes?: number;
}

/** Refuses options that make no sense, before anything is computed. @throws InputError */
export async function checkSure(options: SureOptions): Promise<void> {
  if (options.sure) await sampleOptions(options);
}

/**
 * @returns undefined where it was not asked for
 * @throws InputError, SolveError; InterruptedError when stopped
 */
export async function foundSure(
  { path, hash }: LoadedFrame,
  { meshSize, modes }: SolvedBy,
  first: RankedCandidate | undefined,
  options: SureOptions,
  terminal: Terminal,
): Promise<HowSure | undefined> {
  if (!options.sure) return undefined;
  const { interruptible } = await import("../runs/interrupt.ts");
  const { howSure } = await import("../runs/how-sure-run.ts");
  const { stageProgressOn } = await import("./terminal/stage-progress.ts");
  const frame = {
    path,
    text: readFileSync(path, "utf8"),
    hash,
    ...(meshSize !== undefined && { meshSize }),
    ...(modes !== undefined && { modes }),
  };
  const place = first && { name: first.candidate.name, plate: first.plate };
  const how = await sampleOptions(options);
  const progress = stageProgressOn(terminal);
  try {
    return await interruptible((signal) =>
      howSure(frame, place, { ...how, signal, progress: progress.show }),
    );
  } finally {
    progress.end();
  }
}
