/** What a group of elements adds to the matrices of a frame, as seen in the space. */

import type { SymmetricSparse } from "../linalg/sparse.ts";
import { innerProducts } from "../linalg/tall.ts";
import { assembleElements, type SomeMatrices } from "../matrices/assemble.ts";
import type { Reduction } from "../matrices/reduction.ts";
import { compact } from "./compact.ts";
import { productOf, rowsOfSpace, type Space } from "./space.ts";

/** Projections are (width + probes) x width, row-major: rows are basis and probes, columns the basis. */
export interface Contribution {
  readonly K: Float64Array;
  readonly M: Float64Array;
  /** stiffness weighed by loss */
  readonly H: Float64Array;
  /** of the mass, for motions outside the space: on its unknowns */
  readonly unknowns: Int32Array;
  readonly mass: SymmetricSparse;
  /** rows of the space there (unknowns x (width + probes), column-major) */
  readonly rows: Float64Array;
}

/** Elements of one weight in the loss factor, each added (1) or taken away (-1). */
export interface SignedElement {
  readonly matrices: SomeMatrices;
  readonly sign: 1 | -1;
}

/** @param loss weight of their strain energy in the loss factor */
export function contributionOf(
  space: Space,
  reduction: Reduction,
  elements: readonly SignedElement[],
  loss: number,
): Contribution {
  const less = (A: Float64Array | undefined) => A?.map((v) => -v);
  const signed = elements.map(({ matrices, sign }) => {
    const { nodes, K, M } = matrices;
    return sign === 1 ? matrices : { nodes, K: less(K), M: less(M) };
  });
  const { K, M } = assembleElements(reduction, signed);
  const { unknowns, matrices } = compact([K, M]);
  const [k, mass] = matrices;
  const rows = rowsOfSpace(space, unknowns);
  const projected = projection(space, k, rows);
  return {
    K: projected,
    M: projection(space, mass, rows),
    H: projected.map((v) => loss * v),
    unknowns,
    mass,
    rows,
  };
}

/** [V W]' A V of a matrix on a few unknowns, (width + probes) x width. */
export function projection(
  { width, probes }: Space,
  A: SymmetricSparse,
  rows: Float64Array,
): Float64Array {
  const m = A.pattern.n;
  const out = new Float64Array((width + probes) * width);
  if (A.values.every((v) => v === 0)) return out;
  const basis = rows.subarray(0, m * width);
  innerProducts(out, rows, width + probes, productOf(A, basis, width), width, m);
  return out;
}

/** U'M R and R'M R of motions R outside the space (n x columns, column-major), U basis and probes. */
export function massOf(
  { unknowns, mass, rows }: Contribution,
  space: Space,
  R: Float64Array,
  columns: number,
): { readonly withSpace: Float64Array; readonly own: Float64Array } {
  const m = unknowns.length;
  const here = new Float64Array(m * columns);
  for (let c = 0; c < columns; c++) {
    for (let i = 0; i < m; i++) here[c * m + i] = R[c * space.n + unknowns[i]];
  }
  const MR = productOf(mass, here, columns);
  const all = space.width + space.probes;
  const withSpace = new Float64Array(all * columns);
  innerProducts(withSpace, rows, all, MR, columns, m);
  const own = new Float64Array(columns * columns);
  innerProducts(own, here, columns, MR, columns, m);
  return { withSpace, own };
}
