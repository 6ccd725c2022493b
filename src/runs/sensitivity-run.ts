/** A table of sensitivities, on all cores. */

import { inputsOf } from "../frame/inputs.ts";
import { drawnBase, SENSITIVE_MODES, tableOf } from "../study/sensitivity.ts";
import type { StudyBase } from "../study/sensitivity-base.ts";
import type { SensitivityRow, SensitivityTable } from "../study/sensitivity-types.ts";
import { moduleBeside } from "./module-beside.ts";
import { runJobs } from "./pool.ts";
import type { SensitivitySetup } from "./sensitivity-task.ts";

export interface SensitivityRunOptions {
  /** lowest modes that are looked at */
  readonly modes?: number;
  /** threads; as many as there are cores where not given */
  readonly workers?: number;
  /** stops the run: rows that are not there then are missing */
  readonly signal?: AbortSignal;
  readonly progress?: (done: number, all: number) => void;
}

/**
 * The table of `sensitivities`, to the last digit, however many threads there are.
 *
 * @param text of the frame file
 * @throws SolveError; Error for a thread that died
 */
export async function sensitivityTable(
  base: StudyBase,
  text: string,
  { modes = SENSITIVE_MODES, workers, signal, progress }: SensitivityRunOptions = {},
): Promise<SensitivityTable> {
  const { source, prepared, outcome, reduced } = base;
  const { known } = drawnBase(base, modes);
  const inputs = inputsOf(source);
  const rows: SensitivityRow[] = [];
  await runJobs<SensitivitySetup, number, SensitivityRow>({
    jobs: [...inputs.keys()],
    task: moduleBeside(import.meta.url, "./sensitivity-task"),
    setup: {
      path: source.path,
      text,
      meshSize: prepared.mesh.size,
      reduced,
      spots: outcome.spots,
      known,
    },
    ...(workers !== undefined && { workers }),
    ...(signal && { signal }),
    deliver: (i, result) => {
      if ("failed" in result) throw new Error(`${inputs[i].name}: ${result.failed}`);
      rows.push(result.value);
      progress?.(i + 1, inputs.length);
    },
  });
  return tableOf(base, known, rows);
}
