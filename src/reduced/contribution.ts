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
  /** stiffness weighed by loss (same size; the rows of the probes are not used) */
  readonly H: Float64Array;
  /** of the mass, for motions outside the space: on its unknowns */
  readonly unknowns: Int32Array;
  readonly mass: SymmetricSparse;
  /** rows of the space there (unknowns x (width + probes), column-major) */
  readonly rows: Float64Array;
}

export interface WeighedElement {
  readonly matrices: SomeMatrices;
  /** of its strain energy in the loss factor */
  readonly loss: number;
  /** 1, or -1 for an element that is taken away */
  readonly sign: 1 | -1;
}

const scaled = (A: Float64Array | undefined, c: number) => A?.map((v) => c * v);

/** @param lossToo whether H is wanted; else it is all zeros */
export function contributionOf(
  space: Space,
  reduction: Reduction,
  elements: readonly WeighedElement[],
): Contribution {
  const signed = elements.map(({ matrices, sign }) => {
    const { nodes, K, M } = matrices;
    return sign === 1 ? { nodes, K, M } : { nodes, K: scaled(K, -1), M: scaled(M, -1) };
  });
  const lossy = elements.map(({ matrices: { nodes, K }, loss, sign }) => ({
    nodes,
    K: scaled(K, sign * loss),
  }));
  return projected(
    space,
    assembleElements(reduction, signed),
    assembleElements(reduction, lossy).K,
  );
}

/** @param H stiffness weighed by loss */
export function projected(
  space: Space,
  { K, M }: { readonly K: SymmetricSparse; readonly M: SymmetricSparse },
  H: SymmetricSparse,
): Contribution {
  const { unknowns, matrices } = compact([K, M, H]);
  const rows = rowsOfSpace(space, unknowns);
  const m = unknowns.length;
  const { width, probes } = space;
  const basis = rows.subarray(0, m * width);
  const [k, mass, h] = matrices.map((A) => {
    const out = new Float64Array((width + probes) * width);
    innerProducts(out, rows, width + probes, productOf(A, basis, width), width, m);
    return out;
  });
  return { K: k, M: mass, H: h, unknowns, mass: matrices[1], rows };
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
