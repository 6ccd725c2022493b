/** The sample frames whose eigenvalues are kept as golden data, and what the data look like. */

import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { prepare } from "../../src/analyse.ts";
import { readFrame } from "../../src/frame/read.ts";
import { lowestModes, type ModeSet } from "../../src/linalg/modes.ts";
import type { SymmetricSparse } from "../../src/linalg/sparse.ts";
import { assemble } from "../../src/matrices/assemble.ts";
import { freeRigidMotions } from "../../src/matrices/rigid.ts";
import type { Fingerprint } from "./fingerprint.ts";
import type { ScipyReport } from "./scipy.ts";

export const SAMPLES = ["three-inch", "five-inch", "seven-inch", "ten-inch"] as const;
export type Sample = (typeof SAMPLES)[number];

/** Zero eigenvalues of a frame in flight, and elastic ones compared. */
export const RIGID = 6;
export const ELASTIC = 40;

export const REGENERATE = "node --import tsx test/golden/write.ts";

export interface Golden extends ScipyReport {
  readonly frame: string;
  readonly madeBy: string;
  readonly matrices: Fingerprint;
}

export function framePath(sample: Sample): string {
  return `frames/${sample}.jsonc`;
}

export interface SolvedSample {
  readonly K: SymmetricSparse;
  readonly M: SymmetricSparse;
  readonly modes: ModeSet;
}

/** The sample at the mesh size it has by default, as the program solves it. */
export function solveSample(sample: Sample): SolvedSample {
  const { mesh, model, mass } = prepare(readFrame(framePath(sample)));
  const { K, M, reduction } = assemble(mesh, model);
  const deflate = freeRigidMotions(mesh, reduction, mass.cg);
  return { K, M, modes: lowestModes(K, M, { count: ELASTIC, deflate }) };
}

export function goldenPath(sample: Sample): string {
  return fileURLToPath(new URL(`${sample}.json`, import.meta.url));
}

export function readGolden(sample: Sample): Golden {
  return JSON.parse(readFileSync(goldenPath(sample), "utf8"));
}
