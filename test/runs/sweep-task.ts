/** A sweep for the tests: width times height, which no variant with a width of 3 mm can have. */

import { setTimeout } from "node:timers/promises";
import { inputError } from "../../src/errors.ts";
import type { Job } from "../../src/runs/jobs.ts";
import { moduleBeside } from "../../src/runs/module-beside.ts";
import { runSweep, type SweepRun } from "../../src/runs/sweep-file.ts";

export interface SweepSetup {
  readonly factors: Float64Array;
  /** this job (0..) never ends */
  readonly stuckAt?: number;
}

export interface Area {
  readonly area: number;
  readonly note: string;
}

export function setUp({ factors, stuckAt }: SweepSetup): (job: Job) => Promise<Area> {
  return async ({ index, inputs }) => {
    while (index === stuckAt) await setTimeout(1000);
    const [width, height] = inputs.map(({ written }) => Number.parseFloat(String(written)));
    if (width === 3) throw inputError("bar.width", 'must not be 3, "as agreed",\nbut is');
    return { area: width * height * factors[0], note: width > height ? "wide, low" : "=high" };
  };
}

/** 5 x 4 variants, of which 4 fail. */
export function toySweep(
  out: string,
  more: Partial<SweepRun<SweepSetup, Area>> & { readonly stuckAt?: number } = {},
): SweepRun<SweepSetup, Area> {
  const { stuckAt, ...others } = more;
  return {
    parameters: [
      { name: "bar.width", values: ["1 mm", "2 mm", "3 mm", "4.5 mm", "5 mm"] },
      { name: "bar.height", values: [1, 2, 3, 0.1], unit: "mm" },
    ],
    decides: { frame: "abc" },
    results: ["area_mm2", "note", "nothing"],
    cells: ({ area, note }) => [area, note, Number.NaN],
    task: moduleBeside(import.meta.url, "./sweep-task"),
    setup: () => ({ factors: Float64Array.of(1), ...(stuckAt !== undefined && { stuckAt }) }),
    out,
    workers: 1,
    ...others,
  };
}

/** The toy sweep in as many parts as names are given. */
export async function writeParts(...files: readonly string[]): Promise<void> {
  for (const [i, file] of files.entries()) {
    await runSweep(toySweep(file, { shard: { part: i + 1, parts: files.length } }));
  }
}
