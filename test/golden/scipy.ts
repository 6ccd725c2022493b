/** SciPy on matrices of this program, where python3 has it. */

import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { matrixMarket } from "../../src/linalg/matrix-market.ts";
import type { SymmetricSparse } from "../../src/linalg/sparse.ts";

/** What eigenvalues.py prints; there is said how it works and what the error estimate means. */
export interface ScipyReport {
  readonly python: string;
  readonly numpy: string;
  readonly scipy: string;
  /** of the extended precision used: 1.1e-19 on most machines, 2.2e-16 where there is none */
  readonly extendedEpsilon: number;
  readonly options: Readonly<Record<string, number>>;
  /** rad^2/s^2, ascending */
  readonly rigid: readonly number[];
  readonly elastic: readonly number[];
  /** SciPy's own error, relative, at most ... */
  readonly largestErrorEstimate: number;
  /** ... what it would have been without refinement ... */
  readonly eigshAloneDiffersBy: number;
  /** ... and what dense algebra in double precision gives. */
  readonly denseDiffersBy?: number;
}

/** SciPy's version; undefined where python3 or SciPy is missing. */
export function scipyVersion(): string | undefined {
  const probe = spawnSync("python3", ["-c", "import scipy; print(scipy.__version__)"], {
    encoding: "utf8",
  });
  return probe.status === 0 ? probe.stdout.trim() : undefined;
}

/** @param dense also by dense algebra: the proof that none was missed, 1 to 30 s */
export function scipyEigenvalues(
  K: SymmetricSparse,
  M: SymmetricSparse,
  { rigid, elastic, dense = false }: { rigid: number; elastic: number; dense?: boolean },
): ScipyReport {
  const folder = mkdtempSync(join(tmpdir(), "stillpoint-golden-"));
  try {
    const files = [join(folder, "K.mtx"), join(folder, "M.mtx")];
    writeFileSync(files[0], matrixMarket(K));
    writeFileSync(files[1], matrixMarket(M));
    const script = fileURLToPath(new URL("eigenvalues.py", import.meta.url));
    const flags = dense ? ["--dense"] : [];
    const args = [script, ...files, String(rigid), String(elastic), ...flags];
    return JSON.parse(execFileSync("python3", args, { encoding: "utf8" }));
  } finally {
    rmSync(folder, { recursive: true });
  }
}
