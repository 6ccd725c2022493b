/** What moves a frame and what would help, on all cores. */

import { SENSITIVE_MODES } from "../study/sensitivity.ts";
import type { StudyBase } from "../study/sensitivity-base.ts";
import { type SensitivityStudy, tellingModesOf } from "../study/sensitivity-study.ts";
import { suggestions } from "../study/suggest.ts";
import { requireGoingOn } from "./interrupt.ts";
import { sensitivityTable } from "./sensitivity-run.ts";

export interface SensitivityStudyOptions {
  /** lowest modes that are looked at; SENSITIVE_MODES in any case */
  readonly modes?: number;
  /** number of the spot whose noise is told */
  readonly spot?: number;
  /** number of the spot that suggestions are for; absent: the best. false: none are made */
  readonly suggestFor?: number | false;
  readonly workers?: number;
  readonly signal?: AbortSignal;
  readonly progress?: (stage: string, done: number, of: number) => void;
}

/** @throws InputError, SolveError; InterruptedError when stopped */
export async function studySensitivity(
  base: StudyBase,
  text: string,
  { modes = 0, spot, suggestFor, workers, signal, progress }: SensitivityStudyOptions,
): Promise<SensitivityStudy> {
  const table = await sensitivityTable(base, text, {
    modes: Math.max(SENSITIVE_MODES, modes),
    ...(workers !== undefined && { workers }),
    ...(signal && { signal }),
    progress: (done, all) => progress?.("moving every input", done, all),
  });
  requireGoingOn(signal);
  const found = {
    table,
    telling: tellingModesOf(table.modes, base.outcome),
    ...(spot !== undefined && { spot }),
  };
  if (suggestFor === false || table.spots.length === 0) return found;
  const suggested = suggestions(base, table, {
    ...(suggestFor !== undefined && { spot: suggestFor }),
    progress: (_, done, all) => progress?.("trying changes", done, all),
  });
  return { ...found, suggested };
}
