/** The operator (K - sigma M)^-1 M for the iteration. */

import type { Factor } from "./factorise.ts";
import type { ShiftInvert } from "./lanczos.ts";
import { multiplyBlock } from "./product.ts";
import { solveInPlace } from "./solve.ts";
import type { SymmetricSparse } from "./sparse.ts";

/** @param factor of K - sigma M */
export function shiftInvert(factor: Factor, M: SymmetricSparse): ShiftInvert {
  const n = M.pattern.n;
  return {
    n,
    multiplyMass: (out, x, columns) => multiplyBlock(out, M, x, columns),
    solve: (out, b, columns) => {
      out.set(b.subarray(0, n * columns));
      solveInPlace(factor, out, columns);
    },
  };
}
