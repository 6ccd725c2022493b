/**
 * Computes the golden eigenvalues of the sample frames anew with SciPy:
 *
 *   node --import tsx test/golden/write.ts
 *
 * To be run when a sample frame or the model has changed on purpose. Needs python3 with SciPy; takes
 * about a minute, most of it for the dense check that no eigenvalue is missing.
 */

import { writeFileSync } from "node:fs";
import { fingerprint } from "./fingerprint.ts";
import {
  ELASTIC,
  framePath,
  type Golden,
  goldenPath,
  REGENERATE,
  RIGID,
  SAMPLES,
  solveSample,
} from "./samples.ts";
import { scipyEigenvalues } from "./scipy.ts";

for (const sample of SAMPLES) {
  const { K, M, modes } = solveSample(sample);
  const report = scipyEigenvalues(K, M, { rigid: RIGID, elastic: ELASTIC, dense: true });
  const golden: Golden = {
    frame: framePath(sample),
    madeBy: `${REGENERATE} (eigenvalues.py)`,
    matrices: fingerprint(K, M),
    ...report,
  };
  writeFileSync(goldenPath(sample), `${JSON.stringify(golden, null, 2)}\n`);
  const apart = report.elastic.map((l, k) => Math.abs(modes.lambda[k] / l - 1));
  console.log(
    `${sample}: ${K.pattern.n} unknowns; ours differ by ${Math.max(...apart).toExponential(1)}, ` +
      `SciPy's error estimate ${report.largestErrorEstimate.toExponential(1)}, ` +
      `eigsh alone ${report.eigshAloneDiffersBy.toExponential(1)}, ` +
      `dense ${report.denseDiffersBy?.toExponential(1)}`,
  );
}
