/** Random vectors whose covariance is the inverse of a matrix. */

import { SolveError } from "../errors.ts";
import type { Factor } from "./factorise.ts";
import { fixedSeedGenerator } from "./random.ts";
import { backwardFour } from "./triangular.ts";

/**
 * X = P' L'^-1 D^-1/2 Z (n x columns, column-major) for Z of independent standard normal numbers from a
 * generator with a fixed seed: E[x x'] = A^-1, A = P' L D L' P.
 *
 * @throws SolveError when A is not positive definite
 */
export function inverseRoot(factor: Factor, columns: number): Float64Array {
  const { perm } = factor.symbolic;
  const n = perm.length;
  if (factor.negativePivots > 0) {
    throw new SolveError("a matrix that is not positive definite has no inverse root");
  }
  const normal = normalNumbers();
  const out = new Float64Array(n * columns);
  const y = new Float64Array(4 * n);
  for (let c = 0; c < columns; c += 4) {
    for (let i = 0; i < n; i++) {
      const root = 1 / Math.sqrt(factor.d[i]);
      for (let k = 0; k < 4; k++) y[4 * i + k] = root * normal();
    }
    backwardFour(factor, y);
    for (let k = 0; k < Math.min(4, columns - c); k++) {
      for (let i = 0; i < n; i++) out[(c + k) * n + perm[i]] = y[4 * i + k];
    }
  }
  return out;
}

/** Standard normal numbers by G. E. P. Box & M. E. Muller, Ann. Math. Stat. 29 (1958) (from memory). */
function normalNumbers(): () => number {
  const uniform = fixedSeedGenerator(0xbead);
  let spare: number | undefined;
  return () => {
    if (spare !== undefined) {
      const z = spare;
      spare = undefined;
      return z;
    }
    const radius = Math.sqrt(-2 * Math.log((uniform() + 1 + 2 ** -32) / 2));
    const angle = Math.PI * uniform();
    spare = radius * Math.sin(angle);
    return radius * Math.cos(angle);
  };
}
